package scalehouse_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

func (s *scene) raised(ticket int64, about string, official bool) (dispute.Dispute, string) {
	s.t.Helper()
	id, err := scalehouse.RaiseDispute(ctx, s.Desk, dispute.Raised{Ticket: ticket, By: "Ada Field", About: about, Claim: "16.8 at home", Official: official})
	must(s.t, err)
	one, err := office.DisputeByID(ctx, s.Desk, id)
	must(s.t, err)
	said, err := office.WhenRaised(ctx, s.Desk, one)
	must(s.t, err)
	return one, message.Texts(" ", said).String()
}

func (s *scene) house(change func(*elevator.Profile)) {
	s.t.Helper()
	who := s.Who().Name
	p := s.Profile()
	change(&p)
	must(s.t, scalehouse.SetProfile(ctx, s.as(manager).Desk, p))
	s.as(who)
}

// The close of the second business day belongs to official inspections (7 CFR
// 800.126). A house's own grade has the house's posted days, or those it keeps samples;
// Canada's 7 calendar days run from delivery, also over a late ticket.
func TestDeadlineOfADispute(t *testing.T) {
	for name, c := range map[string]struct {
		house    func(*elevator.Profile)
		official bool
		rule     string
		due      string
	}{
		"posted policy":          {func(p *elevator.Profile) { p.DisputeDays = 10 }, false, dispute.House, "2026-10-11"},
		"as long as samples":     {func(p *elevator.Profile) { p.RetainDays = 30 }, false, dispute.House, "2026-10-31"},
		"an official inspection": {func(p *elevator.Profile) { p.DisputeDays = 10 }, true, "us", "2026-10-05"},
		"Canada, from delivery":  {func(p *elevator.Profile) { p.Rules = "canada"; p.Unlicensed = true }, false, "canada", "2026-10-08"},
	} {
		t.Run(name, func(t *testing.T) {
			s := newScene(t)
			_, n := s.ticket()
			s.house(c.house)
			one, _ := s.raised(n, "moisture", c.official)
			if one.Raised.Rule != c.rule || one.Raised.Due.String() != c.due {
				t.Errorf("rule %s, due %s, want %s and %s", one.Raised.Rule, one.Raised.Due, c.rule, c.due)
			}
		})
	}
}

// A day that has passed and a sample that is thrown out are said when the dispute is
// raised, not weeks later.
func TestDisputeRaisedTooLateSaysSo(t *testing.T) {
	s := newScene(t)
	id, n := s.ticketWithSample()
	if one, said := s.raised(n, "moisture", false); said != "" {
		t.Errorf("in time, dispute %s says %q", one.ID, said)
	} else {
		must(t, scalehouse.ContinueDispute(ctx, s.as(manager).Desk, one.ID, dispute.Decided{Decision: "withdrawn", Stands: true, Day: s.Today()}))
	}
	s.at("2026-10-20 09:00")
	s.answered()
	must(t, scalehouse.DiscardSample(ctx, s.Desk, id))
	_, said := s.raised(n, "moisture", false)
	for _, want := range []string{"2026-10-04", "has passed", "thrown out on 2026-10-20"} {
		if !strings.Contains(said, want) {
			t.Errorf("raised too late it says %q, without %q", said, want)
		}
	}
	if _, said := s.raised(n, "rates", false); strings.Contains(said, "sample") {
		t.Errorf("about rates no sample is asked for: %q", said)
	}
}

// The sealed half goes away with its number, its mass and who pays; the other half
// stays where both know.
func TestSealedHalfOfADispute(t *testing.T) {
	s := newScene(t)
	_, n := s.ticket()
	one, _ := s.raised(n, "moisture", false)
	sent := dispute.Sent{
		Sample: "S1", SealedBy: clerk, Airtight: true, To: "State laboratory", Day: s.Today(),
		Seal: "40117", Mass: quantity.Int(1, quantity.Lb), Half: "shelf 3", FeeBy: "Ada Field",
	}
	refused(t, scalehouse.ContinueDispute(ctx, s.Desk, one.ID, sent), "write grams")
	sent.Mass = quantity.Int(1500, quantity.Gram)
	must(t, scalehouse.ContinueDispute(ctx, s.Desk, one.ID, sent))
	doc, err := office.DisputeFile(ctx, s.Desk, one.ID)
	must(t, err)
	text := doc.Text(200)
	for _, want := range []string{"seal 40117", "1,500 g", "shelf 3", "paid by Ada Field"} {
		if !strings.Contains(text, want) {
			t.Errorf("the file of the dispute lacks %q:\n%s", want, text[:min(len(text), 1500)])
		}
	}
}
