package scaleticket_test

import (
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

// TestLabelBeforeTheTicket: the bag is labelled when the probe is drawn.
func TestLabelBeforeTheTicket(t *testing.T) {
	ticket := tickettest.Preview(t)
	ticket.Load.Sample.Number = "S-7"
	l, err := scaleticket.SampleLabel(ticket)
	if err != nil || l.Until != "No date to discard" || l.Lines[0] != "Corn, Moisture not tested" || l.Lines[1] != "Ticket number at issue, Alder Farm, 2026-10-14" {
		t.Errorf("label %+v, %v", l, err)
	}
}

func TestLabelRefused(t *testing.T) {
	for number, problem := range map[string]errortest.Want{
		"":                     errortest.Invalid(),
		"   ":                  errortest.Invalid(),
		"S-2041-2026-10-14-A7": errortest.Invalid("20"),
		"Probe é":              errortest.Invalid(),
	} {
		ticket := tickettest.Corn(t)
		ticket.Load.Sample.Number = number
		if _, err := scaleticket.SampleLabel(ticket); !problem.Met(err) {
			t.Errorf("sample %q: %v; want an error with %q", number, err, problem)
		}
	}
}
