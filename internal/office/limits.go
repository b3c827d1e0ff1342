package office

import (
	"context"
	"slices"

	"tenthpoint/internal/dryness"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/rule"
)

// MoistureLimits are the moistures at which something changes for the grower.
func MoistureLimits(d Desk, l *load.Load) []moisture.Limit {
	var out []moisture.Limit
	e, err := EditionFor(d, l)
	if err == nil && e != nil {
		out = appendCell(out, message.New("shrink trigger"), e, e.Shrink.Trigger)
		out = appendCell(out, message.New("drying trigger"), e, e.Drying.Trigger)
	}
	return append(out, classLimits(d, l, e)...)
}

func appendCell(out []moisture.Limit, name message.Text, e *rates.Edition, c rule.Cell) []moisture.Limit {
	if !c.Given() || slices.ContainsFunc(out, func(l moisture.Limit) bool { return l.At.Equal(c.Amount) }) {
		return out
	}
	return append(out, moisture.Limit{Name: name, At: c.Amount, Source: c.Source})
}

// classLimits returns the limits of the Canadian classes, where the elevator's rules have them and
// it is clear which grain of the order this is.
func classLimits(d Desk, l *load.Load, e *rates.Edition) []moisture.Limit {
	name := canadaGrain(d, l, e)
	if name == "" {
		return nil
	}
	classes, err := moisture.ClassLimits(name)
	if err != nil {
		return nil
	}
	return classes
}

// MoistureClasses are the Canadian classes of a load's grain; none where the elevator is under
// other rules or it is not clear which grain of the order this is.
func MoistureClasses(d Desk, l *load.Load) []grain.MoistureClass {
	e, err := EditionFor(d, l)
	if err != nil {
		e = nil // without rates the grain may still be clear
	}
	name := canadaGrain(d, l, e)
	if name == "" {
		return nil
	}
	classes, err := grain.Classes(name)
	if err != nil {
		return nil
	}
	return classes
}

// canadaGrain returns the name of a load in the Off Grades of Grain Order: its class where that is
// such a name, else the grain that the edition's floor follows, else the only one there is. Where a
// commodity has several names, as wheat has, any will do when their classes are the same; barley's
// are not, so barley has none until the class is recorded.
func canadaGrain(d Desk, l *load.Load, e *rates.Edition) string {
	if d.Profile().Rules != "canada" {
		return ""
	}
	c, err := grain.ByID(l.Details.Commodity)
	if err != nil {
		return ""
	}
	names := c.MoistureGrains()
	switch {
	case slices.Contains(names, l.Details.Class):
		return l.Details.Class
	case e != nil && e.Shrink.FloorGrain != "":
		return e.Shrink.FloorGrain
	case len(names) > 0 && sameClasses(names):
		return names[0]
	}
	return ""
}

func sameClasses(names []string) bool {
	first, err := grain.Classes(names[0])
	if err != nil {
		return false
	}
	for _, name := range names[1:] {
		classes, err := grain.Classes(name)
		same := func(a, b grain.MoistureClass) bool {
			return a.Name == b.Name && a.HasUpTo == b.HasUpTo && a.UpTo.Equal(b.UpTo)
		}
		if err != nil || !slices.EqualFunc(first, classes, same) {
			return false
		}
	}
	return true
}

// DryRules returns the limits of dry grain for a load: the elevator's own for the commodity, with
// defaults for those it has not set. By default grain is bought as dry up to the moisture at which
// the rates begin to take something, and under Canadian rules the class decides. Found is false
// where nothing is known.
func DryRules(ctx context.Context, d Desk, l *load.Load) (rules dryness.Rules, found bool, err error) {
	setup, err := BenchSetup(ctx, d)
	if err != nil {
		return rules, false, err
	}
	e, err := EditionFor(d, l)
	if err != nil {
		e = nil // without rates the elevator's own limits still hold
	}
	rules = dryness.Rules{Crop: l.Details.Commodity}
	if i := slices.IndexFunc(setup.Dry, func(r dryness.Rules) bool { return r.Crop == l.Details.Commodity }); i >= 0 {
		rules = setup.Dry[i]
	}
	if rules.CanadaGrain == "" {
		rules.CanadaGrain = canadaGrain(d, l, e)
	}
	if rules.Buy.Unit() == quantity.Plain && e != nil && e.Shrink.Trigger.Given() {
		rules.Buy = e.Shrink.Trigger.Amount
		rules.Source = e.Shrink.Trigger.Source.String()
	}
	if e != nil && e.Drying.To.Given() {
		rules.ChargedTo = e.Drying.To.Amount
	}
	nothing := rules.CanadaGrain == "" && rules.Buy.Unit() == quantity.Plain &&
		rules.StoreShort.Unit() == quantity.Plain && rules.StoreLong.Unit() == quantity.Plain
	return rules, !nothing, nil
}
