package demo

import (
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/money"
	"tenthpoint/schedules"
)

// A season that is settled has sheets that are paid, open, deferred, void and corrected, contracts of
// every form with what happened to them, and a sound book.
func TestSeasonIsSettled(t *testing.T) {
	tariffs, err := schedules.Tariffs()
	must(t, err)
	levies, err := schedules.Levies()
	must(t, err)
	kept := filled(t, Options{Loads: 600, Seed: 3, Now: noon, Rates: shipped(t), Money: &Money{tariffs, levies}})
	d := opened(t, kept)
	sheets, err := money.Sheets(ctx, d)
	must(t, err)
	seen := map[string]int{"void": 0, "in its place": 0, "deferred": 0, "with a lender": 0, "paid": 0, "in part": 0, "open": 0, "with a levy": 0}
	for _, s := range sheets {
		if !s.InForce() {
			seen["void"]++
		}
		if s.Corrects > 0 {
			seen["in its place"]++
		}
		if !s.PayAfter.IsZero() {
			seen["deferred"]++
		}
		seen["with a lender"] += len(s.Payees)
		seen["with a levy"] += len(s.Levies)
	}
	open, err := money.OpenSheets(ctx, d)
	must(t, err)
	seen["open"] = len(open)
	payments, err := money.Payments(ctx, d)
	must(t, err)
	seen["paid"] = len(payments)
	for _, o := range open {
		if o.Paid.Sign() > 0 {
			seen["in part"]++
		}
	}
	for what, n := range seen {
		if n == 0 {
			t.Errorf("no sheet is %s: %v", what, seen)
		}
	}
	contracts, err := office.Contracts(ctx, d)
	must(t, err)
	forms := map[elevator.ContractForm]bool{}
	changes := 0
	for _, c := range contracts {
		forms[c.Form] = true
		changes += len(c.Changes) + len(c.Parts)
	}
	if len(forms) < 5 || changes < 3 {
		t.Errorf("contracts of %d forms with %d changes", len(forms), changes)
	}
	sound, err := audit.Verify(ctx, d, kept, nil)
	must(t, err)
	if len(sound.Problems) > 0 {
		t.Errorf("the book is not sound: %q", sound.Problems)
	}
}
