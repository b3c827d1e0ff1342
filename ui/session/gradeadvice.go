package session

import (
	"context"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/ui/model"
)

// A grade worked out here is advice: the result of the published table for a sample. Nothing is
// settled by it and no slip prints it; a grade on a slip is one that an inspector gave.

// GradeAdvice describes such a grade.
type GradeAdvice struct {
	language Language
	Grade    string // "U.S. No. 2", "no better than U.S. No. 2", "not known"
	// told reports that some factor of the table is tested.
	told bool
	// held are the limits that kept it from the next better grade, noticed faults whose rule was
	// not read, and untested the results that may still lower it.
	held, noticed []string
	untested      string
	// fine are the limitations of the table, and its source.
	fine []string
	// given is the inspector's grade.
	given string
}

// AdviseGrade grades the sample of a load. It is empty for a load without a grain, and while a
// result does not belong to it, which its field reports.
func AdviseGrade(f *Session, l *load.Load) (a GradeAdvice) {
	g, err := office.Grade(context.Background(), f.Desk, l)
	if err != nil {
		return a
	}
	a.language, a.given = f.Language, l.Sample.Grade
	switch {
	case f.Desk.Profile().Rules == "canada":
		a.Grade = f.Say("not known: Canadian grade tables were not read for this program")
	case g.US == nil:
		a.Grade = f.Say("not known: no grade table was read for %s", f.GrainName(g.Commodity.ID))
	default:
		a.readTable(*g.US)
		for _, file := range g.By {
			if file.Kind == grain.KindGrades {
				a.fine = append(a.fine, inForce(f.Language, file))
			}
		}
	}
	return a
}

// readTable describes the result of a table.
func (a *GradeAdvice) readTable(g grain.GradeResult) {
	a.told = g.Best != "" || len(g.Cautions) > 0
	switch {
	case g.Best == "":
		a.Grade = a.language.Say("not known: none of the results its table asks for is there")
	case g.Open:
		a.Grade = a.language.Say("no better than %s", a.language.Say(g.Best))
	default:
		a.Grade = a.language.Say(g.Best)
	}
	a.Grade = Join(", ", append([]string{a.Grade}, said(a.language, g.Special)...)...)
	for _, b := range g.HeldDown {
		a.held = append(a.held, a.language.Text(b)+".")
	}
	for _, fault := range g.Faults {
		a.noticed = append(a.noticed, a.language.Text(fault)+".")
	}
	for _, c := range g.Cautions {
		a.noticed = append(a.noticed, a.language.Text(c)+".")
	}
	if len(g.NotTested) > 0 {
		a.untested = a.language.Say("Not tested, and may lower it: %s.", strings.Join(said(a.language, g.NotTested), ", "))
	}
	if len(g.SpecialNotTested) > 0 {
		a.fine = append(a.fine, a.language.Say("Special grades that cannot be told yet: %s.", strings.Join(said(a.language, g.SpecialNotTested), ", ")))
	}
	a.fine = append(a.fine, a.language.Say(g.NotJudged), a.language.Say("Table: %s.", g.Source))
}

// inForce says since when a table is in force, and that it is to be confirmed.
func inForce(in Language, f *law.File) string {
	switch {
	case !f.Until.IsZero():
		return in.Text(law.ToConfirm(message.New("The table is in force until %s.", f.Until)))
	case !f.From.IsZero():
		return in.Text(law.ToConfirm(message.New("The table is in force from %s.", f.From)))
	}
	return in.Text(law.ToConfirm(message.New("The table is in force until replaced.")))
}

func said(in Language, english []string) []string {
	out := make([]string, len(english))
	for i, text := range english {
		out[i] = in.Say(text)
	}
	return out
}

// Statuses is the advice beside the tests of the bench; none while nothing of the
// table is tested.
func (a GradeAdvice) Statuses() []model.Status {
	if !a.told {
		return nil
	}
	lines := append([]string{a.language.Say("%s (advisory, not official)", a.Grade)}, a.held...)
	lines = append(lines, a.noticed...)
	if a.untested != "" {
		lines = append(lines, a.untested)
	}
	return []model.Status{{State: model.Plain, Word: a.language.Say("would grade"), Text: strings.Join(lines, "\n")}}
}

// Lines are the advice under a working, apart from it: no figure uses it.
func (a GradeAdvice) Lines() []model.CardLine {
	if a.Grade == "" {
		return nil
	}
	out := []model.CardLine{
		{Kind: model.CardHeading, Left: strings.ToUpper(a.language.Say("Grade, advice only"))},
		{Kind: model.CardPair, Left: a.language.Say("Would grade"), Right: a.Grade, Note: a.language.Say("advisory, not official: no figure of the ticket uses it")},
	}
	text := func(kind model.CardKind, sentence string) {
		if sentence != "" {
			out = append(out, model.CardLine{Kind: kind, Left: sentence})
		}
	}
	for _, sentence := range a.held {
		text(model.CardText, sentence)
	}
	for _, sentence := range a.noticed {
		text(model.CardMark, sentence)
	}
	text(model.CardText, a.untested)
	if a.given != "" {
		out = append(out, model.CardLine{Kind: model.CardPair, Left: a.language.Say("Grade given, on the slip"), Right: a.given})
	}
	for _, sentence := range append(a.fine, a.language.Say(grain.Advisory)) {
		text(model.CardSmall, sentence)
	}
	return out
}

// GradeLines returns the advice on a load's grade, to print under its working.
func GradeLines(f *Session, l *load.Load) []model.CardLine {
	return AdviseGrade(f, l).Lines()
}
