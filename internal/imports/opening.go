package imports

import (
	"strconv"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/position"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// The words in the column "what" of an opening, beside those of terms.
const (
	whatBin     = "bin"
	whatCompany = "company"
	whatWater   = "water"
	// theRest stands in the place of what the house owns: whatever the other rows leave of the bins.
	theRest = "rest"
	// whatAdvance and whatLien are of no grain in the house.
	whatAdvance = "advance"
	whatLien    = "lien"
	// negotiable stands after the number of a receipt that is owed to whoever holds it.
	negotiable = "negotiable"
)

// opening reads a row of the list by which the books of a house are opened: a layer in a bin, what a
// depositor is owed, or what is no depositor's.
func (r *reader) opening() {
	what := strings.ToLower(r.needed("what", message.New("bin, company, water, advance, lien, or what grain is held under: stored, bank, sold, contract C-12, delayed D-7")))
	if what == whatAdvance || what == whatLien {
		r.besides(what)
		return
	}
	c, err := entry.Commodity(r.needed("grain", message.New("the grain, such as corn")))
	if err != nil && r.text("grain") != "" {
		r.wrong("grain", message.Of(err))
	}
	var e opening.Entry
	switch what {
	case whatBin:
		e.Lying = r.lying(c)
	case whatCompany, whatWater:
		e.Owned, e.Rest = r.owned(c, what)
	default:
		e.Lot = r.lot(c)
	}
	if len(r.row.Problems) == 0 {
		r.row.Opening = &e
	}
}

// besides reads a row that is of no grain in the house: an advance, or a notice of lien.
func (r *reader) besides(what string) {
	var e opening.Entry
	if what == whatAdvance {
		e.Advance = r.advance()
	} else {
		e.Lien = r.lien()
	}
	if len(r.row.Problems) == 0 {
		r.row.Opening = &e
	}
}

// advanced is money that was paid before.
var advanced = quantity.Field{Name: "Advance", Unit: quantity.Dollar, Places: 2, Min: quantity.Of("0.01", quantity.Dollar), Max: quantity.Int(100_000_000, quantity.Dollar)}

func (r *reader) advance() *opening.Advance {
	a := opening.Advance{Grower: r.needed("grower", message.New("the grower's code")), Paper: r.text("paper"), Since: r.since(message.New("the day it was paid: interest runs from it"))}
	text := r.needed("quantity", message.New("how much was paid, such as $2,500.00"))
	if text == "" {
		return &a
	}
	var err error
	if a.Amount, err = advanced.Parse(text); err != nil {
		r.wrong("quantity", message.Of(err))
	}
	return &a
}

func (r *reader) lien() *opening.Notice {
	n := opening.Notice{
		Grower: r.needed("grower", message.New("the grower's code")), Holder: r.needed("lender", message.New("the lender, as payments are to name it")),
		Paper: r.text("paper"), Since: r.since(message.New("the day the notice was received")),
	}
	if text := r.text("grain"); text != "" {
		c, err := entry.Commodity(text)
		if err != nil {
			r.wrong("grain", message.Of(err))
		}
		n.Commodity = c.ID
	}
	if until, given := r.date("until"); given {
		n.Until = until
	} else if r.text("until") == "" {
		r.wrong("until", message.New("empty; write the last day of the notice"))
	}
	return &n
}

// since is the day in the column of that name, which must be there.
func (r *reader) since(what message.Text) quantity.Date {
	day, given := r.date("since")
	if !given && r.text("since") == "" {
		r.wrong("since", message.New("empty; write %s", what))
	}
	return day
}

// amount reads how much grain a row is of.
func (r *reader) amount(c grain.Commodity) (q, weight quantity.Amount) {
	text := r.needed("quantity", message.New("how much it is, with its unit, such as 612.34 bu or 34,291 lb"))
	if text == "" || c.ID == "" {
		return q, weight
	}
	a, err := quantity.ParseAmount(text)
	if err == nil {
		q, weight, err = opening.Weighed(a, c.Bushel)
	}
	switch {
	case err != nil:
		r.wrong("quantity", message.Of(err))
	case weight.Sign() <= 0:
		r.wrong("quantity", message.New("%s is nothing to open with; write a quantity above zero", a))
	case weight.Unit() != r.usual.House.Profile().WeightUnit():
		r.wrong("quantity", message.New("%s comes to %s, and this house weighs in %s", a, weight, message.Name(r.usual.House.Profile().WeightUnit().String())))
	}
	return q, weight
}

func (r *reader) lying(c grain.Commodity) *opening.Lying {
	l := opening.Lying{Bin: r.needed("bin", message.New("the short name of the bin it lies in")), Commodity: c.ID}
	_, l.Weight = r.amount(c)
	l.Moisture = r.result(c, "moisture", grain.Moisture)
	l.TestWeight = r.result(c, "test_weight", grain.TestWeight)
	l.Since, _ = r.date("since")
	return &l
}

// result reads a result of the sample as the grain's own factor does; nil for an empty cell.
func (r *reader) result(c grain.Commodity, column string, id grain.FactorID) *quantity.Amount {
	text := r.text(column)
	factor, tested := c.Factor(id)
	if text == "" || !tested {
		return nil
	}
	a, err := factor.Parse(text)
	if err != nil {
		r.wrong(column, message.Of(err))
		return nil
	}
	return &a
}

func (r *reader) owned(c grain.Commodity, what string) (*opening.Owned, bool) {
	o := opening.Owned{Commodity: c.ID, Line: position.Sold}
	if what == whatWater {
		o.Line = position.Water
	}
	if what == whatCompany && strings.EqualFold(r.text("quantity"), theRest) {
		return &o, true
	}
	_, o.Weight = r.amount(c)
	return &o, false
}

func (r *reader) lot(c grain.Commodity) *opening.Lot {
	l := opening.Lot{
		Grower: r.needed("grower", message.New("the grower's code")), Commodity: c.ID, Paper: r.text("paper"),
	}
	var known bool
	if l.Terms, known = title.Read(r.text("what")); !known {
		r.wrong("what", message.New("%q is not one of bin, company, water, advance, lien, stored, bank, sold, contract C-12, delayed D-7", r.text("what")))
		return &l
	}
	if err := l.Check(); err != nil {
		r.wrong("what", message.Of(err))
	}
	switch l.Under {
	case title.Nothing:
		r.wrong("what", message.New("it is to be said what the grain is held under; what nobody has decided is in open storage"))
	case title.Receipt:
		r.wrong("what", message.New("grain on a receipt is stored; write stored, and the number in the column receipt"))
	}
	l.Quantity, l.Weight = r.amount(c)
	if since, given := r.date("since"); given {
		l.Since = since
	} else if r.text("since") == "" {
		r.wrong("since", message.New("empty; write the day of delivery: storage and deadlines run from it"))
	}
	r.priced(&l)
	l.Receipt = r.onReceipt()
	return &l
}

// priced reads the price of grain that is sold and not paid yet.
func (r *reader) priced(l *opening.Lot) {
	text := r.text("price")
	switch {
	case text == "" || l.Quantity.IsZero():
		return
	case !l.TakesPrice():
		r.wrong("price", message.New("the grain is %s and has no price; leave it out", l.Said()))
		return
	}
	price, err := entry.ParsePrice(text, l.Quantity.Unit())
	if err != nil {
		r.wrong("price", message.Of(err))
		return
	}
	l.Price = &price
}

// onReceipt reads the receipt that is out for a lot: "812", or "812 negotiable".
func (r *reader) onReceipt() *opening.OnReceipt {
	number, rest, _ := strings.Cut(r.text("receipt"), " ")
	if number == "" {
		return nil
	}
	out := opening.OnReceipt{Negotiable: strings.TrimSpace(rest) == negotiable}
	var err error
	if out.Number, err = strconv.ParseInt(number, 10, 64); err != nil || out.Number < 1 || out.Number >= opening.First || rest != "" && !out.Negotiable {
		r.wrong("receipt", message.New("%q is no receipt; write its number, and negotiable after it where it is", r.text("receipt")))
	}
	if day, given := r.date("receipt_day"); given {
		out.Day = day
	} else if r.text("receipt_day") == "" {
		r.wrong("receipt_day", message.New("empty; write the day of the receipt"))
	}
	return &out
}
