package slipcode

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// The tables of words. A word's number is its place, counted from 1; slips on paper hold the
// numbers, so a table only grows at its end. A word that is in no table is spelled out.

var grains = []string{"corn", "soybeans", "sorghum", "barley", "canola", "flaxseed", "oats", "rye", "sunflower", "triticale",
	"wheat-hrw", "wheat-hrs", "wheat-srw", "wheat-white", "wheat-white-club", "wheat-durum", "barley-malting-six", "barley-malting-two",
	"peas", "lentils", "beans", "faba-beans", "chickpeas", "mustard", "rapeseed", "buckwheat", "safflower", "canary-seed", "mixed-grain"}

var draftNames = []string{"truck", "trailer"}

var factors = []string{
	"test-weight", "dockage", "protein", "damage", "heat-damage", "foreign-material", "bcfm", "bkfm", "broken", "shrunken-broken",
	"skinned-broken", "splits", "thin", "plump", "sound", "defects", "contrasting-classes", "wheat-of-other-classes", "other-grains", "other-colors",
	"wild-oats", "suitable-malting-type", "foreign-other-than-wheat", "foreign-other-than-wheat-or-rye", "dehulled", "distinctly-green", "conspicuous-admixture",
	"inconspicuous-admixture", "sclerotinia", "fungus-mold-damage", "flint", "waxy", "ergot", "smut", "smut-odor", "smutty-appearance", "garlic", "stones",
	"stone-count", "animal-filth", "castor-beans", "crotalaria", "glass", "unknown-substances", "cockleburs", "other-material", "insect-damaged", "weevils",
	"insects", "animal-filth-weight", "low-quality", "badly-weathered", "purple-stained", "infested", "musty", "sour", "off-odor", "heating",
	"don", "aflatoxin", "fumonisin", "falling-number", "vitreous", "fusarium", "oil", "stress-cracks", "purple-mottled",
}

// Units of results. The first two have no figure: what was looked for and is noticed or not.
const (
	absent  = "absent"
	present = "present"
)

var units = []string{absent, present, quantity.Percent.String(), quantity.LbPerBushel.String(), quantity.KgPerHL.String(), quantity.Count.String(),
	quantity.PPM.String(), quantity.PPB.String(), quantity.Second.String(), quantity.Gram.String()}

// lines are those of a settlement in the order they are kept while there is room: what is paid
// first, what leads there after it. Discounts follow by the places of their rules in the edition.
var lines = []string{
	settle.LinePayable, settle.LineQuantity, settle.LineSettled, settle.LineNet, settle.LineBushels, settle.LineDrying, settle.LineWater,
	settle.LineValue, settle.LineHandling, settle.LineClean, settle.LineDockage, settle.LineDry, settle.LineServices, settle.LineNetValue,
	settle.LineDiscounts, settle.LinePremiums, settle.LineCharges, settle.LineAdjustments, settle.LineConvertedNet, settle.LineQuality,
}

// lineLabels name the lines where no settlement does.
var lineLabels = map[string]message.Text{
	settle.LinePayable: message.Words("Payable"), settle.LineQuantity: message.Words("Quantity settled"), settle.LineSettled: message.Words("Weight settled"),
	settle.LineNet: message.Words("Net"), settle.LineBushels: message.Words("Dry-equivalent bushels"), settle.LineDrying: message.Words("Drying"),
	settle.LineWater: message.Words("Water"), settle.LineValue: message.Words("Value"), settle.LineHandling: message.Words("Handling"),
	settle.LineClean: message.Words("Clean weight"), settle.LineDockage: message.Words("Dockage"), settle.LineDry: message.Words("Dry weight"),
	settle.LineServices: message.Words("Services"), settle.LineNetValue: message.Words("Net value"), settle.LineDiscounts: message.Words("Discounts"),
	settle.LinePremiums: message.Words("Premiums"), settle.LineCharges: message.Words("Charges"), settle.LineAdjustments: message.Words("Charges, discounts and premiums"),
	settle.LineConvertedNet: message.Words("Net in the unit of the rates"), settle.LineQuality: message.Words("Quality"),
}

// firstDiscount is the number of the line of the first discount of an edition.
const firstDiscount = 64

// mostDiscounts is more discounts than any edition has.
const mostDiscounts = 200

// held are the titles of grain; the number of each is its place.
var held = []title.Under{title.Nothing, title.CashSale, title.OpenStorage, title.Contract, title.Receipt, title.DelayedPrice, title.GrainBank}

// wordNumber is the number of a word in its table; 0 for one that has to be spelled out.
func wordNumber(table []string, word string) int { return slices.Index(table, word) + 1 }
