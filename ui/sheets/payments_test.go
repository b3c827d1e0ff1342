package sheets

import (
	"context"
	"strings"
	"testing"

	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

func payments(t *testing.T) (*sessiontest.Room, *Payments) {
	t.Helper()
	r := sessiontest.SettledRoom(t, 240)
	p := NewPayments(r.Session)
	p.Reload()
	return r, p
}

// Open sheets stand first, the longest due before the others, then those paid, then those void.
func TestPaymentsInOrder(t *testing.T) {
	_, p := payments(t)
	open := 0
	for i, s := range p.all {
		if s.isOpen() {
			open++
		}
		if i > 0 && (p.all[i-1].rank() > s.rank() || s.isOpen() && p.all[i-1].Due.After(s.Due)) {
			t.Errorf("sheet %d stands after %d", s.Number, p.all[i-1].Number)
		}
	}
	if open == 0 || open == len(p.all) {
		t.Errorf("%d of %d sheets are open", open, len(p.all))
	}
	p.Type("void")
	if fits := p.fits(); len(fits) != 1 || fits[0].InForce() {
		t.Errorf("%d sheets are void", len(fits))
	}
}

// What a later sheet took back is open again once the payment that was too much is void, as the lists of
// the terminal tell it.
func TestOpenIsWhatTheBalancesSay(t *testing.T) {
	dollars := func(n int64) quantity.Amount { return quantity.Int(n, quantity.Dollar) }
	payable := func(n int64) map[string]quantity.Amount { return map[string]quantity.Amount{"payable": dollars(n)} }
	all := standingsOf(
		[]paysheet.Sheet{{Number: 1, Figures: payable(100)}, {Number: 2, Figures: payable(50), Advances: []paysheet.Advance{{Amount: dollars(200), Sheet: 1}}}},
		[]paysheet.Payment{{Sheet: 1, Amount: dollars(300), Voided: &paysheet.Voided{}}},
	)
	if one := all[0]; one.Number != 1 || !one.Left.Equal(dollars(300)) {
		t.Errorf("sheet %d, open %s", one.Number, one.Left)
	}
}

// What is open is proposed as a payment; it is recorded once, and the stub is printed.
func TestPay(t *testing.T) {
	r, p := payments(t)
	one, _ := p.sheet()
	left := one.Left
	p.Pay()
	if wrong := r.Answer(map[string]string{"amount": "nothing"}); wrong["amount"] == "" {
		t.Error("a payment of no figure is taken")
	}
	r.Answer(map[string]string{"reference": ""})
	if !strings.Contains(r.Question().Fault, "has a number") {
		t.Fatalf("a check without a number: %q", r.Question().Fault)
	}
	r.Answer(map[string]string{"reference": "50001"})
	all, err := money.Payments(ctx, r.Session.Desk)
	must(t, err)
	last := all[len(all)-1]
	if !last.Amount.Equal(left) || last.Sheet != one.Number || last.Reference != "50001" {
		t.Errorf("recorded %+v of %s", last, left)
	}
	if len(r.Papers["payment-"+last.ID()]) == 0 {
		t.Error("the stub is not printed")
	}
	p.Choose(one.ID())
	if p.CanPay() || p.Headline().State != model.OK {
		t.Errorf("after the payment: %+v", p.Headline())
	}
}

// A sheet on which money was paid is not void before its payment is; then another takes its place.
func TestVoidAndSettleAgain(t *testing.T) {
	r, p := payments(t)
	var paid standing
	for _, s := range p.all {
		if s.rank() == 1 {
			paid = s
		}
	}
	p.Choose(paid.ID())
	p.Void()
	r.Answer(map[string]string{"reason": "wrong price"})
	if !strings.Contains(r.Question().Fault, "Void the payment first") {
		t.Fatalf("a paid sheet: %q", r.Question().Fault)
	}
	r.Asked = nil
	p.VoidPayment()
	r.Answer(map[string]string{"reason": "check lost"})
	p.Choose(paid.ID())
	p.Void()
	r.Answer(map[string]string{"reason": "wrong price"})
	p.Choose(paid.ID())
	if p.CanVoid() || !p.CanSettleAgain() {
		t.Fatal("the sheet is still in force")
	}
	s := NewSettle(r.Session)
	p.SettleAgain()
	s.Reload()
	if r.Screen != "settle" || s.texts["corrects"] != paid.ID() || len(s.parts) == 0 || !s.CanIssue() {
		t.Fatalf("screen %s, in place of %q, %d tickets: %s", r.Screen, s.texts["corrects"], len(s.parts), s.WhyNotIssue())
	}
	s.Issue()
	sheets, err := money.Sheets(ctx, r.Session.Desk)
	must(t, err)
	made := sheets[len(sheets)-1]
	if made.Corrects != paid.Number || !made.Figures["quantity"].Equal(paid.Figures["quantity"]) {
		t.Errorf("made %d in place of %d, %s for %s", made.Number, made.Corrects, made.Figures["quantity"], paid.Figures["quantity"])
	}
}

// Lists of levies and totals are papers of a span of days.
func TestSpanPapers(t *testing.T) {
	r, p := payments(t)
	p.Remit()
	if wrong := r.Answer(map[string]string{"from": "soon"}); wrong["from"] == "" {
		t.Error("a day that is none is taken")
	}
	r.Answer(nil)
	p.Totals()
	r.Answer(nil)
	for _, name := range []string{"levies", "totals"} {
		if len(r.Papers[name]) == 0 {
			t.Errorf("no paper %s", name)
		}
	}
}

// What is handed on of a levy is all that is owed unless less is typed; more is refused; a handover that is
// taken back is owed again.
func TestHandALevyOn(t *testing.T) {
	r, p := payments(t)
	owed := func() quantity.Amount {
		all, err := money.Owings(context.Background(), r.Session.Desk, r.Session.Desk.Today())
		if err != nil || len(all) == 0 {
			t.Fatal(all, err)
		}
		return all[0].Left
	}
	first := owed()
	if first.Sign() <= 0 {
		t.Fatalf("%s is owed of the first levy", first)
	}
	handOn(p)
	if wrong := r.Answer(map[string]string{"amount": "much"}); wrong["amount"] == "" {
		t.Error("a sum that is none is taken")
	}
	r.Answer(map[string]string{"amount": "0.05", "reference": "40120"})
	if left := owed(); !left.Equal(first.Sub(quantity.Of("0.05", quantity.Dollar))) {
		t.Errorf("of %s, after 5 cents %s is owed", first, left)
	}
	handOn(p)
	r.Answer(map[string]string{"amount": "999999"})
	if left := owed(); !left.Equal(first.Sub(quantity.Of("0.05", quantity.Dollar))) {
		t.Errorf("more than is owed is handed on: %s is left", left)
	}
	takeBack(p)
	r.Answer(map[string]string{"why": "stopped"})
	if left := owed(); !left.Equal(first) {
		t.Errorf("after it is taken back %s is owed, not %s", left, first)
	}
	handOn(p)
	r.Answer(nil)
	if left := owed(); !left.IsZero() {
		t.Errorf("of all that is owed %s is left", left)
	}
}
