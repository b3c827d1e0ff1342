package prices

import (
	"testing"

	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// A bid is posted for here and now, posted again, and for a month still to come: the newest of each
// is in force, with hour and person.
func TestBids(t *testing.T) {
	r := sessiontest.DemoRoom(t, 20)
	p := NewPrices(r.Session)
	p.Reload()
	if len(p.Rows()) != 0 {
		t.Fatalf("%d bids before any is posted", len(p.Rows()))
	}
	post := func(price, delivery string) {
		t.Helper()
		p.PostOne()
		if faults := r.Answer(map[string]string{"grain": "corn", "price": price, "delivery": delivery}); len(faults) > 0 {
			t.Fatal(faults)
		}
	}
	post("4.12", "")
	post("4.31", "2026-03")
	post("4.15", "")
	rows := p.Rows()
	if len(rows) != 3 || rows[0].Struck || rows[1].Struck || !rows[2].Struck {
		t.Fatalf("rows %+v", rows)
	}
	if rows[0].Cells[3] != "$4.15/bu" || rows[1].Cells[3] != "$4.31/bu" || rows[0].Cells[5] != r.Session.Desk.Who().Name {
		t.Errorf("rows %+v", rows)
	}
	sessiontest.WantSaid(t, r, model.OK, "4.15")
	p.PostOne()
	if faults := r.Answer(map[string]string{"grain": "corn", "price": "4.12", "delivery": "March"}); faults["delivery"] == "" {
		t.Error("March without a year is taken")
	}
	if p.Step(-1); len(p.Rows()) != 0 {
		t.Error("bids of today are listed for yesterday")
	}
}
