package scalehouse_test

import (
	"bytes"
	"strings"
	"testing"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/disputes"
	"tenthpoint/internal/scalehouse/housetest"
)

// A void ticket's grain has another ticket, with the same weights and sample,
// each of its own hour and person, and the two name each other.
func TestReissueOfAVoidTicket(t *testing.T) {
	s := housetest.New(t)
	firstID, first := s.Ticket()
	must(t, scalehouse.Void(ctx, s.As(housetest.Manager).Desk, first, "torn in the printer"))
	old := s.Load(firstID)
	s.At("2026-10-02 09:00")
	secondID, err := scalehouse.Reissue(ctx, s.Desk, first, "printed afresh")
	must(t, err)
	opened := s.Load(secondID)
	if opened.Reissues != first || opened.Why != "printed afresh" || opened.Details.Day != old.Details.Day || opened.Opened.Who != housetest.Manager {
		t.Errorf("opened %+v", opened)
	}
	if len(opened.Weighings) != 2 || opened.Weighings[1].Stamp != old.Weighings[1].Stamp || opened.Sampled != old.Sampled || opened.Sample.Number != "S1" {
		t.Errorf("carried %+v and sample of %+v, want those of %+v, %+v", opened.Weighings, opened.Sampled, old.Weighings, old.Sampled)
	}
	second, err := scalehouse.Issue(ctx, s.Desk, secondID)
	must(t, err)
	wantFigures(t, s.Load(secondID), settledByHand)
	old, now := s.Load(firstID), s.Load(secondID)
	if second != 2 || old.Phase != load.Void || old.Ended.Day != housetest.Oct1 || old.Reissue.By != second || old.Reissue.Day != housetest.Oct2 || now.Phase != load.Ticketed {
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
	s.Verify()
}

// A load turned away leaves the void ticket to be reissued again; a reissued
// ticket that is voided is reissued itself, and so on.
func TestReissueAfterReissue(t *testing.T) {
	s := housetest.New(t)
	_, first := housetest.Voided(s)
	turned, err := scalehouse.Reissue(ctx, s.Desk, first, "torn")
	must(t, err)
	must(t, scalehouse.Refuse(ctx, s.Desk, turned, "the driver left"))
	if l, err := office.Ticket(ctx, s.Desk, first); err != nil || l.Reissue.By != 0 {
		t.Errorf("a load rejected is in its place: %+v, %v", l.Reissue, err)
	}
	number := first
	for range 3 {
		id, err := scalehouse.Reissue(ctx, s.Desk, number, "torn again")
		must(t, err)
		next, err := scalehouse.Issue(ctx, s.Desk, id)
		must(t, err)
		_, err = scalehouse.Reissue(ctx, s.Desk, number, "once more")
		refused(t, err, errortest.WrongPhase())
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
	s.Verify()
}

// The void ticket stays void on its day: the closed sheet prints the same bytes,
// and the grain counts once, on the day of the new ticket.
func TestReissueLeavesTheVoidsDayAlone(t *testing.T) {
	s := housetest.Workday(t) // ticket 3 is void on the 1st, and the day is closed
	before, held := housetest.PDF(t, s.DayPaper(housetest.Oct1), housetest.Wide), stockOf(s, "Pit 1")
	s.At("2026-10-02 09:00")
	id, err := scalehouse.Reissue(ctx, s.Desk, 3, "the right truck after all")
	must(t, err)
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	if after := housetest.PDF(t, s.DayPaper(housetest.Oct1), housetest.Wide); !bytes.Equal(before, after) {
		t.Errorf("the sheet changed:\n%s", s.DayPaper(housetest.Oct1).Text(110))
	}
	sheet, err := office.DaySheet(ctx, s.Desk, housetest.Oct2)
	must(t, err)
	if len(sheet.Parts) != 1 || len(sheet.Parts[0].Tickets) != 1 || len(sheet.Later) != 0 || len(sheet.Reissues) != 1 || sheet.Reissues[0].ReissuesOn != housetest.Oct1 {
		t.Errorf("the day after is %+v", sheet.Parts)
	}
	if got, want := stockOf(s, "Pit 1").Sub(held), s.Load(id).Settled.Figures["settled"]; !got.Equal(want) {
		t.Errorf("the position grew by %s, want %s", got, want)
	}
	must(t, scalehouse.CloseDay(ctx, s.Desk, housetest.Oct2, ""))
	housetest.Golden(t, "day-reissued.txt", s.DayPaper(housetest.Oct2).Text(110))
	sheet, err = office.DaySheet(ctx, s.Desk, housetest.Oct2)
	if err != nil || sheet.Closed.Differs || number != 9 {
		t.Errorf("closed with ticket %d, the sheet differs: %v, %v", number, sheet.Closed, err)
	}
	if yard := sheet.Notes.Yard; len(yard) != 1 || yard[0].Key() == yard[0].String() || len(yard[0].Args()) == 0 {
		t.Errorf("the notes of a closed day are sentences without key and arguments: %q", yard)
	}
	s.Verify()
}

// stockOf is the grain in a bin this evening.
func stockOf(s *scene, bin string) quantity.Amount {
	s.T.Helper()
	all, err := office.PositionOn(ctx, s.Desk, s.Today())
	must(s.T, err)
	for _, one := range all {
		if one.Bin == bin {
			return one.Weight
		}
	}
	return quantity.Zero(quantity.Lb)
}

// Void and reissued on one day: the sheet names both, and they add to one load.
func TestVoidAndReissuedOnOneDay(t *testing.T) {
	s := housetest.New(t)
	housetest.Reissued(s)
	text := s.DayPaper(housetest.Oct1).Text(140)
	for _, want := range []string{"1 to 2, 2 in all: 1 in force, 1 void, 0 corrected", "void, reissued as 2", "in place of 1 (void)", "in place of 1 of 2026-10-01 (void)", "reissued ticket, counts today"} {
		if !strings.Contains(text, want) {
			t.Errorf("the sheet does not say %q:\n%s", want, text)
		}
	}
	if one := s.Load("L2").Settled.Figures["settled"]; !stockOf(s, "Pit 1").Equal(one) {
		t.Errorf("in the pit are %s, and one load is %s", stockOf(s, "Pit 1"), one)
	}
	s.Verify()
}

// The sample goes with the grain and is one sample, an open dispute about the
// void ticket holds it, and the ticket in its place decides the dispute.
func TestReissueCarriesSampleAndDispute(t *testing.T) {
	s := housetest.New(t)
	_, number := housetest.TicketWithSample(s)
	s.As(housetest.Manager)
	raised, err := disputes.Raise(ctx, s.Desk, dispute.Raised{Ticket: number, By: "Ada Field", About: "weight", Claim: "it was more"})
	must(t, err)
	must(t, scalehouse.Void(ctx, s.Desk, number, "torn"))
	turned, err := scalehouse.Reissue(ctx, s.Desk, number, "torn")
	must(t, err)
	must(t, scalehouse.Refuse(ctx, s.Desk, turned, "by mistake"))
	kept, err := office.RetainedSample(ctx, s.Desk, "S1")
	must(t, err)
	if kept.Now != "L1" || kept.TicketNo != number || kept.Held.IsZero() {
		t.Errorf("handed back: %+v", kept)
	}
	again, err := scalehouse.Reissue(ctx, s.Desk, number, "torn")
	must(t, err)
	second, err := scalehouse.Issue(ctx, s.Desk, again)
	must(t, err)
	s.At("2026-10-09 08:00")
	if kept, err = office.RetainedSample(ctx, s.Desk, again); err != nil || kept.Load != "L1" || kept.TicketNo != second || kept.Held.IsZero() {
		t.Errorf("of the ticket in its place: %+v, %v", kept, err)
	}
	refused(t, scalehouse.DiscardSamples(ctx, s.Desk, "S1"), errortest.Refused("D1", "1"))
	if notes, err := office.DaySheet(ctx, s.Desk, s.Today()); err != nil || len(notes.Notes.Samples) != 1 || !strings.HasPrefix(notes.Notes.Samples[0].String(), "1 sample of the last") {
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
	_, stranger := s.Ticket()
	refused(t, disputes.Continue(ctx, s.Desk, raised, dispute.Decided{Decision: "weighed again", Corrected: stranger, Day: s.Today()}), errortest.Refused("1"))
	must(t, disputes.Continue(ctx, s.Desk, raised, dispute.Decided{Decision: "weighed again", Corrected: decided, Day: s.Today()}))
	must(t, scalehouse.DiscardSamples(ctx, s.Desk, "S1"))
	if due := due(s, "2026-10-09"); due != "" {
		t.Errorf("discarded once, due again: %q", due)
	}
	s.Verify()
}
