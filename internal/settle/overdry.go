package settle

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/shrink"
	"tenthpoint/internal/worksheet"
)

// OverDry is the loss on grain drier than its base: the weight at the base that holds the same dry
// matter, W x (100 - Mi) / (100 - Mf), less the weight delivered. An elevator pays for the weight
// on the scale, so the difference is the grower's loss unless the rates credit it.
type OverDry struct {
	Sheet *worksheet.Sheet
	// Equal is the weight at the base, GivenAway its excess over the load.
	Equal, GivenAway *worksheet.Step
	// Quantity is GivenAway in bu, cwt or t, Worth its price; nil where the unit or
	// the price is not known.
	Quantity, Worth *worksheet.Step
	// Paid is true where the rates credit over-dry grain.
	Paid bool
}

// OverDryTerms are a weight of over-dry grain and its units.
type OverDryTerms struct {
	Weight, Moisture, Base quantity.Amount
	// Settle is bu, cwt or t; [quantity.Plain] counts no more than the weight. Bushel
	// is needed for bu alone, and Price, per that unit, may be not set.
	Settle        quantity.Unit
	Bushel, Price quantity.Amount
	// The roundings of the three kinds of line.
	Weights, Quantities, Money quantity.Rounding
	// Remark is shown beside each result: who pays for it.
	Remark message.Text
}

// formulaOverDry is the source of the equal weight.
var formulaOverDry = message.Words("W x (100 - Mi) / (100 - Mf)")

// Work records the loss. The moisture is below the base, and the base below 100 %.
func (t OverDryTerms) Work() *OverDry {
	o := &OverDry{Sheet: &worksheet.Sheet{}}
	s := o.Sheet
	s.Section(message.Words("Drier than the base"))
	weight := s.Given("overdry.weight", message.Words("Weight"), t.Weight, quantity.Unrounded, worksheet.Unsourced)
	from := s.Given("overdry.moisture", message.Words("Moisture"), t.Moisture, quantity.Unrounded, worksheet.Unsourced)
	base := s.Given("overdry.base", message.Words("Base moisture"), t.Base, quantity.Unrounded, worksheet.Unsourced)
	whole := worksheet.Const(hundredPercent)
	o.Equal = s.Work("overdry.equal", message.Words("Weight of the same dry matter at the base"), worksheet.Over(worksheet.Times(weight, worksheet.Points(whole, from)), worksheet.Points(whole, base)), t.Weights, formulaOverDry)
	o.GivenAway = s.Note(s.Work("overdry.weight.given", message.Words("Weight given away"), worksheet.Less(o.Equal, weight), quantity.Unrounded, worksheet.Unsourced), t.Remark)
	if t.Settle == quantity.Plain {
		return o
	}
	o.Quantity = s.Note(s.Work("overdry.quantity", givenAway[t.Settle], t.counted(s, o.GivenAway), t.Quantities, worksheet.Unsourced), t.Remark)
	if quantity.Recorded(t.Price) {
		price := s.Given("overdry.price", message.Words("Price"), t.Price, quantity.Unrounded, worksheet.Unsourced)
		o.Worth = s.Note(s.Work("overdry.worth", message.Words("Worth of what is given away"), worksheet.Times(price, o.Quantity), t.Money, worksheet.Unsourced), t.Remark)
	}
	return o
}

var givenAway = amounts(message.Words("Bushels given away"), message.Words("Hundredweight given away"), message.Words("Tonnes given away"))

// counted is a weight in the unit it would be paid by.
func (t OverDryTerms) counted(s *worksheet.Sheet, weight *worksheet.Step) worksheet.Operand {
	if t.Settle == quantity.Bushel {
		return worksheet.Over(weight, s.Rate("overdry.bushel", message.Words("Bushel weight"), t.Bushel, worksheet.Unsourced))
	}
	factor, err := quantity.MassFactor(weight.Value().Unit(), t.Settle)
	if err != nil {
		panic("settle: " + err.Error())
	}
	return worksheet.Times(weight, worksheet.Const(factor))
}

// The remarks beside the loss.
var (
	NotPaid = message.Words("not paid by these rates")
	IsPaid  = message.Words("credited by these rates")
)

// OverDry returns the over-dry loss of a settled load. Found is false for grain that is not below
// the base, and under rates without a base.
func (s *Settlement) OverDry() (o *OverDry, found bool) {
	if s.Edition == nil || s.Moisture == nil || s.Wet == nil {
		return nil, false
	}
	t, found := overDryTerms(s.Edition, s.Wet.Value(), s.Moisture.Value())
	if !found {
		return nil, false
	}
	if s.Price != nil {
		t.Price = s.Price.Value()
	}
	return t.under(s.Edition), true
}

// OverDryPerHundred returns the over-dry loss on a hundred units of weight, to places that a small
// loss shows in: the rates' own roundings are those of a truck.
func OverDryPerHundred(e *rates.Edition, moisture quantity.Amount) (o *OverDry, found bool) {
	t, found := overDryTerms(e, quantity.Int(100, e.Units.Weight), moisture)
	if !found {
		return nil, false
	}
	t.Weights, t.Quantities = quantity.To("0.01", quantity.HalfUp), quantity.To("0.001", quantity.HalfUp)
	return t.under(e), true
}

// overDryTerms are a weight under rates; false where it is not below their base.
func overDryTerms(e *rates.Edition, weight, moisture quantity.Amount) (OverDryTerms, bool) {
	if e.Shrink.Method == shrink.None || !moisture.Less(e.Shrink.To.Amount) {
		return OverDryTerms{}, false
	}
	return OverDryTerms{
		Weight: weight, Moisture: moisture, Base: e.Shrink.To.Amount, Settle: e.Units.Settle, Bushel: e.Units.Bushel,
		Weights: e.Rounding.Weight, Quantities: e.Rounding.Quantity, Money: e.Rounding.Money,
	}, true
}

// under works the loss out and says whether the rates credit it.
func (t OverDryTerms) under(e *rates.Edition) *OverDry {
	paid := e.Shrink.Credit == "dry-matter"
	t.Remark = NotPaid
	if paid {
		t.Remark = IsPaid
	}
	o := t.Work()
	o.Paid = paid
	return o
}
