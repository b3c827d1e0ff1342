package disputes_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/disputes"
	"tenthpoint/internal/scalehouse/housetest"
)

// A day that has passed and a sample that is thrown out are said when the dispute is
// raised, not weeks later.
func TestDisputeRaisedTooLateSaysSo(t *testing.T) {
	s := housetest.New(t)
	id, n := housetest.TicketWithSample(s)
	if one, said := s.Raised(n, "moisture", false); said != "" {
		t.Errorf("in time, dispute %s says %q", one.ID, said)
	} else {
		must(t, disputes.Continue(ctx, s.As(housetest.Manager).Desk, one.ID, dispute.Decided{Decision: "withdrawn", Stands: true, Day: s.Today()}))
	}
	s.At("2026-10-20 09:00")
	s.Answered()
	must(t, scalehouse.DiscardSamples(ctx, s.Desk, id))
	_, said := s.Raised(n, "moisture", false)
	for _, want := range []string{"2026-10-04", "has passed", "thrown out on 2026-10-20"} {
		if !strings.Contains(said, want) {
			t.Errorf("raised too late it says %q, without %q", said, want)
		}
	}
	if _, said := s.Raised(n, "rates", false); strings.Contains(said, "sample") {
		t.Errorf("about rates no sample is asked for: %q", said)
	}
}

// The sealed half goes away with its number, its mass and who pays; the other half
// stays where both know.
func TestSealedHalfOfADispute(t *testing.T) {
	s := housetest.New(t)
	_, n := s.Ticket()
	one, _ := s.Raised(n, "moisture", false)
	sent := dispute.Sent{
		Sample: "S1", SealedBy: housetest.Clerk, Airtight: true, To: "State laboratory", Day: s.Today(),
		Seal: "40117", Mass: quantity.Int(1, quantity.Lb), Half: "shelf 3", FeeBy: "Ada Field",
	}
	refused(t, disputes.Continue(ctx, s.Desk, one.ID, sent), errortest.Invalid())
	sent.Mass = quantity.Int(1500, quantity.Gram)
	must(t, disputes.Continue(ctx, s.Desk, one.ID, sent))
	doc, err := office.DisputeFile(ctx, s.Desk, one.ID)
	must(t, err)
	text := doc.Text(200)
	for _, want := range []string{"seal 40117", "1,500 g", "shelf 3", "paid by Ada Field"} {
		if !strings.Contains(text, want) {
			t.Errorf("the file of the dispute lacks %q:\n%s", want, text[:min(len(text), 1500)])
		}
	}
}
