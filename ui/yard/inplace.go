package yard

import (
	"context"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// replaced is the ticket whose place a load's ticket is to take, worked again.
type replaced struct {
	load       *load.Load
	settlement *settle.Settlement
}

// replacedBy reads the ticket that a load is to replace; nil where there is none, or
// where it cannot be worked again, which the check of the book tells.
func replacedBy(f *session.Session, l *load.Load) *replaced {
	ctx := context.Background()
	if l == nil || l.InPlaceOf() == 0 {
		return nil
	}
	old, err := office.Ticket(ctx, f.Desk, l.InPlaceOf())
	if err != nil {
		return nil
	}
	worked, err := office.Resettle(ctx, f.Desk, old)
	if err != nil {
		return nil
	}
	return &replaced{old, worked}
}

// comparison sets the ticket beside the load as it now settles; nil while it does not.
func (s *formState) comparison() *settle.Comparison {
	if s.before == nil || s.settlement == nil {
		return nil
	}
	return settle.Compare(s.before.settlement, s.settlement)
}

// isUnchanged reports whether a correcting load says in every field and every figure
// what the ticket says that it corrects.
func (s *formState) isUnchanged() bool {
	c := s.comparison()
	if c == nil || s.Load.Corrects == 0 || len(c.Changed()) > 0 {
		return false
	}
	for _, field := range s.form.Fields() {
		if field.Shown(s.before.load) != field.Shown(s.Load) {
			return false
		}
	}
	return true
}

// differences are the changes from the ticket that the load replaces: facts, then
// figures with what they were and what they are.
func (s *formState) differences(in session.Language) []model.CardLine {
	c := s.comparison()
	if c == nil {
		return nil
	}
	lines := []model.CardLine{{Kind: model.CardHeading, Left: in.Say("Against ticket %d", s.before.load.Number)}}
	changed := append(session.ChangedFacts(in, s.before.load, s.Load), session.ChangedFigures(in, c)...)
	if len(changed) == 0 {
		changed = []model.CardLine{{Kind: model.CardText, Left: in.Say("No line differs.")}}
	}
	return append(append(lines, changed...), model.CardLine{Kind: model.CardRule})
}

// payableChange is the change of what the grower is paid, in a sentence;
// empty while it is not known.
func (s *formState) payableChange(in session.Language) string {
	c := s.comparison()
	if c == nil {
		return ""
	}
	if s.isUnchanged() {
		return in.Say("Nothing is changed yet.")
	}
	for _, l := range c.Changed() {
		if l.ID == settle.LinePayable && l.Change != nil && l.Before != nil && l.After != nil {
			return in.Say("Payable %s → %s, %s.", l.Before.Printed(), l.After.Printed(), session.Signed(in, l.Change))
		}
	}
	return in.Say("What is payable stays.")
}
