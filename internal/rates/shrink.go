package rates

import (
	"tenthpoint/internal/quantity"
)

// ShrinkMethod is how the weight of wet grain is brought down to dry.
type ShrinkMethod string

const (
	// Water is the formula W x (Mi - Mf) / (100 - Mf): the dry matter stays.
	Water ShrinkMethod = "water"
	// PerPoint is a fixed percent of weight for every point.
	PerPoint ShrinkMethod = "per-point"
	// ShrinkTable reads the percent from a table by moisture.
	ShrinkTable ShrinkMethod = "table"
	// NoShrink takes nothing off for water.
	NoShrink ShrinkMethod = "none"
)

// Shrink is the rule for water.
type Shrink struct {
	Method  ShrinkMethod
	Basis   Basis
	Trigger Cell // moisture above which anything is taken off
	To      Cell // moisture the weight is brought down to
	// Floor is the lowest shrink-to the edition may have; not given means no
	// floor. FloorGrain names the grain of the Canadian moisture classes that
	// it follows from, if any.
	Floor      Cell
	FloorGrain string
	// Rate is percent of weight per point, for PerPoint.
	Rate Cell
	// Step parts the points for PerPoint: what part of a point counts.
	Step  Step
	Table []Band
	// Percent rounds the percent before it meets the weight.
	Percent quantity.Rounding
	// Credit is what over-dry grain gets: "none", or "dry-matter" for the
	// weight the same dry matter would have at the shrink-to moisture.
	Credit string
	// CreditFloor is the driest moisture credited; below it counts as it.
	CreditFloor Cell
	Rounding    quantity.Rounding
	Row         string
}

// HandlingMethod is what the handling loss is a percent of.
type HandlingMethod string

const (
	// NoHandling takes nothing off for handling.
	NoHandling HandlingMethod = "none"
	// OfWet is a percent of the wet weight, added to the water shrink.
	OfWet HandlingMethod = "wet"
	// OfDried is a percent of the weight after water shrink, so that the two
	// factors multiply.
	OfDried HandlingMethod = "dried"
)

// Handling is the rule for invisible loss: dust, respiration, spilled kernels.
type Handling struct {
	Method   HandlingMethod
	Rate     Cell
	Always   bool // taken also when no water shrink is
	Rounding quantity.Rounding
	Row      string
}

// Step says what part of a point counts: points are taken in whole steps under
// a rule. The zero Step counts every tenth as it is.
type Step struct {
	Rounding quantity.Rounding
	Row      string
}

// Continuous reports whether every part of a point counts as it is.
func (s Step) Continuous() bool { return s.Rounding.IsExact() }

// BareWater is the same edition with nothing taken but the water: the bare
// formula from the same trigger to the same moisture, and no handling. Set
// beside the edition itself it shows what a rate per point takes beyond the
// water. Fixed rates of 1.2 to 1.5 % are in use where the formula gives 1.176
// (to 15.0 %); the difference is handling by another name.
//
// The result is for comparing. It has no text and no hash, so that no ticket
// can be settled under it. An edition that shrinks nothing names no moisture to
// shrink to; it comes back without handling and otherwise as it is.
func BareWater(e *Edition) *Edition {
	bare := *e
	bare.ID, bare.Title = e.ID+", bare water formula", e.Title+", bare water formula"
	bare.File, bare.Text, bare.Hash = "", nil, ""
	bare.Handling = Handling{Method: NoHandling, Rounding: e.Handling.Rounding, Row: "bare water formula"}
	if e.Shrink.Method != NoShrink {
		bare.Shrink.Method = Water
		bare.Shrink.Row = "bare water formula"
	}
	return &bare
}
