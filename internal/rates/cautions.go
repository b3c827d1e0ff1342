package rates

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// largestLossMeasured is the largest handling loss of those Iowa State measured
// on farms and in commercial dryers, percent of the wet weight (Hurburgh, Bern,
// Wilcke and Anderson: mean 0.78, range 0.40 to 1.71).
var largestLossMeasured = quantity.Of("1.71", quantity.Percent)

// Cautions are things an edition may say and that are yet worth a second look,
// a sentence each. They refuse nothing.
func (e *Edition) Cautions() []string {
	var out []string
	for _, caution := range []string{e.otherBushel(), e.hiddenHandling(), e.largeHandling()} {
		if caution != "" {
			out = append(out, caution)
		}
	}
	return out
}

// otherBushel compares the bushel with the grain's legal one; weights in
// kilograms are left alone, since laws give pounds.
func (e *Edition) otherBushel() string {
	legal, own := e.Commodity.Bushel, e.Units.Bushel
	if legal.IsZero() || own.Unit() != legal.Unit() || own.Equal(legal) {
		return ""
	}
	return fmt.Sprintf("A bushel of %s is %s here and %s by law (%s). Check which law binds the elevator.", e.Commodity.Name, own.Written(), legal.Written(), e.Commodity.BushelSource)
}

// hiddenHandling shows what a rate per point takes beyond the water at ten
// points, where that is more than any loss measured.
func (e *Edition) hiddenHandling() string {
	if e.Shrink.Method != PerPoint {
		return ""
	}
	ten := quantity.Int(10, quantity.Point)
	left := worksheet.Points(worksheet.Const(hundred), worksheet.Const(e.Shrink.To.Amount))
	water := worksheet.Over(worksheet.Times(worksheet.Const(hundred), worksheet.Const(ten)), left)
	beyond := worksheet.Less(worksheet.Times(worksheet.Const(e.Shrink.Rate.Amount), worksheet.Const(ten)), water)
	if !beyond.Value().More(largestLossMeasured) {
		return ""
	}
	shown := quantity.To("0.01", quantity.HalfUp).Apply(beyond.Value())
	return fmt.Sprintf("Shrink of %s takes %s of the weight beyond the water at 10 points: handling by another name, and more than the largest loss measured, %s.", e.Shrink.Rate.Amount.Written(), shown.FixedString(2), largestLossMeasured)
}

func (e *Edition) largeHandling() string {
	if e.Handling.Method == NoHandling || !e.Handling.Rate.Amount.More(largestLossMeasured) {
		return ""
	}
	return fmt.Sprintf("Handling of %s is more than the largest loss measured, %s of the wet weight.", e.Handling.Rate.Amount.Written(), largestLossMeasured)
}
