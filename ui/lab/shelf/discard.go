package shelf

import (
	"context"
	"slices"

	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// mayGo reports whether a sample may be discarded today.
func (s *Samples) mayGo(r office.Retained) bool {
	return r.Held.IsZero() && r.DueOn(s.session.Desk.Today())
}

// due are the samples that may be discarded today, the longest due first.
func (s *Samples) due() []office.Retained {
	return slices.DeleteFunc(slices.Clone(s.kept), func(r office.Retained) bool { return !s.mayGo(r) })
}

// Discard asks for confirmation, and records that the chosen sample was thrown out.
func (s *Samples) Discard() {
	if r, there := s.current(); there {
		s.confirm(r)
	}
}

func (s *Samples) confirm(r office.Retained) {
	s.session.Put(model.Ask{
		Title: s.session.Say("Discard sample %s?", session.OrElse(r.Number, r.Load)),
		Text: session.Join(" ", s.session.Say("%s of %s, kept at %s through %s. That it went is written down; a dispute can no longer use it.",
			s.session.GrainName(r.Crop), r.GrowerName, r.Place, s.session.Date(r.Until)), s.rule()),
		State: model.Warn, Yes: s.session.Say("It is discarded"), Danger: true,
		Then: func(map[string]string) { s.discard([]office.Retained{r}) },
	})
}

// CanClear reports whether any sample may be discarded.
func (s *Samples) CanClear() bool { return len(s.due()) > 0 }

// Clear asks which shelf is cleared and of which days, and records that all samples on it that may go
// were thrown out. A shelf is cleared in one walk, so it is one act.
func (s *Samples) Clear() {
	due := s.due()
	if len(due) == 0 {
		return
	}
	s.session.Put(model.Ask{
		Title: s.session.Say("Clear the shelf"),
		Text:  s.session.Say("All samples due to be discarded, of one shelf or of all, and kept through a day at the latest. What a dispute needs stays."),
		Fields: []model.AskField{
			{ID: "shelf", Label: s.session.Say("Shelf"), Options: shelvesOf(due), Chars: 20, Hint: s.session.Say("empty: every shelf")},
			{ID: "through", Label: s.session.Say("Kept through"), Value: due[len(due)-1].Until.String(), Chars: 12, Required: true, Hint: s.session.Say("year-month-day")},
		},
		Yes: s.session.Say("Show how many"),
		Check: func(values map[string]string) map[string]string {
			through, err := quantity.ParseDate(values["through"])
			if err != nil {
				return map[string]string{"through": s.session.Sentence(err)}
			}
			if len(onShelf(due, values["shelf"], through)) == 0 {
				return map[string]string{"through": s.session.Say("No sample there is due to be discarded.")}
			}
			return nil
		},
		Then: func(values map[string]string) {
			through, _ := quantity.ParseDate(values["through"])
			s.confirmClear(onShelf(due, values["shelf"], through))
		},
	})
}

// confirmClear asks once more, with the number of samples that go.
func (s *Samples) confirmClear(going []office.Retained) {
	if len(going) == 1 {
		s.confirm(going[0])
		return
	}
	first, last := going[0], going[len(going)-1]
	s.session.Put(model.Ask{
		Title: s.session.Say("Discard %d samples?", len(going)),
		Text: s.session.Say("From %s, kept through %s, to %s, kept through %s. That they went is written down; a dispute can no longer use them.",
			session.OrElse(first.Number, first.Load), s.session.Date(first.Until), session.OrElse(last.Number, last.Load), s.session.Date(last.Until)),
		State: model.Warn, Yes: s.session.Say("They are discarded"), Danger: true,
		Then: func(map[string]string) { s.discard(going) },
	})
}

// shelvesOf are the shelves of samples, as options.
func shelvesOf(kept []office.Retained) []model.Option {
	var places []string
	for _, r := range kept {
		places = append(places, r.Place)
	}
	slices.Sort(places)
	var out []model.Option
	for _, place := range slices.Compact(places) {
		out = append(out, model.Option{Code: place, Name: place, ByName: true})
	}
	return out
}

// onShelf are the samples of a shelf, or of every one, that had to be kept through a day at the latest.
func onShelf(kept []office.Retained, shelf string, through quantity.Date) []office.Retained {
	var out []office.Retained
	for _, r := range kept {
		if (shelf == "" || r.Place == shelf) && !r.Until.After(through) {
			out = append(out, r)
		}
	}
	return out
}

func (s *Samples) discard(going []office.Retained) {
	names := make([]string, len(going))
	for i, r := range going {
		names[i] = r.Load
	}
	if err := scalehouse.DiscardSamples(context.Background(), s.session.Desk, names...); err != nil {
		s.session.Fail(err)
		return
	}
	s.Refresh()
	if len(going) == 1 {
		s.session.Notify(model.OK, s.session.Say("sample %s is discarded.", session.OrElse(going[0].Number, going[0].Load)))
	} else {
		s.session.Notify(model.OK, s.session.Say("%d samples are discarded.", len(going)))
	}
	s.session.Changed()
}
