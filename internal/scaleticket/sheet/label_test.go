package sheet

import (
	"bytes"
	"strings"
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

func TestLabel(t *testing.T) {
	l, err := scaleticket.SampleLabel(tickettest.Corn(t))
	if err != nil {
		t.Fatal(err)
	}
	r := recorded(LabelLayout(l))
	if got := append(r.overlaps(), r.outside...); len(got) > 0 {
		t.Errorf("label: %v", got)
	}
	for _, want := range []string{
		"Retained sample, Example Prairie Elevator", "S-2041", "Keep until 2026-10-17",
		"Corn, Moisture 18.4 %, shelf 3", "Ticket 1042, Alder Farm, 2026-10-14", "EXAMPLE - NOT FOR TRADE",
	} {
		if !strings.Contains(r.words(), squashed(want)) {
			t.Errorf("the label lacks %q", want)
		}
	}
	var a, b bytes.Buffer
	if err := Label(&a, l); err != nil {
		t.Fatal(err)
	}
	if err := Label(&b, l); err != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Errorf("the second label is another (%v)", err)
	}
}
