package scalehouse_test

import (
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/slip"
)

// leave weighs a truck out with so many pounds from a bin and issues its
// ticket.
func (s *scene) leave(bin string, pounds int64) (number int64) {
	s.t.Helper()
	d := details()
	d.Direction, d.Bin, d.Consignee = load.Outbound, bin, "A buyer"
	id, err := scalehouse.OpenLoad(ctx, s.Desk, d)
	must(s.t, err)
	s.weigh(id, load.Tare, 24000)
	s.weigh(id, load.Gross, 24000+pounds)
	number, err = scalehouse.Issue(ctx, s.Desk, id)
	must(s.t, err)
	return number
}

// Grain that leaves needs no test and no rates, and counts in bushels by legal
// weight.
func TestOutboundLoadIsOnlyWeighed(t *testing.T) {
	s := newScene(t)
	number := s.leave("Pit 1", 40000)
	l, err := office.Ticket(ctx, s.Desk, number)
	must(t, err)
	if l.Settled.Edition != "" || l.Settled.EditionHash != "" {
		t.Errorf("an outbound load was settled under %q", l.Settled.Edition)
	}
	for id, want := range map[string]string{"gross": "64000 lb", "tare": "24000 lb", "net": "40000 lb", "bushels": "714.29 bu"} {
		if got := l.Settled.Figures[id]; !got.Equal(amountOf(t, want)) {
			t.Errorf("%s is %s, want %s", id, got, want)
		}
	}
	if len(l.Settled.Figures) != 4 {
		t.Errorf("figures: %v", l.Settled.Figures)
	}
	again, err := office.Resettle(ctx, s.Desk, l)
	must(t, err)
	if !again.Net.Value().Equal(amountOf(t, "40000 lb")) {
		t.Errorf("weighed again it is %s", again.Net.Value())
	}
	if paper := slip.Compose(slip.Ticket{House: s.Profile(), Load: l, Settlement: again}); len(paper.Sections) == 0 {
		t.Error("there is no slip of it")
	}
	s.verify()
}

func TestOutboundLoadLacksWeights(t *testing.T) {
	s := newScene(t)
	d := details()
	d.Direction = load.Outbound
	id, err := scalehouse.OpenLoad(ctx, s.Desk, d)
	must(t, err)
	s.weigh(id, load.Tare, 24000)
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	refused(t, err, "No gross yet")
	s.weigh(id, load.Gross, 20000)
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	refused(t, err, "Net would be -4,000 lb")
}

// Outbound grain takes the same way through void and correction, and takes
// itself back out of the position.
func TestOutboundVoidAndCorrection(t *testing.T) {
	s := newScene(t)
	first := s.leave("Pit 1", 40000)
	s.as(manager)
	id, err := scalehouse.Correct(ctx, s.Desk, first, "wrong tare")
	must(t, err)
	s.weigh(id, load.Tare, 23000)
	second, err := scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	if got := s.inBin("Pit 1"); got != "-41000 lb" {
		t.Errorf("the bin holds %s", got)
	}
	must(t, scalehouse.Void(ctx, s.Desk, second, "truck came back full"))
	if got := s.inBin("Pit 1"); got != "nothing" {
		t.Errorf("the bin holds %s", got)
	}
	s.verify()
}

// inBin is the position of a bin for ever after.
func (s *scene) inBin(bin string) string {
	s.t.Helper()
	rows, err := s.book.StockBefore(ctx, "9999-01-01")
	must(s.t, err)
	for _, r := range rows {
		if r.Bin == bin {
			text, _ := r.Weight.MarshalText()
			return string(text)
		}
	}
	return "nothing"
}

func amountOf(t testing.TB, text string) quantity.Amount {
	t.Helper()
	var a quantity.Amount
	must(t, a.UnmarshalText([]byte(text)))
	return a
}
