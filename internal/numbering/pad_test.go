package numbering_test

import (
	"slices"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/numbering"
)

func TestEmergencyTicketsAreAccountedFor(t *testing.T) {
	pads := []numbering.Pad{{First: 101, Last: 150}, {First: 501, Last: 550}}
	used := []numbering.Emergency{{Number: 103, Ticket: 12}, {Number: 106, Why: "torn"}, {Number: 502, Ticket: 13}}
	if got := numbering.Skipped(pads, used); !slices.Equal(got, []int64{101, 102, 104, 105, 501}) {
		t.Errorf("skipped %v", got)
	}
	for name, one := range map[string]struct {
		number, inPlaceOf int64
		want              errortest.Want
	}{
		"of no pad": {99, 0, errortest.NotFound()}, "entered": {103, 0, errortest.Refused()}, "spoiled": {106, 0, errortest.Refused()},
		"entered as another": {103, 11, errortest.Refused()},
	} {
		if err := numbering.MayEnter(pads, used, one.number, one.inPlaceOf); !one.want.Met(err) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, err := range map[string]error{
		"free": numbering.MayEnter(pads, used, 104, 0), "of the ticket that it corrects": numbering.MayEnter(pads, used, 103, 12),
	} {
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, p := range []numbering.Pad{{}, {First: 5, Last: 4}, {First: 1, Last: 20_000}} {
		if p.Check() == nil {
			t.Errorf("pad %d to %d was taken", p.First, p.Last)
		}
	}
}
