package session

import (
	"strings"
	"tenthpoint/ui/model"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
	"tenthpoint/internal/worksheet"
)

// WorkingLines are the steps of a settlement, with the edition they follow.
// Grain that leaves is only weighed, under no edition.
func WorkingLines(s *settle.Settlement, d title.Under) []model.CardLine {
	under := Say("weighed only, under no rates")
	if s.Edition != nil {
		under = Say("worked under %s", s.Edition.ID)
	}
	lines := []model.CardLine{{Kind: model.CardMiddle, Left: under}}
	return append(lines, StepLines(s.Sheet.Steps(), d)...)
}

// StepLines are steps under their headings, each with its calculation below.
func StepLines(steps []*worksheet.Step, d title.Under) []model.CardLine {
	var lines []model.CardLine
	for _, under := range worksheet.Sections(steps) {
		lines = append(lines, model.CardLine{Kind: model.CardHeading, Left: strings.ToUpper(Text(under.Title))})
		for _, step := range under.Steps {
			lines = append(lines, stepLine(step, d))
		}
	}
	return lines
}

func stepLine(step *worksheet.Step, d title.Under) model.CardLine {
	figure := step.PrintedIn(printer)
	if step.Kind() == worksheet.NotApplied {
		figure = Say("none")
	}
	return model.CardLine{
		Kind: model.CardPair, Left: Text(step.Label()), Right: figure,
		Note: strings.Join(step.ExplainAs(printer, d.Remark(step.Note()), step.Source()), "\n"),
	}
}

// ChangedFacts are what was written down otherwise.
func ChangedFacts(old, now *load.Load) []model.CardLine {
	var lines []model.CardLine
	fact := func(name, before, after string) {
		if before != after {
			lines = append(lines, model.CardLine{Kind: model.CardPair, Left: name, Right: OrElse(after, Say("none")), Note: Say("before: %s", OrElse(before, Say("none")))})
		}
	}
	fact(Say("Grower"), old.Details.Grower.Name, now.Details.Grower.Name)
	fact(Say("Shares"), SharesText(old), SharesText(now))
	fact(Say("Commodity"), GrainName(old.Details.Commodity), GrainName(now.Details.Commodity))
	fact(Say("Truck"), TruckText(old.Details.Truck), TruckText(now.Details.Truck))
	fact(Say("Pit or bin"), old.Details.Bin, now.Details.Bin)
	fact(Say("Sold or stored"), entry.TermsText(old), entry.TermsText(now))
	return lines
}

// ChangedFigures are the lines of the settlement that parted, with what they
// were and what they are.
func ChangedFigures(c *settle.Comparison) []model.CardLine {
	var lines []model.CardLine
	for _, l := range c.Changed() {
		line := model.CardLine{Kind: model.CardPair, Left: Text(l.Label), Right: Signed(l.Change)}
		if l.ID == settle.LineQuantity || l.ID == settle.LinePayable || l.ID == settle.LineNet {
			line.Kind = model.CardTotal
		}
		line.Note = Say("%s → %s", printedOr(l.Before), printedOr(l.After))
		lines = append(lines, line)
	}
	return lines
}

func printedOr(step *worksheet.Step) string {
	if step == nil {
		return Say("none")
	}
	return step.Printed()
}
