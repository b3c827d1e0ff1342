package rates_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
)

// In Canada dockage is determined of any grain, in the United States not of oats: rates that take it
// say so, and are told where they are in US dollars.
func TestDockageOfAGrainThatHasNone(t *testing.T) {
	text, err := os.ReadFile("../../schedules/editions/oats-metric-2025-c.toml")
	if err != nil {
		t.Fatal(err)
	}
	for currency, want := range map[string]bool{"CAD": false, "USD": true} {
		e, err := rates.Read("oats.toml", []byte(strings.Replace(string(text), `"CAD"`, `"`+currency+`"`, 1)))
		if err != nil {
			t.Fatal(err)
		}
		if f, has := e.Commodity.Dockage(); !has || f.Record.String() != "0.1 half-up" {
			t.Errorf("dockage is taken: %v, recorded to %q", has, f.Record)
		}
		told := slices.ContainsFunc(e.Cautions(), func(c message.Text) bool { return strings.HasPrefix(c.String(), "No dockage is determined of Oats") })
		if told != want {
			t.Errorf("in %s it is told: %v, want %v", currency, told, want)
		}
	}
	oats, err := grain.ByID("oats")
	if err != nil {
		t.Fatal(err)
	}
	if _, has := oats.Dockage(); has {
		t.Error("oats have dockage whatever the rates say")
	}
}
