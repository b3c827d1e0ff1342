package scaleticket

import (
	"fmt"
	"slices"

	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// workingSection is every step of the settlement in small print, so that each
// figure can be redone from the paper with a pocket calculator.
func workingSection(t *facts) Section {
	p := newPart(t, "working", t.w.Working, SmallPrint)
	if t.weightsOnly != nil {
		weighedWorking(p)
		return p.Section
	}
	if t.s == nil {
		p.put(Line{Kind: Sentence, Label: t.w.NothingWorked})
		return p.Section
	}
	p.put(Line{Kind: Sentence, Label: workedUnder(t)})
	steps := slices.DeleteFunc(slices.Clone(t.s.Sheet.Steps()), func(step *worksheet.Step) bool {
		return isForeign(t, step) || t.withoutMoney() && step.Value().Unit().IsMoney()
	})
	for _, under := range worksheet.Sections(steps) {
		p.put(Line{Kind: Heading, Label: t.w.say(under.Title)})
		for _, step := range under.Steps {
			p.put(stepLine(t, step))
		}
	}
	return p.Section
}

// workedUnder names the edition in full: the steps below name its rows only.
func workedUnder(t *facts) string {
	e := t.s.Edition
	return fmt.Sprintf("%s %s, %s, %s, SHA-256 %s", t.w.WorkedUnder, e.ID, e.Title, t.w.say(e.Days()), e.Hash)
}

func stepLine(t *facts, step *worksheet.Step) Line {
	value := step.PrintedIn(t.w.Printer)
	if step.Kind() == worksheet.NotApplied {
		value = t.w.NotApplied
	}
	return Line{Label: t.w.say(step.Label()), Value: value, Notes: step.ExplainAs(t.w.Printer, t.deal().Under.Remark(step.Note()), t.s.Edition.Within(step.Source()))}
}

// isForeign reports whether a step is another owner's on one owner's slip.
func isForeign(t *facts, step *worksheet.Step) bool {
	owner, owned := settle.OwnerOf(step.ID())
	return t.Owner != 0 && owned && owner != t.Owner
}
