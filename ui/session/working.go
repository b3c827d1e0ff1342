package session

import (
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/slip"
	"tenthpoint/internal/working"
)

// WorkingLines are the steps of a settlement, with the edition they follow.
// Grain that leaves is only weighed, under no edition.
func WorkingLines(s *settle.Settlement, d load.Disposition) []slip.PaperLine {
	under := Say("weighed only, under no rates")
	if s.Edition != nil {
		under = Say("worked under %s", s.Edition.ID)
	}
	lines := []slip.PaperLine{{Kind: slip.PaperMiddle, Left: under}}
	return append(lines, StepLines(s.Sheet.Steps(), d)...)
}

// StepLines are steps under their headings, each with its calculation beneath.
func StepLines(steps []*working.Step, d load.Disposition) []slip.PaperLine {
	var lines []slip.PaperLine
	section := ""
	for _, step := range steps {
		if step.Section() != section {
			section = step.Section()
			lines = append(lines, slip.PaperLine{Kind: slip.PaperHeading, Left: strings.ToUpper(Say(section))})
		}
		lines = append(lines, stepLine(step, d))
	}
	return lines
}

func stepLine(step *working.Step, d load.Disposition) slip.PaperLine {
	figure := step.PrintedIn(Translate)
	if step.Kind() == working.NotApplied {
		figure = Say("none")
	}
	return slip.PaperLine{
		Kind: slip.PaperPair, Field: step.ID(), Left: Say(step.Label()), Right: figure,
		Note: strings.Join(step.ExplainIn(func(note string) string { return Say(d.Remark(note)) }), "\n"),
	}
}
