package rule_test

import (
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
)

func percent(text string) quantity.Amount { return quantity.Of(text, quantity.Percent) }

// Just below, on and just above both ends of a row, for each of the four words
// an end can be written with.
func TestBandBreakpoints(t *testing.T) {
	low, high := percent("15.0"), percent("20.0")
	for _, c := range []struct {
		band                 rule.Band
		words                string
		onLow, inside, onTop bool
	}{
		{rule.Band{Low: low, HasLow: true, LowIn: true, High: high, HasHigh: true, HighIn: true}, "from 15.0 % up to 20.0 %", true, true, true},
		{rule.Band{Low: low, HasLow: true, LowIn: true, High: high, HasHigh: true}, "from 15.0 % under 20.0 %", true, true, false},
		{rule.Band{Low: low, HasLow: true, High: high, HasHigh: true, HighIn: true}, "over 15.0 % up to 20.0 %", false, true, true},
		{rule.Band{Low: low, HasLow: true, High: high, HasHigh: true}, "over 15.0 % under 20.0 %", false, true, false},
	} {
		if got := c.band.String(); got != c.words {
			t.Errorf("band reads %q, want %q", got, c.words)
		}
		for text, want := range map[string]bool{
			"14.9": false, "15.0": c.onLow, "15.1": c.inside, "19.9": c.inside, "20.0": c.onTop, "20.1": false,
		} {
			if got := c.band.Contains(percent(text)); got != want {
				t.Errorf("%s holds %s: %v, want %v", c.band, text, got, want)
			}
		}
	}
}

func TestOpenBands(t *testing.T) {
	if b := (rule.Band{}); !b.Contains(percent("0")) || b.String() != "any value" {
		t.Errorf("a band without ends is %s", b)
	}
	under := rule.Band{High: percent("15"), HasHigh: true}
	over := rule.Band{Low: percent("15"), HasLow: true, LowIn: true}
	if !under.Contains(percent("0")) || under.Contains(percent("15")) || !over.Contains(percent("99")) || over.Contains(percent("14.9")) {
		t.Errorf("%s and %s", under, over)
	}
}
