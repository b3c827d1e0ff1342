package scalehouse_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/disputes"
	"tenthpoint/internal/scalehouse/housetest"
)

func due(s *scene, day string) string {
	s.T.Helper()
	all, err := office.SamplesDue(ctx, s.Desk, quantity.MustDate(day))
	must(s.T, err)
	var out []string
	for _, r := range all {
		out = append(out, r.Number+" of "+r.Load+" on "+r.Place)
	}
	return strings.Join(out, "; ")
}

func TestProbeNumbersSamples(t *testing.T) {
	s := housetest.New(t).As(housetest.Tester)
	s.As(housetest.Clerk)
	first, second, third := s.Arrive(52300), s.Arrive(41000), s.Arrive(30000)
	s.As(housetest.Tester)
	if a, b := s.Probe(first, "Shelf A1"), s.Probe(second, ""); a != "S1" || b != "S2" {
		t.Errorf("numbered %s and %s", a, b)
	}
	l := s.Load(first)
	if l.Sample.Probes != "2: left front, right rear (musty)" || l.Sample.Kept != "Shelf A1" || l.Sample.Until.String() != "2026-10-04" || l.Sample.Tester != housetest.Tester {
		t.Errorf("written down as %+v", l.Sample)
	}
	if l := s.Load(second); !l.Sample.Until.IsZero() {
		t.Errorf("nothing is kept, until %s", l.Sample.Until)
	}
	// Probing again keeps the number; a number that is taken is refused, and one
	// that the book would give out next is left out when it comes to it.
	if again := s.Probe(first, "Shelf A2"); again != "S1" {
		t.Errorf("probed again as %s", again)
	}
	_, err := scalehouse.Probe(ctx, s.Desk, third, scalehouse.Probed{Number: "S1", Probes: []moisture.Probe{{}}})
	refused(t, err, errortest.Refused("S1", first))
	number, err := scalehouse.Probe(ctx, s.Desk, third, scalehouse.Probed{Number: "S3", Probes: []moisture.Probe{{}, {}}})
	must(t, err)
	if number != "S3" || s.Load(third).Sample.Probes != "2" {
		t.Errorf("own number %s, probes %q", number, s.Load(third).Sample.Probes)
	}
	s.As(housetest.Clerk)
	fourth := s.Arrive(20000)
	if next := s.Probe(fourth, ""); next != "S4" {
		t.Errorf("after an own S3 comes %s", next)
	}
	_, err = scalehouse.Probe(ctx, s.Desk, fourth, scalehouse.Probed{})
	refused(t, err, errortest.Invalid())
}

// A sample of the 1st, kept 3 days, is kept through the 4th and may be discarded on the 5th; its
// discard is a fact and takes it off the list.
func TestSamplesDueAndDiscarded(t *testing.T) {
	s := housetest.New(t)
	id := s.Arrive(52300)
	number := s.Probe(id, "Shelf A1")
	if due := due(s, "2026-10-04"); due != "" {
		t.Errorf("on the last day of keeping %s is due", due)
	}
	if due := due(s, "2026-10-05"); due != "S1 of L1 on Shelf A1" {
		t.Errorf("due on the 5th: %q", due)
	}
	before := s.Contents()
	refused(t, scalehouse.DiscardSamples(ctx, s.Desk, number), errortest.Refused("2026-10-04"))
	refused(t, scalehouse.DiscardSamples(ctx, s.Desk, "S77"), errortest.NotFound("S77"))
	if s.Contents() != before {
		t.Error("a refused discard left something in the book")
	}
	s.At("2026-10-05 08:00")
	must(t, scalehouse.DiscardSamples(ctx, s.As(housetest.Tester).Desk, number))
	if due := due(s, "2026-10-09"); due != "" {
		t.Errorf("discarded and still due: %s", due)
	}
	refused(t, scalehouse.DiscardSamples(ctx, s.Desk, number), errortest.NotFound("S1"))
	s.Verify()
}

// Two samples an elevator numbered alike by hand are told apart by their loads.
func TestSamplesOfOneNumber(t *testing.T) {
	s := housetest.New(t)
	for range 2 {
		sample := housetest.SampleOf("18.0")
		sample.Number, sample.Kept, sample.Until = "7", "Shelf B", quantity.MustDate("2026-10-02")
		must(t, scalehouse.RecordSample(ctx, s.Desk, s.Arrive(52300), sample))
	}
	s.At("2026-10-03 08:00")
	refused(t, scalehouse.DiscardSamples(ctx, s.Desk, "7"), errortest.Invalid("L1", "L2"))
	must(t, scalehouse.DiscardSamples(ctx, s.Desk, "L2"))
	if due := due(s, "2026-10-03"); due != "7 of L1 on Shelf B" {
		t.Errorf("due is %q", due)
	}
}

