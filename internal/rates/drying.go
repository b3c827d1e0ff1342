package rates

import "tenthpoint/internal/quantity"

// DryingMethod is how drying is charged.
type DryingMethod string

const (
	// NoDrying charges nothing.
	NoDrying DryingMethod = "none"
	// DryPerPoint is a rate per point per bushel, hundredweight or tonne.
	DryPerPoint DryingMethod = "per-point"
	// DryBandsEach charges every point at the rate of the band it lies in.
	DryBandsEach DryingMethod = "bands-each"
	// DryBandsWhole charges all points at the rate of the band the moisture
	// lies in; a band may also state a flat rate with no points.
	DryBandsWhole DryingMethod = "bands-whole"
)

// Drying is the rule for the drying charge.
type Drying struct {
	Method   DryingMethod
	Basis    Basis
	Trigger  Cell // moisture above which drying is charged
	To       Cell // moisture the points are counted down to
	Rate     Cell // $/bu/pt, $/cwt/pt or $/t/pt
	Step     Step
	Bands    []Band
	Minimum  Cell // least charge for a load that is charged at all
	Rounding quantity.Rounding
	Row      string
}
