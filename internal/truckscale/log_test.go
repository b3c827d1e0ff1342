package truckscale

import (
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
)

func lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }

func made(day string) Made { return Made{Day: quantity.MustDate(day), By: "Noor Castellan"} }

func logOf(rules string, entries ...Fact) Log {
	return Log{Scale: elevator.Scale{ID: "1", Division: lb(20), Capacity: lb(120_000)}, Rules: rules, Laws: shippedLaws(), Entries: entries}
}

func TestScaleStatusOfADay(t *testing.T) {
	certificate := Certificate{Made: made("2026-05-04"), Scale: "1", Number: "C-118", Inspector: "State", Until: quantity.MustDate("2027-05-03"), Seals: "40117, 40118"}
	zero := Zeroed{Made: made("2026-10-01"), Shown: lb(0)}
	good := Weighed{Made: made("2026-09-30"), Known: lb(20_000), Shown: lb(20_020), Weights: "20 test weights, certificate W-7"}
	for name, c := range map[string]struct {
		log  Log
		want State
	}{
		"nothing written down":    {logOf("us"), Unlogged},
		"all in order":            {logOf("us", certificate, good, zero), Good},
		"not looked at today":     {logOf("us", certificate, good, Zeroed{Made: made("2026-09-30"), Shown: lb(0)}), Due},
		"not at zero":             {logOf("us", certificate, good, Zeroed{Made: made("2026-10-01"), Shown: lb(40)}), Due},
		"below zero":              {logOf("us", certificate, good, Zeroed{Made: made("2026-10-01"), Shown: lb(-20)}), Due},
		"no certificate":          {logOf("us", good, zero), Due},
		"certificate ends soon":   {logOf("us", Certificate{Made: made("2025-10-20"), Number: "C", Until: quantity.MustDate("2026-10-19")}, good, zero), Due},
		"certificate ended":       {logOf("us", Certificate{Made: made("2025-09-20"), Number: "C", Until: quantity.MustDate("2026-09-30")}, good, zero), Expired},
		"off, by a rule read":     {logOf("canada", certificate, Weighed{Made: made("2026-09-30"), Known: lb(20_000), Shown: lb(20_060), Weights: "w"}, zero), Outside},
		"off, by a rule not read": {logOf("us", certificate, Weighed{Made: made("2026-09-30"), Known: lb(20_000), Shown: lb(20_060), Weights: "w"}, zero), Good},
		"two scales far apart":    {logOf("canada", certificate, good, zero, Compared{Made: made("2026-10-01"), Other: "2", Shown: lb(60_000), OtherShown: lb(59_700), What: "truck 7"}), Outside},
		"two scales alike":        {logOf("canada", certificate, good, zero, Compared{Made: made("2026-10-01"), Other: "2", Shown: lb(60_000), OtherShown: lb(59_960), What: "truck 7"}), Good},
		"out of service":          {logOf("us", certificate, good, zero, Service{Made: made("2026-10-01"), Scale: "1", Out: true, Reason: "load cell"}), Out},
		"back in service":         {logOf("us", certificate, good, zero, Service{Made: made("2026-09-01"), Scale: "1", Out: true, Reason: "load cell"}, Service{Made: made("2026-10-01"), Scale: "1", Reason: "cell replaced, inspected"}), Good},
		"out only tomorrow":       {logOf("us", certificate, good, zero, Service{Made: made("2026-10-02"), Scale: "1", Out: true, Reason: "load cell"}), Good},
	} {
		if got := c.log.Status(quantity.MustDate("2026-10-01")); got.State != c.want || len(got.Said) == 0 {
			t.Errorf("%s: %s %v, want %s", name, got.State, got.Said, c.want)
		}
	}
}

func TestEntriesThatCannotBe(t *testing.T) {
	for name, f := range map[string]Fact{
		"zero in dollars":       Zeroed{Made: made("2026-10-01"), Shown: quantity.Int(0, quantity.Dollar)},
		"nobody looked":         Zeroed{Made: Made{Day: quantity.MustDate("2026-10-01")}, Shown: lb(0)},
		"nothing on the deck":   Weighed{Made: made("2026-10-01"), Known: lb(0), Shown: lb(0), Weights: "w"},
		"weights not named":     Weighed{Made: made("2026-10-01"), Known: lb(20_000), Shown: lb(20_000), Weights: " "},
		"two units":             Weighed{Made: made("2026-10-01"), Known: lb(20_000), Shown: quantity.Int(9_000, quantity.Kg), Weights: "w"},
		"one scale":             Compared{Made: made("2026-10-01"), Shown: lb(100), OtherShown: lb(100)},
		"ended before it began": Certificate{Made: made("2026-10-01"), Number: "C", Until: quantity.MustDate("2026-09-30")},
		"no number":             Certificate{Made: made("2026-10-01"), Until: quantity.MustDate("2027-09-30")},
		"out without a reason":  Service{Made: made("2026-10-01"), Out: true},
	} {
		if f.Check() == nil {
			t.Errorf("%s was allowed", name)
		}
	}
}
