package session

import (
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// WorkingLines are the steps of a settlement, with the edition they follow.
// Grain that leaves is only weighed, under no edition.
func WorkingLines(s *settle.Settlement, d load.Disposition) []scaleticket.PaperLine {
	under := Say("weighed only, under no rates")
	if s.Edition != nil {
		under = Say("worked under %s", s.Edition.ID)
	}
	lines := []scaleticket.PaperLine{{Kind: scaleticket.PaperMiddle, Left: under}}
	return append(lines, StepLines(s.Sheet.Steps(), d)...)
}

// StepLines are steps under their headings, each with its calculation below.
func StepLines(steps []*worksheet.Step, d load.Disposition) []scaleticket.PaperLine {
	var lines []scaleticket.PaperLine
	section := ""
	for _, step := range steps {
		if step.Section() != section {
			section = step.Section()
			lines = append(lines, scaleticket.PaperLine{Kind: scaleticket.PaperHeading, Left: strings.ToUpper(Say(section))})
		}
		lines = append(lines, stepLine(step, d))
	}
	return lines
}

func stepLine(step *worksheet.Step, d load.Disposition) scaleticket.PaperLine {
	figure := step.PrintedIn(printer.Word)
	if step.Kind() == worksheet.NotApplied {
		figure = Say("none")
	}
	return scaleticket.PaperLine{
		Kind: scaleticket.PaperPair, Field: step.ID(), Left: Say(step.Label()), Right: figure,
		Note: strings.Join(step.ExplainIn(func(note string) string { return Say(d.Remark(note)) }), "\n"),
	}
}
