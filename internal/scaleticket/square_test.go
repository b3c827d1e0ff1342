package scaleticket_test

import (
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/slipcode"
	"tenthpoint/internal/tickettest"

	"pgregory.net/rapid"
)

// TestSquareOfAnOlderTicket has the figures of the first format, as its slip was issued.
func TestSquareOfAnOlderTicket(t *testing.T) {
	for want, ticket := range map[string]scaleticket.Ticket{
		"TENTHPOINT/1 1042 52300LB 18.4% 891.89BU 3FA9C01D22E4": tickettest.Corn(t),
		"TENTHPOINT/1 311 26360KG 16.2% 25.5T 3FA9C01D22E4":     tickettest.Tonnes(t),
		// One owner's slip is found by the same code as the whole ticket.
		"TENTHPOINT/1 1043 52300LB 18.4% 891.89BU 3FA9C01D22E4": tickettest.Landlord(t),
	} {
		ticket.Load.SlipCode = 0
		q, ok := scaleticket.QR(scaleticket.Compose(ticket))
		if !ok || q.Text != want || q.Code != nil {
			t.Errorf("the square says %q, want %q", q.Text, want)
		}
		scanned, err := scaleticket.ReadSquare(q.Text)
		if err != nil || scanned.Ticket != ticket.Load.Number || scanned.Payload.Code != ticket.Code {
			t.Errorf("%q is read as ticket %d, %v", q.Text, scanned.Ticket, err)
		}
	}
	for _, draft := range []scaleticket.Ticket{tickettest.Preview(t), tickettest.Refused(t), {}} {
		if q, ok := scaleticket.QR(scaleticket.Compose(draft)); ok {
			t.Errorf("a draft has the square %q", q.Text)
		}
	}
}

// settledAgain reads the square of a ticket, settles what it says and holds every line of it against
// that and against the ticket's own settlement.
func settledAgain(t testing.TB, ticket scaleticket.Ticket) slipcode.Code {
	t.Helper()
	q, ok := scaleticket.QR(scaleticket.Compose(ticket))
	if !ok || q.Code == nil {
		t.Fatalf("ticket %d has no square of its facts: %q", ticket.Load.Number, q.Text)
	}
	scanned, err := scaleticket.ReadSquare(q.Text)
	if err != nil {
		t.Fatal(err)
	}
	code := *scanned.Code
	if !code.Left.IsWhole() {
		return code
	}
	if !code.IsUnder(ticket.Settlement.Edition) {
		t.Fatalf("the code names another edition than %s", ticket.Settlement.Edition.ID)
	}
	again, err := code.Settle(ticket.Settlement.Edition)
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range code.Compare(again) {
		if !line.IsSame() && !code.NoMoney {
			t.Errorf("ticket %d, %s: the slip says %s, its facts give something else", ticket.Load.Number, line.Label(), line.Said)
		}
	}
	for id, figure := range ticket.Settlement.Figures() {
		owner, own := settle.OwnerOf(id)
		step, has := again.Sheet.Step(id)
		switch {
		case !own && ticket.Owner != 0 && figure.Unit().IsMoney(), own && ticket.Owner != 0 && owner != ticket.Owner, code.NoMoney && figure.Unit().IsMoney():
			// What others are paid is not on the slip of one owner, nor money on that of the driver.
		case !has || !step.Value().Equal(figure):
			t.Errorf("ticket %d, %s: the code does not give the desk's %s", ticket.Load.Number, id, figure)
		}
	}
	return code
}

// TestEverySquareSettlesAgain takes each example ticket, on the slip of all and of each owner.
func TestEverySquareSettlesAgain(t *testing.T) {
	squares := 0
	for _, c := range tickettest.Table {
		ticket := c.Make(t)
		if ticket.Settlement == nil || ticket.Settlement.Edition == nil || ticket.Copy == scaleticket.Draft {
			continue
		}
		for owner := range len(ticket.Load.Details.Shares) + 1 {
			ticket.Owner = owner
			if settledAgain(t, ticket).Owner != owner {
				t.Errorf("%s: the square is not that of owner %d", c.Name, owner)
			}
			squares++
		}
	}
	if squares < 20 {
		t.Errorf("only %d squares were read", squares)
	}
}

// TestAnySquareSettlesAgain takes tickets of any sort, on copies of every sort.
func TestAnySquareSettlesAgain(t *testing.T) {
	editions := tickettest.Editions(t)
	rapid.Check(t, func(rt *rapid.T) {
		ticket := tickettest.AnyTicket(rt, t, editions)
		if ticket.Settlement == nil || ticket.Copy == scaleticket.Draft {
			return
		}
		ticket.For = rapid.SampledFrom([]string{"", "driver", "office"}).Draw(rt, "copy for")
		code := settledAgain(t, ticket)
		if code.NoMoney != (ticket.For == "driver") {
			rt.Fatalf("the copy for %q is without money: %v", ticket.For, code.NoMoney)
		}
	})
}

