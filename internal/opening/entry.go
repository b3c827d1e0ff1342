package opening

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Entry is one row of a list that an opening is entered from: one of these.
type Entry struct {
	Lying *Lying
	Lot   *Lot
	Owned *Owned
	// Advance and Lien are of no grain in the house.
	Advance *Advance
	Lien    *Notice
	// Rest tells that Owned is whatever the bins hold beyond what the other rows account for.
	Rest bool
}

// Of gathers the rows of a list. A rest is worked out here; it must be above zero, for else
// depositors' grain is missing.
func Of(entries []Entry) (Opening, error) {
	var o Opening
	var rests []Owned
	for _, e := range entries {
		switch {
		case e.Lying != nil:
			o.Lying = append(o.Lying, *e.Lying)
		case e.Lot != nil:
			o.Lots = append(o.Lots, *e.Lot)
		case e.Rest:
			rests = append(rests, *e.Owned)
		case e.Owned != nil:
			o.Owned = append(o.Owned, *e.Owned)
		case e.Advance != nil:
			o.Advances = append(o.Advances, *e.Advance)
		case e.Lien != nil:
			o.Liens = append(o.Liens, *e.Lien)
		}
	}
	balances := map[string]Balance{}
	for _, b := range o.Balances() {
		balances[b.Commodity] = b
	}
	for _, r := range rests {
		b, known := balances[r.Commodity]
		switch {
		case !known:
			return o, message.Refused.Errorf("nothing of %s is in the list, so there is no rest of it. Write what lies in the bins first", message.Words(r.Commodity))
		case b.Off().Sign() < 0:
			return o, message.Refused.Errorf("the owners of %s account for %s more than lies in the bins: depositors' grain is missing. Correct the list", message.Words(r.Commodity), b.Off().Neg())
		case b.Off().IsZero():
			continue
		}
		r.Weight = b.Off()
		b.Company = b.Company.Add(r.Weight)
		balances[r.Commodity] = b
		o.Owned = append(o.Owned, r)
	}
	return o, nil
}

// Weighed is a quantity of grain as settled and as its weight: bushels by the bushel given, in pounds;
// hundredweight in pounds; tonnes in kilograms. A weight is a quantity by the same.
func Weighed(a, bushel quantity.Amount) (q, weight quantity.Amount, err error) {
	hundred, thousand := quantity.Int(100, quantity.Lb.Per(quantity.Cwt)), quantity.Int(1000, quantity.Kg.Per(quantity.Tonne))
	switch a.Unit() {
	case quantity.Bushel, quantity.Lb:
		if bushel.IsZero() {
			if a.Unit() == quantity.Lb {
				return toHundredths.Apply(a.Div(hundred)), a, nil
			}
			return q, weight, message.Invalid.Errorf("no law here names a bushel of this grain; write its weight in lb or cwt")
		}
		if a.Unit() == quantity.Lb {
			return toHundredths.Apply(a.Div(bushel)), a, nil
		}
		return a, a.Mul(bushel), nil
	case quantity.Cwt:
		return a, a.Mul(hundred), nil
	case quantity.Tonne:
		return a, a.Mul(thousand), nil
	case quantity.Kg:
		return toThousandths.Apply(a.Div(thousand)), a, nil
	}
	return q, weight, message.Invalid.Errorf("%s is no quantity of grain; write bu, lb, cwt, kg or t", a)
}

// The places that settled quantities of a weight are rounded to (practice).
var (
	toHundredths  = quantity.To("0.01", quantity.HalfUp)
	toThousandths = quantity.To("0.001", quantity.HalfUp)
)
