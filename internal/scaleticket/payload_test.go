package scaleticket_test

import (
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

func TestPayloadOfATicket(t *testing.T) {
	p, ok := scaleticket.QR(scaleticket.Compose(tickettest.Corn(t)))
	const want = "TENTHPOINT/1 1042 52300LB 18.4% 891.89BU 3FA9C01D22E4"
	if !ok || p.String() != want {
		t.Errorf("payload %q, want %q", p, want)
	}
	p, _ = scaleticket.QR(scaleticket.Compose(tickettest.Tonnes(t)))
	if want := "TENTHPOINT/1 311 26360KG 16.2% 25.5T 3FA9C01D22E4"; p.String() != want {
		t.Errorf("payload %q, want %q", p, want)
	}
	// One owner's slip is found by the same code as the whole ticket.
	p, _ = scaleticket.QR(scaleticket.Compose(tickettest.Landlord(t)))
	if want := "TENTHPOINT/1 1043 52300LB 18.4% 891.89BU 3FA9C01D22E4"; p.String() != want {
		t.Errorf("payload %q, want %q", p, want)
	}
	for _, draft := range []scaleticket.Ticket{tickettest.Preview(t), tickettest.Refused(t), {}} {
		if p, ok := scaleticket.QR(scaleticket.Compose(draft)); ok {
			t.Errorf("a draft has the payload %q", p)
		}
	}
}
