package settle_test

import (
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Bad input: one sentence each, and no settlement.
func TestBadMoisture(t *testing.T) {
	e := scene(t)
	for moisture, want := range map[string]string{
		"0":     "Moisture is 0 %; it lies above 0 % and below 100 %",
		"100":   "Moisture is 100 %; it lies above 0 % and below 100 %",
		"101.5": "Moisture is 101.5 %; it lies above 0 % and below 100 %",
		"-3":    "Moisture is -3 %; it lies above 0 % and below 100 %",
		"2.9":   "Moisture is 2.9 %; it lies between 3 % and 60 %",
		"61":    "Moisture is 61 %; it lies between 3 % and 60 %",
	} {
		problems := refused(t, corn("52300", moisture), e, want)
		if len(problems) == 1 && problems[0].Field != "moisture" {
			t.Errorf("field %q", problems[0].Field)
		}
	}
	none := corn("52300", "15")
	none.Moisture = nil
	refused(t, none, e, "The moisture has not been tested.")
	points := corn("52300", "15")
	points.Moisture = settle.Reading{Percent: quantity.Of("15", quantity.Point)}
	refused(t, points, e, "Moisture is 15 pt; it lies above 0 % and below 100 %")
	twice := corn("52300", "15", with("moisture", "16 %"))
	refused(t, twice, e, "Moisture stands among the other results.")
}

// Text never reaches the settlement: the field that people type into refuses
// it.
func TestMoistureTypedAsText(t *testing.T) {
	moisture, _ := scene(t).Commodity.Factor("moisture")
	for _, text := range []string{"", "wet", "15,3", "15.3.1", "15 lb", "1e2", "--15", "15.1234"} {
		if a, err := moisture.Parse(text); err == nil {
			t.Errorf("%q was read as %s", text, a)
		}
	}
}

func TestBadFactors(t *testing.T) {
	e := scene(t)
	refused(t, corn("52300", "15", with("damage", "100.1 %")), e, "Damaged kernels, total is 100.1 %; it lies between 0 % and 100 %")
	refused(t, corn("52300", "15", with("damage", "-0.1 %")), e, "Damaged kernels, total is -0.1 %; it lies between 0 % and 100 %")
	refused(t, corn("52300", "15", with("damage", "3 pt")), e, "Damaged kernels, total is 3 pt; it is measured in %")
	refused(t, corn("52300", "15", with("test-weight", "95 lb/bu")), e, "Test weight is 95 lb/bu; it lies between 10 lb/bu and 90 lb/bu")
	refused(t, corn("52300", "15", with("test-weight", "120 kg/hL")), e, "Test weight is 120 kg/hL; it lies between")
	refused(t, corn("52300", "15", with("damage", "70 kg/hL")), e, "Damaged kernels, total is 70 kg/hL; it is measured in %")
	refused(t, corn("52300", "15", with("splits", "3 %")), e, `Corn is not tested for "splits". Take it off the load.`)
	refused(t, corn("52300", "15", with("damage", "3 %"), with("damage", "4 %")), e, "Damaged kernels, total is written down twice")
}

func TestBadWeights(t *testing.T) {
	e := scene(t)
	weights := func(drafts ...[2]string) settle.Facts {
		f := corn("1", "15")
		f.Drafts = nil
		for i, d := range drafts {
			gross, _ := quantity.ParseAmount(d[0])
			tare, _ := quantity.ParseAmount(d[1])
			f.Drafts = append(f.Drafts, settle.Draft{Name: []string{"", "trailer"}[i], Gross: gross, Tare: tare})
		}
		return f
	}
	refused(t, weights([2]string{"24120 lb", "24500 lb"}), e, "Net would be -380 lb (gross 24,120 - tare 24,500). Weigh again or swap the two.")
	refused(t, weights([2]string{"24500 lb", "24500 lb"}), e, "Net would be 0 lb")
	refused(t, weights([2]string{"0 lb", "24500 lb"}), e, "Gross is 0 lb. Weigh the loaded truck.")
	refused(t, weights([2]string{"24500 lb", "0 lb"}), e, "Tare is 0 lb. Weigh the empty truck, or use its stored tare.")
	refused(t, weights([2]string{"-5 lb", "24500 lb"}), e, "Gross is -5 lb")
	refused(t, weights([2]string{"24500 lb", "8000 kg"}), e, "both must be weights in one unit")
	refused(t, weights([2]string{"24500 bu", "8000 bu"}), e, "both must be weights in one unit")
	refused(t, weights(), e, "The load has not been weighed.")
	refused(t, weights([2]string{"24500 lb", "8000 lb"}, [2]string{"9000 kg", "3000 kg"}), e, "One draft is in lb and another in kg")
	refused(t, weights([2]string{"24500 lb", "8000 lb"}, [2]string{"3000 lb", "9000 lb"}), e, "Net of the trailer would be -6,000 lb")
}

func TestBadPriceAndShares(t *testing.T) {
	e := scene(t)
	refused(t, corn("52300", "15", at("0 $/bu")), e, "The price is $0.00/bu. Type a price above zero, or leave it for later.")
	refused(t, corn("52300", "15", at("-4 $/bu")), e, "The price is -$4.00/bu")
	refused(t, corn("52300", "15", at("180 $/t")), e, "The price is $180.00/t; this edition settles in bu. Type the price in $/bu.")
	refused(t, corn("52300", "15", owners(3, 1, 1)), e, "The shares add to 66.666666… %, not to the whole.")
	refused(t, corn("52300", "15", owners(100, 60, 41)), e, "The shares add to 101 %")
	refused(t, corn("52300", "15", owners(3, 3, 0)), e, "The share of B is 0 of 3. Every owner has a share above zero")
	refused(t, corn("52300", "15", owners(3, -1, 4)), e, "The share of A is -1 of 3.")
	refused(t, corn("52300", "15", owners(0, 1)), e, "The share of A is 1 of 0.")
	nameless := corn("52300", "15", owners(2, 1, 1))
	nameless.Shares[1].Owner = ""
	refused(t, nameless, e, "A share has no owner.")
	nameless.Shares[1].Owner = "A"
	refused(t, nameless, e, "A has two shares. Add them into one.")
}

// An edition that charges more than the load is worth is refused with both
// figures.
func TestChargesAboveTheWorth(t *testing.T) {
	e := scene(t, dryingTable("method = \"per-point\"\nrate = \"0.50 $/bu/pt\"\nstep = \"continuous\""))
	problems := refused(t, corn("56000", "25.0", at("4.00 $/bu")), e,
		"The charges, $5,000.00, are more than the load is worth, $3,529.44. Check the price, the sample and edition corn-plain.")
	if len(problems) == 1 && problems[0].Field != "edition" {
		t.Errorf("field %q", problems[0].Field)
	}
	// Charges that take all of it leave nothing to pay, and that is allowed.
	exact := scene(t, dryingTable("method = \"per-point\"\nrate = \"0.40 $/bu/pt\"\nstep = \"continuous\""), noShrink)
	shows(t, mustSettle(t, corn("56000", "25.0", at("4.00 $/bu")), exact), map[string]string{"payable": "$0.00"})
}

// All reasons come at once.
func TestEveryReasonAtOnce(t *testing.T) {
	f := corn("-380", "0", at("0 $/bu"), owners(3, 1, 1), with("damage", "101 %"))
	refused(t, f, scene(t), "Net would be -380 lb", "Moisture is 0 %", "Damaged kernels, total is 101 %", "The price is $0.00/bu", "The shares add to 66.666666… %")
}