// A corrected ticket carries its sample on, and an open dispute about either
// ticket holds it.
func TestDisputesHoldSamples(t *testing.T) {
	s := housetest.New(t)
	id, number := housetest.TicketWithSample(s)
	s.As(housetest.Manager)
	raised, err := disputes.Raise(ctx, s.Desk, dispute.Raised{Ticket: number, By: "Ada Field", About: "moisture", Claim: "it was drier"})
	must(t, err)
	again, err := scalehouse.Correct(ctx, s.Desk, number, "tested again")
	must(t, err)
	s.At("2026-10-09 08:00")
	if due := due(s, "2026-10-09"); due != "" {
		t.Errorf("held, and due: %s", due)
	}
	refused(t, scalehouse.DiscardSamples(ctx, s.Desk, "S1"), errortest.Refused("D1", "1"))
	corrected, err := scalehouse.Issue(ctx, s.Desk, again)
	must(t, err)
	refused(t, scalehouse.DiscardSamples(ctx, s.Desk, again), errortest.Refused("D1"))

	must(t, disputes.Continue(ctx, s.Desk, raised, dispute.Sent{Sample: "S1", SealedBy: housetest.Manager, Witness: "Ada Field", Airtight: true, To: "the state laboratory", Day: s.Today()}))
	must(t, disputes.Continue(ctx, s.Desk, raised, dispute.Resulted{By: "the state laboratory", Certificate: "77", Day: s.Today(), Finding: "17.6 %"}))
	must(t, disputes.Continue(ctx, s.Desk, raised, dispute.Decided{Decision: "settled on the result", Corrected: corrected, Day: s.Today()}))
	if due := due(s, "2026-10-09"); due != "S1 of "+id+" on Shelf A1" {
		t.Errorf("decided; due is %q", due)
	}
	must(t, scalehouse.DiscardSamples(ctx, s.Desk, "S1"))
	if due := due(s, "2026-10-09"); due != "" {
		t.Errorf("discarded once, due again: %q", due)
	}
	s.Verify()
}

// A dispute about a moisture is not settled on a ticket that still has the moisture in
// dispute, though the laboratory found another.
func TestDecisionIsHeldAgainstItsTicket(t *testing.T) {
	s := housetest.New(t)
	_, number := housetest.TicketWithSample(s) // 18.0 %
	s.As(housetest.Manager)
	raised, err := disputes.Raise(ctx, s.Desk, dispute.Raised{Ticket: number, By: "Ada Field", About: "moisture", Claim: "it was drier"})
	must(t, err)
	must(t, disputes.Continue(ctx, s.Desk, raised, dispute.Sent{Sample: "S1", SealedBy: housetest.Manager, Witness: "Ada Field", Airtight: true, To: "the state laboratory", Day: s.Today()}))
	figure := quantity.Of("17.4", quantity.Percent)
	must(t, disputes.Continue(ctx, s.Desk, raised, dispute.Resulted{By: "the state laboratory", Certificate: "77", Day: s.Today(), Finding: "17.4 %", Figure: &figure}))
	again, err := scalehouse.Correct(ctx, s.Desk, number, "settled on the result")
	must(t, err)
	same, err := scalehouse.Issue(ctx, s.Desk, again)
	must(t, err)
	decide := func(number int64) error {
		return disputes.Continue(ctx, s.Desk, raised, dispute.Decided{Decision: "settled on 17.4", Corrected: number, Day: s.Today()})
	}
	refused(t, decide(same), errortest.Refused("18 %"))
	third, err := scalehouse.Correct(ctx, s.Desk, same, "the moisture was not corrected")
	must(t, err)
	sample := s.Load(third).Sample
	sample.Moisture = housetest.SampleOf("17.4").Moisture
	must(t, scalehouse.RecordSample(ctx, s.Desk, third, sample))
	right, err := scalehouse.Issue(ctx, s.Desk, third)
	must(t, err)
	must(t, decide(right))
}

// The longer of the rule's days and the elevator's own counts.
func TestRetention(t *testing.T) {
	s := housetest.New(t).As(housetest.Manager)
	for _, c := range []struct {
		rule string
		days int
		want string
		left int
	}{
		{"us-inbound-truck", 0, "us-inbound-truck", 3}, {"us-inbound-truck", 30, office.HouseRule, 30},
		{"montana", 30, "montana", 60}, {office.HouseRule, 10, office.HouseRule, 10},
	} {
		p := housetest.Profile()
		p.RetainDays = c.days
		must(t, scalehouse.SetProfile(ctx, s.Desk, p))
		setup, err := office.BenchSetup(ctx, s.Desk)
		must(t, err)
		setup.Retention = c.rule
		must(t, scalehouse.SetBench(ctx, s.Desk, setup))
		if got, err := office.RetentionRule(ctx, s.Desk); err != nil || got.ID != c.want || got.Days != c.left {
			t.Errorf("%s and %d days: %+v, %v", c.rule, c.days, got, err)
		}
	}
	p := housetest.Profile()
	p.RetainDays = 0
	must(t, scalehouse.SetProfile(ctx, s.Desk, p))
	_, err := office.RetentionRule(ctx, s.Desk)
	refused(t, err, errortest.Incomplete())
}
