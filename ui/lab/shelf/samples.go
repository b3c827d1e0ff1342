package shelf

import (
	"context"

	"tenthpoint/internal/office"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Samples is the shelf of retained samples: which may be discarded today, which must stay, and
// which a dispute holds.
type Samples struct {
	session *session.Session
	kept    []office.Retained
	chosen  string // load it was taken from
}

// NewSamples makes the list, empty until its first refresh: a shelf may be long, and a screen reads
// nothing before it is shown.
func NewSamples(f *session.Session) *Samples { return &Samples{session: f} }

// Refresh reads the shelf from the book.
func (s *Samples) Refresh() {
	kept, err := office.SamplesKept(context.Background(), s.session.Desk)
	if err != nil {
		s.session.Fail(err)
		return
	}
	s.kept = kept
	s.chosen = session.KeepChosen(kept, func(r office.Retained) string { return r.Load }, s.chosen)
}

func (s *Samples) current() (office.Retained, bool) {
	return session.Find(s.kept, func(r office.Retained) bool { return r.Load == s.chosen })
}

// Choose makes a sample the chosen one.
func (s *Samples) Choose(load string) { s.chosen = load }

// Chosen is the load of the chosen sample.
func (s *Samples) Chosen() string { return s.chosen }

// Empty says that nothing is on the shelf.
func (s *Samples) Empty() string {
	return s.session.Say("No sample is kept. A sample is, once the bench writes down where: in the field Kept at.")
}

// columns of the list.
func (s *Samples) columns() model.Columns[office.Retained] {
	return model.Columns[office.Retained]{
		model.Words(s.session.Say("Sample"), 8, func(r office.Retained) string { return session.OrElse(r.Number, r.Load) }),
		model.Words(s.session.Say("Grain"), 16, func(r office.Retained) string { return session.GrainInList(s.session.Language, r.Crop) }),
		model.Words(s.session.Say("Grower"), 14, func(r office.Retained) string { return r.GrowerName }).Growing(),
		model.Figures(s.session.Say("Ticket"), 6, ticketOf),
		model.Words(s.session.Say("Kept at"), 10, func(r office.Retained) string { return r.Place }),
		model.Words(s.session.Say("Taken"), 10, func(r office.Retained) string { return s.session.Date(r.Taken) }).Dropped(1),
		model.Words(s.session.Say("Keep through"), 11, func(r office.Retained) string { return s.session.Date(r.Until) }),
		model.Words(s.session.Say("Stands"), 16, func(r office.Retained) string { return s.status(r).Text }).Stated(),
	}
}

func ticketOf(r office.Retained) string {
	if r.TicketNo == 0 {
		return session.NoFigure
	}
	return session.Counted(r.TicketNo)
}

// Columns are the columns of the list.
func (s *Samples) Columns() []model.Column { return s.columns().Heads() }

// Rows are the samples, the first to be due first.
func (s *Samples) Rows() []model.Row {
	columns := s.columns()
	var out []model.Row
	for _, r := range s.kept {
		out = append(out, model.Row{Key: r.Load, State: s.status(r).State, Cells: columns.Cells(r)})
	}
	return out
}

// status says whether a sample may be discarded.
func (s *Samples) status(r office.Retained) model.Status {
	switch {
	case !r.Held.IsZero():
		return model.Status{State: model.Locked, Text: s.session.Say("held, %s", r.Held)}
	case r.DueOn(s.session.Desk.Today()):
		return model.Status{State: model.OK, Text: s.session.Say("discard due")}
	}
	return model.Status{Text: s.session.Say("stays")}
}

// Counted returns how many there are and how many may be discarded.
func (s *Samples) Counted() string {
	return s.session.Say("%d kept, %d due to be discarded", len(s.kept), len(s.due()))
}

// CanDiscard reports whether the chosen sample may be discarded.
func (s *Samples) CanDiscard() bool {
	r, there := s.current()
	return there && s.mayGo(r)
}

// WhyNotDiscard is why it may not.
func (s *Samples) WhyNotDiscard() string {
	r, there := s.current()
	switch {
	case !there:
		return s.session.Say("No sample is chosen.")
	case !r.Held.IsZero():
		return s.session.Say("The sample is held for %s.", r.Held)
	}
	return session.Join(" ", s.session.Say("The sample must be kept through %s.", s.session.Date(r.Until)), s.rule())
}

// rule is the retention rule of samples; nothing where none is set.
func (s *Samples) rule() string {
	keep, err := office.RetentionRule(context.Background(), s.session.Desk)
	if err != nil {
		return ""
	}
	return s.session.Text(keep.Stated())
}

// PrintLabel prints the label of the chosen sample.
func (s *Samples) PrintLabel() {
	r, there := s.current()
	if !there {
		return
	}
	l, err := office.Load(context.Background(), s.session.Desk, r.Now)
	if err != nil {
		s.session.Fail(err)
		return
	}
	PrintLabel(s.session, l)
}

// HasSample reports whether a sample is chosen.
func (s *Samples) HasSample() bool {
	_, there := s.current()
	return there
}