// TestDriversSquareHasNoMoney looks for a price or a sum in the code of the driver's copy.
func TestDriversSquareHasNoMoney(t *testing.T) {
	for _, name := range []string{"shares", "titles-apart"} {
		ticket := tickettest.Named(t, name)
		ticket.For = "driver"
		code := settledAgain(t, ticket)
		for _, o := range code.Owners {
			if code.Price != nil || o.Own != nil && o.Own.Price != nil {
				t.Errorf("%s: the driver's code has a price", name)
			}
		}
		for _, line := range code.Compare(ticket.Settlement) {
			if line.Step == nil || line.Step.Value().Unit().IsMoney() {
				t.Errorf("%s: the driver's code says %s", name, line.Label())
			}
		}
		ticket.House.DriverMoney = true
		if settledAgain(t, ticket).NoMoney {
			t.Errorf("%s: a house that lets the driver's copy say money has none in its code", name)
		}
	}
}

// TestOwnersSquareHidesOthersPrices looks for another owner's price on an owner's slip.
func TestOwnersSquareHidesOthersPrices(t *testing.T) {
	ticket := tickettest.Named(t, "titles-apart")
	for owner := range ticket.Load.Details.Shares {
		ticket.Owner = owner + 1
		for i, o := range settledAgain(t, ticket).Owners {
			if i != owner && o.Own != nil && o.Own.Price != nil {
				t.Errorf("the slip of owner %d has the price of owner %d", owner+1, i+1)
			}
		}
	}
}

// TestTooMuchForASquare has more results and owners than there is room for, signed.
func TestTooMuchForASquare(t *testing.T) {
	q, _ := scaleticket.QR(scaleticket.Compose(tickettest.Shares(t)))
	code := *q.Code
	for range 60 {
		code.Owners = append(code.Owners, code.Owners[0])
		code.Sample = append(code.Sample, code.Sample...)[:min(60, 2*len(code.Sample))]
	}
	fitted, err := code.Fitted(true)
	if err != nil {
		t.Fatal(err)
	}
	if fitted.Left.IsWhole() || fitted.Left.Lines == 0 || len(fitted.Lines) == 0 {
		t.Errorf("left out are %+v, and %d lines are kept", fitted.Left, len(fitted.Lines))
	}
	if _, err := fitted.Settle(tickettest.Corn(t).Settlement.Edition); err == nil {
		t.Error("a code that lacks facts was settled")
	}
}

// TestUnlikeSquares holds a scanned square against the book's.
func TestUnlikeSquares(t *testing.T) {
	ticket := tickettest.Landlord(t)
	book, _ := scaleticket.QR(scaleticket.Compose(ticket))
	scanned, err := scaleticket.ReadSquare(book.Text)
	if err != nil {
		t.Fatal(err)
	}
	if d := scaleticket.Unlike(scanned, ticket.SquareLike(scanned)); len(d) > 0 {
		t.Errorf("a true square differs: %v", d)
	}
	whole := ticket
	whole.Owner = 0
	if d := scaleticket.Unlike(scanned, whole.SquareLike(scanned)); len(d) > 0 {
		t.Errorf("the square of an owner differs from the same owner's: %v", d)
	}
	for what, forge := range map[string]func(*slipcode.Code){
		"a line":   func(c *slipcode.Code) { c.Lines[0].Figure = c.Lines[0].Figure.Add(quantity.Int(1, quantity.Plain)) },
		"the day":  func(c *slipcode.Code) { c.Day = c.Day.AddDays(1) },
		"a weight": func(c *slipcode.Code) { c.Drafts[0].Gross = c.Drafts[0].Gross.Add(c.Drafts[0].Tare) },
	} {
		forged := *scanned.Code
		forged.Lines, forged.Drafts = append([]slipcode.Line{}, forged.Lines...), append([]slipcode.Draft{}, forged.Drafts...)
		forge(&forged)
		text, err := forged.Text()
		if err != nil {
			t.Fatal(err)
		}
		read, err := scaleticket.ReadSquare(text)
		if err != nil {
			t.Fatal(err)
		}
		if len(scaleticket.Unlike(read, ticket.SquareLike(read))) != 1 {
			t.Errorf("%s was forged, and told are %v", what, scaleticket.Unlike(read, ticket.SquareLike(read)))
		}
	}
}
