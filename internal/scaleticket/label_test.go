package scaleticket

import (
	"bytes"
	"strings"
	"testing"
)

func TestLabel(t *testing.T) {
	l, err := SampleLabel(cornTicket(t))
	if err != nil {
		t.Fatal(err)
	}
	r := &record{width: labelWidth, height: labelHeight}
	drawLabel(r, l)
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
	if err := l.PDF(&a); err != nil {
		t.Fatal(err)
	}
	if err := l.PDF(&b); err != nil || !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Errorf("the second label is another (%v)", err)
	}
}

// TestLabelBeforeTheTicket: the bag is labelled when the probe is drawn.
func TestLabelBeforeTheTicket(t *testing.T) {
	ticket := previewTicket(t)
	ticket.Load.Sample.Number = "S-7"
	l, err := SampleLabel(ticket)
	if err != nil || l.Until != "No date to discard" || l.Lines[0] != "Corn, Moisture not tested" || l.Lines[1] != "Ticket number at issue, Alder Farm, 2026-10-14" {
		t.Errorf("label %+v, %v", l, err)
	}
}

func TestLabelRefused(t *testing.T) {
	for number, problem := range map[string]string{
		"":                     "has no number",
		"   ":                  "has no number",
		"S-2041-2026-10-14-A7": "20 letters",
		"Probe é":              "plain keyboard",
	} {
		ticket := cornTicket(t)
		ticket.Load.Sample.Number = number
		if _, err := SampleLabel(ticket); err == nil || !strings.Contains(err.Error(), problem) {
			t.Errorf("sample %q: %v; want an error with %q", number, err, problem)
		}
	}
}

// TestBars holds a barcode against the bar widths of ISO/IEC 15417 (from memory):
// start B, S, 7, check, stop.
func TestBars(t *testing.T) {
	code, err := bars("S7")
	if err != nil {
		t.Fatal(err)
	}
	var widths strings.Builder
	b := code.Bounds()
	for x := b.Min.X; x < b.Max.X; {
		n := 1
		for x+n < b.Max.X && isDark(code, x+n, b.Min.Y) == isDark(code, x, b.Min.Y) {
			n++
		}
		widths.WriteByte(byte('0' + n))
		x += n
	}
	// Start B is 104, S is 51, 7 is 23; the check is (104 + 51 + 2 x 23) mod 103 = 98.
	const want = "211214" + "213113" + "312131" + "411311" + "2331112"
	if got := widths.String(); got != want {
		t.Errorf("bars are %s, want %s", got, want)
	}
}
