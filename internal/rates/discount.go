package rates

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
)

// Form is how a discount follows its factor.
type Form string

const (
	// ByTable reads the figure from ranges.
	ByTable Form = "table"
	// PerUnit counts units beyond a base.
	PerUnit Form = "per-unit"
	// YesNo applies when the factor is present.
	YesNo Form = "yes-no"
)

// Direction tells which way a discount's money or weight goes.
type Direction string

const (
	// Docks takes from the grower.
	Docks Direction = "discount"
	// Pays gives to the grower.
	Pays Direction = "premium"
)

// Of tells what a discount's figure is a figure of.
type Of string

const (
	// OfMoney is money per bushel, hundredweight or tonne.
	OfMoney Of = "money"
	// OfPrice is a percent of the price.
	OfPrice Of = "price"
	// OfWeight is a percent of the weight.
	OfWeight Of = "weight"
)

// Discount is the rule for one factor.
type Discount struct {
	// ID is the rule's name on the sheet; the factor's, unless one factor has
	// two rules.
	ID     string
	Label  string
	Factor grain.Factor // in the unit the discount is written in
	Form   Form
	Of     Of
	Basis  Basis
	// MustTest refuses to settle a load whose factor was not tested; without
	// it an untested factor brings no discount.
	MustTest bool

	Table []Band // ByTable
	// PerUnit: every Per beyond Base on the stated side brings Cell, parts of a
	// Per counting as Part says, up to Cap.
	Base  Cell
	Above bool // beyond means above the base; else below
	Per   Cell
	Part  quantity.Rounding
	Cap   Cell
	// Cell and Gives are the figure and its way, for PerUnit and YesNo.
	Cell  Cell
	Gives Direction
	// Refuse turns a load away when a yes-no factor is present.
	Refuse bool
	// RefuseOver and RefuseUnder turn a load away beyond a limit.
	RefuseOver, RefuseUnder Cell

	// Unit rounds the money per unit before it meets the quantity.
	Unit     quantity.Rounding
	Rounding quantity.Rounding
	Row      string
}
