package scalehouse_test

import (
	"bytes"
	"strings"
	"testing"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// A void ticket's grain has another ticket, with the same weights and sample,
// each of its own hour and person, and the two name each other.
func TestReissueOfAVoidTicket(t *testing.T) {
	s := newScene(t)
	firstID, first := s.ticket()
	must(t, scalehouse.Void(ctx, s.as(manager).Desk, first, "torn in the printer"))
	old := s.load(firstID)
	s.at("2026-10-02 09:00")
	secondID, err := scalehouse.Reissue(ctx, s.Desk, first, "printed afresh")
	must(t, err)
	opened := s.load(secondID)
	if opened.Reissues != first || opened.Why != "printed afresh" || opened.Details.Day != old.Details.Day || opened.Opened.Who != manager {
		t.Errorf("opened %+v", opened)
	}
	if len(opened.Weighings) != 2 || opened.Weighings[1].Stamp != old.Weighings[1].Stamp || opened.Sampled != old.Sampled || opened.Sample.Number != "S1" {
		t.Errorf("carried %+v and sample of %+v, want those of %+v, %+v", opened.Weighings, opened.Sampled, old.Weighings, old.Sampled)
	}
	second, err := scalehouse.Issue(ctx, s.Desk, secondID)
	must(t, err)
	wantFigures(t, s.load(secondID), settledByHand)
	old, now := s.load(firstID), s.load(secondID)
	if second != 2 || old.Phase != load.Void || old.Ended.Day != oct1 || old.Again.By != second || old.Again.Day != oct2 || now.Phase != load.Ticketed {
		t.Errorf("ticket %d in place of %+v", second, old)
	}
	chain, err := office.Chain(ctx, s.Desk, first)
	must(t, err)
	if len(chain) != 2 || chain[0].Number != first || chain[1].Number != second {
		t.Errorf("the chain is %v", chain)
	}
	if copyNo, err := scalehouse.RecordPrint(ctx, s.Desk, first); err != nil || copyNo != 0 {
		t.Errorf("the void ticket prints as copy %d, %v", copyNo, err)
	}
	s.verify()
}

// A load turned away leaves the void ticket to be reissued again; a reissued
// ticket that is voided is reissued itself, and so on.
func TestReissueAfterReissue(t *testing.T) {
	s := newScene(t)
	_, first := voided(s)
	turned, err := scalehouse.Reissue(ctx, s.Desk, first, "torn")
	must(t, err)
	must(t, scalehouse.Refuse(ctx, s.Desk, turned, "the driver left"))
	if l, err := office.Ticket(ctx, s.Desk, first); err != nil || l.Again.By != 0 {
		t.Errorf("a load turned away is in its place: %+v, %v", l.Again, err)
	}
	number := first
	for range 3 {
		id, err := scalehouse.Reissue(ctx, s.Desk, number, "torn again")
		must(t, err)
		next, err := scalehouse.Issue(ctx, s.Desk, id)
		must(t, err)
		_, err = scalehouse.Reissue(ctx, s.Desk, number, "once more")
		refused(t, err, "go on with ticket")
		must(t, scalehouse.Void(ctx, s.Desk, next, "torn"))
		number = next
	}
	last, err := scalehouse.Reissue(ctx, s.Desk, number, "at last")
	must(t, err)
	standing, err := scalehouse.Issue(ctx, s.Desk, last)
	must(t, err)
	corrected, err := scalehouse.Correct(ctx, s.Desk, standing, "tare read wrong")
	must(t, err)
	_, err = scalehouse.Issue(ctx, s.Desk, corrected)
	must(t, err)
	chain, err := office.Chain(ctx, s.Desk, standing)
	must(t, err)
	if len(chain) != 6 || chain[0].Number != first || chain[5].Corrects != standing {
		t.Errorf("a chain of %d", len(chain))
	}
	s.verify()
}

// The void ticket stays void on its day: the closed sheet prints the same bytes,
// and the grain counts once, on the day of the new ticket.
func TestReissueLeavesTheVoidsDayAlone(t *testing.T) {
	s := workday(t) // ticket 3 is void on the 1st, and the day is closed
	before, held := pdf(t, s.dayPaper(oct1), wide), s.stockOf("Pit 1")
	s.at("2026-10-02 09:00")
	id, err := scalehouse.Reissue(ctx, s.Desk, 3, "the right truck after all")
	must(t, err)
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	if after := pdf(t, s.dayPaper(oct1), wide); !bytes.Equal(before, after) {
		t.Errorf("the sheet changed:\n%s", s.dayPaper(oct1).Text(110))
	}
	sheet, err := office.DaySheet(ctx, s.Desk, oct2)
	must(t, err)
	if len(sheet.Parts) != 1 || len(sheet.Parts[0].Tickets) != 1 || len(sheet.Later) != 0 || len(sheet.Reissues) != 1 || sheet.Reissues[0].ReissuesOn != oct1 {
		t.Errorf("the day after is %+v", sheet.Parts)
	}
	if got, want := s.stockOf("Pit 1").Sub(held), s.load(id).Settled.Figures["settled"]; !got.Equal(want) {
		t.Errorf("the position grew by %s, want %s", got, want)
	}
	must(t, scalehouse.CloseDay(ctx, s.Desk, oct2, ""))
	golden(t, "day-reissued.txt", s.dayPaper(oct2).Text(110))
	if sheet, err := office.DaySheet(ctx, s.Desk, oct2); err != nil || sheet.Closed.Differs || number != 9 {
		t.Errorf("closed with ticket %d, the sheet differs: %v, %v", number, sheet.Closed, err)
	}
	s.verify()
}

// stockOf is the grain in a bin this evening.
func (s *scene) stockOf(bin string) quantity.Amount {
	s.t.Helper()
	all, err := office.PositionOn(ctx, s.Desk, s.Today())
	must(s.t, err)
	for _, one := range all {
		if one.Bin == bin {
			return one.Weight
		}
	}
	return quantity.Zero(quantity.Lb)
}

// Void and reissued on one day: the sheet names both, and they add to one load.
func TestVoidAndReissuedOnOneDay(t *testing.T) {
	s := newScene(t)
	reissued(s)
	text := s.dayPaper(oct1).Text(140)
	for _, want := range []string{"1 to 2, 2 in all: 1 in force, 1 void, 0 corrected", "void, reissued as 2", "in place of 1 (void)", "in place of 1 of 2026-10-01 (void)", "reissued ticket, counts today"} {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet does not say %q:\n%s", want, text)
		}
	}
	if one := s.load("L2").Settled.Figures["settled"]; !s.stockOf("Pit 1").Equal(one) {
		t.Errorf("in the pit are %s, and one load is %s", s.stockOf("Pit 1"), one)
	}
	s.verify()
}

