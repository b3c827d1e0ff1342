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
func WorkingLines(in Language, s *settle.Settlement, d title.Under) []model.CardLine {
	under := in.Say("weighed only, under no rates")
	if s.Edition != nil {
		under = in.Say("worked under %s", s.Edition.ID)
	}
	lines := []model.CardLine{{Kind: model.CardMiddle, Left: under}}
	return append(lines, StepLines(in, s.Sheet.Steps(), d)...)
}

// StepLines are steps under their headings, each with its calculation below.
func StepLines(in Language, steps []*worksheet.Step, d title.Under) []model.CardLine {
	var lines []model.CardLine
	for _, under := range worksheet.Sections(steps) {
		lines = append(lines, model.CardLine{Kind: model.CardHeading, Left: strings.ToUpper(in.Text(under.Title))})
		for _, step := range under.Steps {
			lines = append(lines, stepLine(in, step, d))
		}
	}
	return lines
}

func stepLine(in Language, step *worksheet.Step, d title.Under) model.CardLine {
	figure := step.PrintedIn(in.Printer())
	if step.Kind() == worksheet.NotApplied {
		figure = in.Say("none")
	}
	return model.CardLine{
		Kind: model.CardPair, Left: in.Text(step.Label()), Right: figure,
		Note: strings.Join(step.ExplainAs(in.Printer(), d.Remark(step.Note()), step.Source()), "\n"),
	}
}

// ChangedFacts are the facts that differ.
func ChangedFacts(in Language, old, now *load.Load) []model.CardLine {
	var lines []model.CardLine
	fact := func(name, before, after string) {
		if before != after {
			lines = append(lines, model.CardLine{Kind: model.CardPair, Left: name, Right: OrElse(after, in.Say("none")), Note: in.Say("before: %s", OrElse(before, in.Say("none")))})
		}
	}
	fact(in.Say("Grower"), old.Details.Grower.Name, now.Details.Grower.Name)
	fact(in.Say("Shares"), SharesText(in, old), SharesText(in, now))
	fact(in.Say("Commodity"), in.GrainName(old.Details.Commodity), in.GrainName(now.Details.Commodity))
	fact(in.Say("Truck"), TruckText(old.Details.Truck), TruckText(now.Details.Truck))
	fact(in.Say("Pit or bin"), old.Details.Bin, now.Details.Bin)
	fact(in.Say("Sold or stored"), entry.TermsText(old), entry.TermsText(now))
	return lines
}

// ChangedFigures are the lines of the settlement that parted, with what they
// were and what they are.
func ChangedFigures(in Language, c *settle.Comparison) []model.CardLine {
	var lines []model.CardLine
	for _, l := range c.Changed() {
		line := model.CardLine{Kind: model.CardPair, Left: in.Text(l.Label), Right: Signed(in, l.Change)}
		if l.ID == settle.LineQuantity || l.ID == settle.LinePayable || l.ID == settle.LineNet {
			line.Kind = model.CardTotal
		}
		line.Note = in.Say("%s → %s", printedOr(in, l.Before), printedOr(in, l.After))
		lines = append(lines, line)
	}
	return lines
}

func printedOr(in Language, step *worksheet.Step) string {
	if step == nil {
		return in.Say("none")
	}
	return step.Printed()
}
