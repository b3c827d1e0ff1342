package session

import (
	"strings"
	"tenthpoint/ui/model"

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
	section := ""
	for _, step := range steps {
		if step.Section() != section {
			section = step.Section()
			lines = append(lines, model.CardLine{Kind: model.CardHeading, Left: strings.ToUpper(Say(section))})
		}
		lines = append(lines, stepLine(step, d))
	}
	return lines
}

func stepLine(step *worksheet.Step, d title.Under) model.CardLine {
	figure := step.PrintedIn(printer.Word)
	if step.Kind() == worksheet.NotApplied {
		figure = Say("none")
	}
	return model.CardLine{
		Kind: model.CardPair, Left: Say(step.Label()), Right: figure,
		Note: strings.Join(step.ExplainIn(func(note string) string { return Say(d.Remark(note)) }), "\n"),
	}
}