// Registers and statement say which ticket is in place of which.
func TestReissueInRegistersAndStatement(t *testing.T) {
	s := newScene(t)
	reissued(s)
	papers := s.registers("2026-10-01", "2026-10-01")
	account, err := office.Statement(ctx, s.Desk, "G1", quantity.Date{}, quantity.Date{})
	must(t, err)
	for name, want := range map[string]string{
		papers["tickets"].Text(200): "void 2026-10-01, reissued as 2", papers["voids"].Text(200): "reissued as 2",
		papers["tickets"].Text(201): "issued, in place of 1 (void)", account.Text(200): "in place of 1 (void)", account.Text(201): "1 load",
	} {
		if !strings.Contains(name, want) {
			t.Errorf("%q is not said:\n%s", want, name)
		}
	}
}

// The proof of either ticket names the other, and nothing changed between them.
func TestProofOfAReissue(t *testing.T) {
	s := newScene(t)
	reissued(s)
	paper, err := office.Proof(ctx, s.Desk, 2, office.ProofOptions{})
	must(t, err)
	text := paper.Text(100)
	for _, want := range []string{"IN PLACE OF TICKET 1", "What is not as on ticket 1, which is void", "Reissued because: torn in the printer (Mae Orton, 2026-10-01", "No line differs."} {
		if !strings.Contains(text, want) {
			t.Errorf("the proof does not say %q:\n%s", want, text)
		}
	}
	void, err := office.Proof(ctx, s.Desk, 1, office.ProofOptions{})
	must(t, err)
	if marks := void.Marks; len(marks) != 3 || marks[1].String() != "VOID" || marks[2].String() != "REISSUED AS TICKET 2" {
		t.Errorf("the void ticket's proof is marked %q", marks)
	}
}

