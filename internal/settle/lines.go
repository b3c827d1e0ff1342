package settle

import (
	"strconv"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/worksheet"
)

// The lines of a settlement by the ids of their steps. They are stored in the facts of every book:
// a renamed line is a new line.
const (
	LineGross = "gross"
	LineTare  = "tare"
	LineNet   = "net"
	// LineConvertedNet exists where the scale's unit is not the edition's.
	LineConvertedNet = "net.converted"
	LineMoisture     = "moisture"
	LineDockage      = "dockage"
	LineClean        = "clean"
	LineWater        = "shrink.water"
	LineHandling     = "handling"
	LineDry          = "dry"
	LineSettled      = "settled"
	LineQuantity     = "quantity"
	// LineBushels exists where the settled quantity is not the dry bushels.
	LineBushels = "bushels"
	LineDrying  = "drying"
	LinePrice   = "price"
	LineValue   = "value"
	LineCharges = "charges"
	LinePayable = "payable"

	// The totals, which the first engine does not have: weight discounts less weight premiums, and
	// the totals in money.
	LineQuality   = "quality"
	LineDiscounts = "discounts"
	LinePremiums  = "premiums"

	// The third engine keeps service charges and quality apart: what services cost,
	// and the value after discounts and premiums, which levies are a part of. The
	// adjustments are all of them together, above zero what the owner is paid.
	LineServices    = "services"
	LineAdjustments = "adjustments"
	LineNetValue    = "net-value"
)

const (
	factorLines   = "factor"
	discountLines = "discount"
	shareLines    = "share"
)

// FactorLine is the line of a result of the sample.
func FactorLine(id grain.FactorID) string { return factorLines + "." + string(id) }

// DiscountLine is the line of a discount or premium, by the id of its rule.
func DiscountLine(rule string) string { return discount.Line(rule) }

// HandlingRateLine is the line of the handling rate, where handling is taken.
const HandlingRateLine = "handling.rate"

// DiscountRateLine returns the line of the rate of a discount's row.
func DiscountRateLine(rule string) string { return discount.RateLine(rule) }

// OwnLine is a line of one owner, counted from 1.
func OwnLine(owner int, line string) string {
	return shareLines + "." + strconv.Itoa(owner) + "." + line
}

// OwnerOf returns the owner of a line, counted from 1; false for a line of the whole load.
func OwnerOf(line string) (int, bool) {
	rest, own := strings.CutPrefix(line, shareLines+".")
	if !own {
		return 0, false
	}
	number, _, _ := strings.Cut(rest, ".")
	n, err := strconv.Atoi(number)
	return n, err == nil
}

// mainLines are the lines of a settlement that every slip shows.
var mainLines = map[string]bool{
	LineGross: true, LineTare: true, LineNet: true, LineConvertedNet: true, LineMoisture: true,
	LineDockage: true, LineClean: true, LineWater: true, LineHandling: true, LineDry: true,
	LineSettled: true, LineQuantity: true, LineBushels: true, LineDrying: true,
	LinePrice: true, LineValue: true, LineCharges: true, LinePayable: true, LineServices: true,
}

// Lines are the steps of a settlement that a slip shows and a dispute is about, in the order they
// were worked: weights, results, every deduction, quantities and money. Intermediate steps and
// totals of the other lines are left out.
func (s *Settlement) Lines() []*worksheet.Step {
	var out []*worksheet.Step
	for _, step := range s.Sheet.Steps() {
		if isLine(step.ID()) {
			out = append(out, step)
		}
	}
	return out
}

// isFigure reports whether the first engine records a step with a load: the load's lines and those
// of its owners.
func isFigure(id string) bool { return isLine(id) || strings.HasPrefix(id, shareLines+".") }

// isFigureOrTotal is the same with the totals, which later engines have.
func isFigureOrTotal(id string) bool {
	return isFigure(id) || id == LineQuality || id == LineDiscounts || id == LinePremiums
}

// isFigureOrValue is the same with the value after discounts and premiums.
func isFigureOrValue(id string) bool {
	return isFigureOrTotal(id) || id == LineNetValue || id == LineAdjustments
}

func isLine(id string) bool {
	head, rest, _ := strings.Cut(id, ".")
	isWhole := rest != "" && !strings.Contains(rest, ".")
	return mainLines[id] || isWhole && (head == factorLines || head == discountLines)
}

// holder is whose lines are worked: the whole load's, which is the zero holder, or those of one
// owner, counted from 1.
type holder struct {
	number int
	name   string
}

// holderOf is the owner of a share of the load.
func (d *calculation) holderOf(share int) holder {
	return holder{share + 1, d.facts.Shares[share].Owner}
}

// id is the id of the holder's own line.
func (h holder) id(line string) string {
	if h.number == 0 {
		return line
	}
	return OwnLine(h.number, line)
}

// label is the label of the holder's own line.
func (h holder) label(of message.Text) message.Text {
	if h.number == 0 {
		return of
	}
	return message.New("%s: %s", message.Own(h.name), of)
}
