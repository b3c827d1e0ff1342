package lab

import (
	"tenthpoint/internal/entry"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Result is everything the bench shows about the current sample, as one value. A screen draws from
// it alone.
type Result struct {
	found outcome
	grade session.GradeAdvice // by the tests made and the other results as typed

	Fields   []model.Field
	Figures  []model.Figure // moisture, spread, tests made
	Tests    []model.Row    // all of them, also those left out
	Statuses []model.Status // the bench's findings about the sample
	Ruler    model.Ruler
}

// Result returns the current result of the current sample.
func (b *Bench) Result() Result {
	s, policy := b.current, b.tools.policy(b.current.crop())
	graded := entry.CopyOf(s.found.would)
	if s.form != nil {
		graded.Sample.Findings, graded.Sample.NoneSeen = s.results().Findings(), s.results().Sample().NoneSeen
	}
	r := Result{
		found: s.found, grade: session.AdviseGrade(b.session, graded),
		Fields: s.fields(func() []model.Option { return b.loads.options(b.session.Language) }), Figures: s.found.figures(policy),
		Tests: s.found.rows(b.tools.equipment), Ruler: s.found.marked(b.session.Language),
	}
	r.Statuses = advice{s.found, s.next, r.grade, policy}.statuses()
	return r
}

// Working is every step from the dial to the moisture, and the grade.
func (r Result) Working(in session.Language) []model.CardLine {
	lines := []model.CardLine{{Kind: model.CardTitle, Left: in.Say("Working of the moisture")}}
	if !r.found.isTested() {
		return append(lines, model.CardLine{Kind: model.CardText, Left: in.Say("No test has been made.")})
	}
	return append(append(lines, session.StepLines(in, r.found.testing.Sheet.Steps(), "")...), r.grade.Lines()...)
}
