package present

import (
	"context"

	"tenthpoint/internal/desk"
	"tenthpoint/ui/model"
)

// Samples is the shelf of retained samples: what may go today, what must stay,
// and what a dispute holds.
type Samples struct {
	frame  *Frame
	kept   []desk.Retained
	chosen string // load it was taken from
}

// NewSamples makes the list, empty until it is first refreshed: a shelf may be
// long, and a screen reads nothing before it is shown.
func NewSamples(f *Frame) *Samples { return &Samples{frame: f} }

// Refresh reads the shelf from the book.
func (s *Samples) Refresh() {
	kept, err := s.frame.Desk.SamplesKept(context.Background())
	if err != nil {
		s.frame.Fail(err)
		return
	}
	s.kept = kept
	if _, there := s.inHand(); !there {
		s.chosen = ""
		if len(kept) > 0 {
			s.chosen = kept[0].Load
		}
	}
}

func (s *Samples) inHand() (desk.Retained, bool) {
	return find(s.kept, func(r desk.Retained) bool { return r.Load == s.chosen })
}

// Choose takes a sample in hand.
func (s *Samples) Choose(load string) { s.chosen = load }

// Chosen is the sample in hand, by its load.
func (s *Samples) Chosen() string { return s.chosen }

// Empty says that nothing is on the shelf.
func (s *Samples) Empty() string {
	return Say("No sample is kept. A sample is, once the bench writes down where: in the field Kept at.")
}

// Rows are the samples, the soonest due first.
func (s *Samples) Rows() []model.Row {
	var out []model.Row
	for _, r := range s.kept {
		stand := s.stand(r)
		ticket := noFigure
		if r.TicketNo > 0 {
			ticket = counted(r.TicketNo)
		}
		out = append(out, model.Row{Key: r.Load, State: stand.State, Cells: []string{
			orElse(r.Number, r.Load), grainName(r.Crop), r.GrowerName, ticket, r.Place, s.frame.Date(r.Taken), s.frame.Date(r.Until), stand.Text,
		}})
	}
	return out
}

// stand says whether a sample may go.
func (s *Samples) stand(r desk.Retained) model.Remark {
	switch {
	case r.Held != "":
		return model.Remark{State: model.Locked, Text: Say("held, %s", r.Held)}
	case r.DueOn(s.frame.Desk.Today()):
		return model.Remark{State: model.Warn, Text: Say("may go")}
	}
	return model.Remark{State: model.OK, Text: Say("stays")}
}

// Counted says how many there are and how many may go.
func (s *Samples) Counted() string {
	due := 0
	for _, r := range s.kept {
		if r.Held == "" && r.DueOn(s.frame.Desk.Today()) {
			due++
		}
	}
	return Say("%d kept, %d may go", len(s.kept), due)
}

// CanDiscard reports whether the sample in hand may go.
func (s *Samples) CanDiscard() bool {
	r, there := s.inHand()
	return there && r.Held == "" && r.DueOn(s.frame.Desk.Today())
}

// WhyNotDiscard is why it may not.
func (s *Samples) WhyNotDiscard() string {
	r, there := s.inHand()
	switch {
	case !there:
		return Say("No sample is chosen.")
	case r.Held != "":
		return Say("The sample is held for %s.", r.Held)
	}
	return Say("The sample must be kept through %s.", s.frame.Date(r.Until))
}

// Discard asks once more, and writes down that the sample in hand was thrown
// out.
func (s *Samples) Discard() {
	r, there := s.inHand()
	if !there {
		return
	}
	s.frame.Put(model.Ask{
		Title: Say("Throw out sample %s?", orElse(r.Number, r.Load)),
		Text:  Say("%s of %s, kept at %s through %s. That it went is written down; a dispute can no longer use it.", grainName(r.Crop), r.GrowerName, r.Place, s.frame.Date(r.Until)),
		State: model.Warn, Yes: Say("It is thrown out"), Danger: true,
		Then: func(map[string]string) { s.discard(r) },
	})
}

func (s *Samples) discard(r desk.Retained) {
	if err := s.frame.Desk.DiscardSample(context.Background(), r.Load); err != nil {
		s.frame.Fail(err)
		return
	}
	s.Refresh()
	s.frame.Say(model.OK, Say("sample %s is thrown out.", orElse(r.Number, r.Load)))
	s.frame.Changed()
}

// PrintLabel prints the label of the sample in hand.
func (s *Samples) PrintLabel() {
	r, there := s.inHand()
	if !there {
		return
	}
	l, err := s.frame.Desk.Load(context.Background(), r.Now)
	if err != nil {
		s.frame.Fail(err)
		return
	}
	PrintLabel(s.frame, l)
}

// HasSample reports whether a sample is in hand.
func (s *Samples) HasSample() bool {
	_, there := s.inHand()
	return there
}
