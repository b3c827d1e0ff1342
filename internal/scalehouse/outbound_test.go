package scalehouse_test

import (
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scaleticket"
)

// Grain that leaves needs no test and no rates, and counts in bushels by legal
// weight.
func TestOutboundLoadIsOnlyWeighed(t *testing.T) {
	s := housetest.New(t)
	number := s.Leave("Pit 1", 40000)
	l, err := office.Ticket(ctx, s.Desk, number)
	must(t, err)
	if l.Settled.Edition != "" || l.Settled.EditionHash != "" {
		t.Errorf("an outbound load was settled under %q", l.Settled.Edition)
	}
	for id, want := range map[string]string{"gross": "64000 lb", "tare": "24000 lb", "net": "40000 lb", "bushels": "714.29 bu"} {
		if got := l.Settled.Figures[id]; !got.Equal(housetest.AmountOf(t, want)) {
			t.Errorf("%s is %s, want %s", id, got, want)
		}
	}
	if len(l.Settled.Figures) != 4 {
		t.Errorf("figures: %v", l.Settled.Figures)
	}
	again, err := office.Resettle(ctx, s.Desk, l)
	must(t, err)
	if !again.Net.Value().Equal(housetest.AmountOf(t, "40000 lb")) {
		t.Errorf("weighed again it is %s", again.Net.Value())
	}
	if paper := scaleticket.Compose(scaleticket.Ticket{House: s.Profile(), Load: l, Settlement: again}); len(paper.Sections) == 0 {
		t.Error("there is no slip of it")
	}
	s.Verify()
}

func TestOutboundLoadLacksWeights(t *testing.T) {
	s := housetest.New(t)
	d := housetest.Details()
	d.Direction = load.Outbound
	id, err := scalehouse.OpenLoad(ctx, s.Desk, d)
	must(t, err)
	s.Weigh(id, load.Tare, 24000)
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	refused(t, err, errortest.Invalid())
	s.Weigh(id, load.Gross, 20000)
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	refused(t, err, errortest.Invalid("-4,000 lb"))
}

// Outbound grain takes the same way through void and correction, and takes
// itself back out of the position.
func TestOutboundVoidAndCorrection(t *testing.T) {
	s := housetest.New(t)
	first := s.Leave("Pit 1", 40000)
	s.As(housetest.Manager)
	id, err := scalehouse.Correct(ctx, s.Desk, first, "wrong tare")
	must(t, err)
	s.Weigh(id, load.Tare, 23000)
	second, err := scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	if got := s.InBin("Pit 1"); got != "-41000 lb" {
		t.Errorf("the bin holds %s", got)
	}
	must(t, scalehouse.Void(ctx, s.Desk, second, "truck came back full"))
	if got := s.InBin("Pit 1"); got != "nothing" {
		t.Errorf("the bin holds %s", got)
	}
	s.Verify()
}
