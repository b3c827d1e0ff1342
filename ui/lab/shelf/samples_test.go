package shelf

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse/disputes"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// A sample goes only once its days are over, and never while a dispute needs
// it.
func TestSamplesAreThrownOutWhenTheyMay(t *testing.T) {
	r := sessiontest.DemoRoom(t, 200)
	s := NewSamples(r.Session)
	s.Refresh()
	rows := s.Rows()
	due := slices.IndexFunc(rows, func(row model.Row) bool { return row.State == model.OK })
	stays := slices.IndexFunc(rows, func(row model.Row) bool { return row.State == model.Plain })
	if stays < 0 {
		t.Fatalf("no sample stays: %v", rows)
	}
	s.Choose(rows[stays].Key)
	if s.CanDiscard() || !strings.Contains(s.WhyNotDiscard(), "through") {
		t.Errorf("a sample that must stay may go: %q", s.WhyNotDiscard())
	}
	s.PrintLabel()
	if len(r.Papers) != 1 {
		t.Errorf("no label was printed: %q", r.Last())
	}
	if due < 0 {
		t.Fatalf("no sample is due: %v", rows)
	}
	s.Choose(rows[due].Key)
	s.Discard()
	r.Answer(nil)
	if got := len(s.Rows()); got != len(rows)-1 {
		t.Errorf("%d samples are kept, want one less than %d; said %q", got, len(rows), r.Last())
	}
}

// A shelf is cleared in one act: all that may go there, and nothing else.
func TestAShelfIsClearedAtOnce(t *testing.T) {
	r := sessiontest.DemoRoom(t, 200)
	s := NewSamples(r.Session)
	s.Refresh()
	due, kept := s.due(), len(s.kept)
	if len(due) < 2 {
		t.Fatalf("%d samples may go", len(due))
	}
	shelf, half := due[0].Place, due[len(due)/2].Until
	want := len(onShelf(due, shelf, half))
	s.Clear()
	if wrong := r.Answer(map[string]string{"through": "2020-01-01"}); wrong["through"] == "" {
		t.Error("a day on which nothing may go was taken")
	}
	r.Answer(map[string]string{"shelf": shelf, "through": half.String()})
	if !strings.Contains(r.Question().Title, fmt.Sprint(want)) {
		t.Errorf("%d samples go, and the box asks %q", want, r.Question().Title)
	}
	r.Answer(nil)
	if got := kept - len(s.kept); got != want {
		t.Errorf("%d samples went, want %d of %d; said %q", got, want, len(due), r.Last())
	}
	for s.CanClear() { // the rest, of every shelf
		s.Clear()
		r.Answer(nil)
		r.Answer(nil)
	}
	if got := kept - len(s.kept); got != len(due) {
		t.Errorf("in the end %d samples went, want %d", got, len(due))
	}
}

// A dispute about its ticket holds a sample.
func TestSampleIsHeldForADispute(t *testing.T) {
	r := sessiontest.DemoRoom(t, 120)
	s := NewSamples(r.Session)
	s.Refresh()
	i := slices.IndexFunc(s.kept, func(k office.Retained) bool { return k.TicketNo > 0 })
	k := s.kept[i]
	_, err := disputes.Raise(t.Context(), r.Session.Desk, dispute.Raised{Ticket: k.TicketNo, By: "the grower", About: "moisture", Claim: "it was dry"})
	sessiontest.Must(t, err)
	s.Refresh()
	s.Choose(k.Load)
	if s.CanDiscard() || !strings.Contains(s.WhyNotDiscard(), "held") {
		t.Errorf("a sample under dispute: %q", s.WhyNotDiscard())
	}
	if row := s.Rows()[slices.IndexFunc(s.Rows(), func(row model.Row) bool { return row.Key == k.Load })]; row.State != model.Locked {
		t.Errorf("the sample stands as %+v", row)
	}
}

func TestSamplesOfAnEmptyHouse(t *testing.T) {
	s := NewSamples(sessiontest.EmptyRoom(t).Session)
	s.Refresh()
	if s.HasSample() || s.CanDiscard() || s.WhyNotDiscard() == "" || s.Empty() == "" {
		t.Error("an empty shelf does not say so")
	}
}