// The sample goes with the grain and is one sample, an open dispute about the
// void ticket holds it, and the ticket in its place decides the dispute.
func TestReissueCarriesSampleAndDispute(t *testing.T) {
	s := newScene(t)
	_, number := s.ticketWithSample()
	s.as(manager)
	raised, err := scalehouse.RaiseDispute(ctx, s.Desk, dispute.Raised{Ticket: number, By: "Ada Field", About: "weight", Claim: "it was more"})
	must(t, err)
	must(t, scalehouse.Void(ctx, s.Desk, number, "torn"))
	turned, err := scalehouse.Reissue(ctx, s.Desk, number, "torn")
	must(t, err)
	must(t, scalehouse.Refuse(ctx, s.Desk, turned, "by mistake"))
	kept, err := office.RetainedSample(ctx, s.Desk, "S1")
	must(t, err)
	if kept.Now != "L1" || kept.TicketNo != number || kept.Held == "" {
		t.Errorf("handed back: %+v", kept)
	}
	again, err := scalehouse.Reissue(ctx, s.Desk, number, "torn")
	must(t, err)
	second, err := scalehouse.Issue(ctx, s.Desk, again)
	must(t, err)
	s.at("2026-10-09 08:00")
	if kept, err = office.RetainedSample(ctx, s.Desk, again); err != nil || kept.Load != "L1" || kept.TicketNo != second || kept.Held == "" {
		t.Errorf("of the ticket in its place: %+v, %v", kept, err)
	}
	refused(t, scalehouse.DiscardSample(ctx, s.Desk, "S1"), "held for dispute D1 about ticket 1")
	if notes, err := office.DaySheet(ctx, s.Desk, s.Today()); err != nil || len(notes.Notes.Samples) != 1 || !strings.HasPrefix(notes.Notes.Samples[0].String(), "1 of the last") {
		t.Errorf("in the evening: %+v, %v", notes.Notes, err)
	}
	third, err := scalehouse.Correct(ctx, s.Desk, second, "weighed again")
	must(t, err)
	decided, err := scalehouse.Issue(ctx, s.Desk, third)
	must(t, err)
	file, err := office.DisputeFile(ctx, s.Desk, raised)
	must(t, err)
	for _, want := range []string{"Ticket 2 was issued in place of ticket 1, void: torn", "Ticket 3 corrects ticket 2: weighed again"} {
		if !strings.Contains(file.Text(120), want) {
			t.Errorf("the file does not say %q", want)
		}
	}
	_, stranger := s.ticket()
	refused(t, scalehouse.ContinueDispute(ctx, s.Desk, raised, dispute.Decided{Decision: "weighed again", Corrected: stranger, Day: s.Today()}), "does not correct ticket 1")
	must(t, scalehouse.ContinueDispute(ctx, s.Desk, raised, dispute.Decided{Decision: "weighed again", Corrected: decided, Day: s.Today()}))
	must(t, scalehouse.DiscardSample(ctx, s.Desk, "S1"))
	if due := s.due("2026-10-09"); due != "" {
		t.Errorf("discarded once, due again: %q", due)
	}
	s.verify()
}
