package sheets

import (
	"context"
	"strings"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

var ctx = context.Background()

func must(t *testing.T, err error) {
	t.Helper()
	sessiontest.Must(t, err)
}

// ofHolloway is the form with a grower named who has tickets left, sold and stored.
func ofHolloway(t *testing.T) (*sessiontest.Room, *Settle) {
	t.Helper()
	r := sessiontest.DemoRoom(t, 120)
	s := NewSettle(r.Session)
	s.Reload()
	s.Type("grower", "102")
	return r, s
}

// at puts the keyboard on the first ticket of a grain that has, or lacks, a price.
func at(t *testing.T, s *Settle, grain string, priced bool) money.Unsettled {
	t.Helper()
	for _, u := range s.left {
		if u.Commodity == grain && (u.Price != nil) == priced {
			s.at = u.Ticket
			return u
		}
	}
	t.Fatalf("no ticket of %s is left with a price %v", grain, priced)
	return money.Unsettled{}
}

// The sheet fills in as tickets are chosen, by the figures of the act that issues it, and F12 issues it.
func TestSettleFillsInAsOneChooses(t *testing.T) {
	r, s := ofHolloway(t)
	if s.Now.Paper != nil || s.CanIssue() {
		t.Error("a sheet without tickets can be issued")
	}
	u := at(t, s, "corn", true)
	s.Toggle()
	if !s.CanIssue() || s.Now.Paper == nil {
		t.Fatalf("the sheet cannot be issued: %s", s.Now.Remark.Text)
	}
	if words := sessiontest.WordsOf(*s.Now.Paper); !strings.Contains(words, "not issued") {
		t.Error("the sheet does not say that it is not issued")
	}
	payable := s.Now.Figures[2].Value
	s.Issue()
	sheets, err := money.Sheets(ctx, r.Session.Desk)
	must(t, err)
	if len(sheets) != 1 || sheets[0].Lines[0].Ticket != u.Ticket || sheets[0].Figures["payable"].FixedString(cents) != payable {
		t.Fatalf("made %+v, shown %s", sheets, payable)
	}
	if len(r.Papers["sheet-1"]) == 0 {
		t.Error("nothing is printed")
	}
	if _, there := s.ticket(u.Ticket); there || s.texts["grower"] != "102" {
		t.Error("the ticket is still left, or the grower is gone")
	}
}

// What cannot be settled is a sentence on the form, and leaves F12 asleep.
func TestSettleSaysWhyNot(t *testing.T) {
	_, s := ofHolloway(t)
	at(t, s, "corn", false)
	s.Toggle()
	if s.CanIssue() || s.Now.Remark.State != model.Stop || !strings.Contains(s.WhyNotIssue(), "stays its owner's") {
		t.Errorf("stored grain: %+v", s.Now.Remark)
	}
	s.Type("sale", model.TickOn)
	s.Type("price", "4.05")
	if !s.CanIssue() {
		t.Errorf("sold now at a price: %s", s.WhyNotIssue())
	}
	s.Type("price", "much")
	if f := sessiontest.FieldOf(t, s, "price"); f.State != model.Stop || f.Note == "" || s.CanIssue() {
		t.Errorf("a price that is no figure: %+v", f)
	}
	if next := s.Enter("price"); next != "price" {
		t.Errorf("Enter goes on to %q", next)
	}
}

// A part of a ticket leaves the rest open.
func TestSettlePart(t *testing.T) {
	r, s := ofHolloway(t)
	u := at(t, s, "corn", true)
	s.AskPart()
	if wrong := r.Answer(map[string]string{"part": "-3"}); wrong["part"] == "" {
		t.Error("a part below nothing is taken")
	}
	r.Answer(map[string]string{"part": "100"})
	s.Issue()
	left, there := s.ticket(u.Ticket)
	if want := u.Left.Sub(quantity.Int(100, u.Left.Unit())); !there || !left.Left.Equal(want) {
		t.Errorf("left %s, want %s", left.Left, want)
	}
}

// The posted price is proposed in the field, and taken only where one asks for it.
func TestSettleProposesThePostedPrice(t *testing.T) {
	r, s := ofHolloway(t)
	bid := elevator.PostedPrice{Commodity: "corn", Day: r.Session.Desk.Today(), Price: quantity.Of("4.21", quantity.DollarsPerBu)}
	must(t, scalehouse.PostPrice(ctx, r.Session.Desk, bid))
	s.Reload()
	at(t, s, "corn", false)
	s.Toggle()
	if f := sessiontest.FieldOf(t, s, "price"); !strings.Contains(f.Reading, "4.21") || s.Now.order.Price != nil {
		t.Errorf("proposed %q, taken %v", f.Reading, s.Now.order.Price)
	}
	s.TakePosted()
	if p := s.Now.order.Price; p == nil || !p.Equal(bid.Price) || s.Now.order.Source != "posted" {
		t.Errorf("taken %v from %q", p, s.Now.order.Source)
	}
}

// What is typed and chosen stands there again after a stop, and not after the sheet is issued.
func TestSettleOutlivesAStop(t *testing.T) {
	r, s := ofHolloway(t)
	u := at(t, s, "corn", true)
	s.Toggle()
	s.Type("payees", "First Bank")
	again := NewSettle(r.Reopen().Session)
	again.Reload()
	if _, chosen := again.parts[u.Ticket]; !chosen || again.texts["payees"] != "First Bank" || again.texts["grower"] != "102" {
		t.Errorf("texts %v, chosen %v", again.texts, again.parts)
	}
	again.Issue()
	if after := NewSettle(r.Reopen().Session); len(after.texts) > 0 || len(after.parts) > 0 {
		t.Errorf("after the sheet was issued: %v, %v", after.texts, after.parts)
	}
}

// All chooses the tickets of one grain, and leaves them out again.
func TestSettleAll(t *testing.T) {
	_, s := ofHolloway(t)
	at(t, s, "corn", true)
	s.ToggleAll()
	n := 0
	for _, u := range s.left {
		if u.Commodity == "corn" {
			n++
		}
	}
	if len(s.parts) != n || n < 2 {
		t.Errorf("%d of %d are chosen", len(s.parts), n)
	}
	if s.ToggleAll(); len(s.parts) != 0 {
		t.Errorf("%d stay chosen", len(s.parts))
	}
}
