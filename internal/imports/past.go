package imports

import (
	"fmt"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

// Past is a load of the time before the book: what was weighed and what was
// found. What comes of it is settled again under the rates of its day.
type Past struct {
	OldTicket string // its number in the old books
	Details   load.Details
	Gross     quantity.Amount
	Tare      quantity.Amount
	Sample    load.Sample
	// BarePrice marks a price written without a unit: it is in the unit that the
	// load's rates settle in.
	BarePrice bool
}

// past reads a row of the list of loads.
func (r *reader) past() {
	p := Past{OldTicket: r.text("old_ticket"), Details: load.Details{
		Direction: load.Inbound, Grower: load.Party{ID: r.needed("grower", "the grower's code")}, Truck: load.Truck{ID: r.needed("truck", "its number or plate")},
		Driver: r.text("driver"), Bin: r.text("bin"), ContractNo: r.text("contract"), CropYear: r.text("crop_year"), Remark: r.text("remark"),
	}}
	if p.OldTicket != "" {
		p.Details.Remark = strings.TrimSpace("old ticket " + p.OldTicket + ". " + p.Details.Remark)
	}
	if r.needed("day", "the day it was delivered, like 2026-09-14") != "" {
		p.Details.Day, _ = r.date("day")
	}
	p.Details.Disposition = r.disposition()
	for _, one := range r.shares("shares") {
		p.Details.Shares = append(p.Details.Shares, load.Owner{Party: load.Party{ID: one.owner}, Parts: one.parts, Of: one.of})
	}
	r.pastWeights(&p)
	if commodity, ok := r.commodity(); ok {
		p.Details.Commodity = commodity.ID
		r.pastSample(&p, commodity)
		r.price(&p)
	}
	if len(r.row.Problems) == 0 {
		r.row.Past = &p
	}
}

func (r *reader) pastWeights(p *Past) {
	var okGross, okTare bool
	if r.needed("gross", "the weight of the loaded truck") != "" {
		p.Gross, okGross = r.weight("gross")
	}
	if r.needed("tare", "the weight of the empty truck") != "" {
		p.Tare, okTare = r.weight("tare")
	}
	switch {
	case !okGross || !okTare:
	case p.Gross.Unit() != p.Tare.Unit():
		r.wrong("tare", "gross is %s and tare is %s; write both in one unit", p.Gross, p.Tare)
	case !p.Gross.More(p.Tare):
		r.wrong("tare", "net would be %s (gross %s - tare %s); were the two swapped?", p.Gross.Sub(p.Tare), p.Gross.Figure(), p.Tare.Figure())
	}
}

func (r *reader) commodity() (grain.Commodity, bool) {
	text := r.needed("commodity", "the grain, such as corn")
	if text == "" {
		return grain.Commodity{}, false
	}
	for _, c := range grain.All() {
		if strings.EqualFold(c.ID, text) || strings.EqualFold(c.Name, text) {
			return c, true
		}
	}
	_, err := grain.ByID(text)
	r.wrong("commodity", "%s", err)
	return grain.Commodity{}, false
}

func (r *reader) pastSample(p *Past, c grain.Commodity) {
	if text := r.needed("moisture", "the moisture in percent"); text != "" {
		factor, _ := c.Factor(grain.Moisture)
		if a, err := factor.Parse(text); err != nil {
			r.wrong("moisture", "%s", err)
		} else {
			p.Sample.Moisture = &load.Moisture{Percent: a, Method: "from the old books"}
		}
	}
	for _, column := range r.columns {
		id, isFactor := strings.CutPrefix(column, factorColumn)
		if isFactor && r.text(column) != "" {
			r.finding(p, c, grain.FactorID(id))
		}
	}
}

func (r *reader) finding(p *Past, c grain.Commodity, id grain.FactorID) {
	column := factorColumn + string(id)
	factor, ok := c.Factor(id)
	if !ok {
		r.wrong(column, "%s is not tested for this; leave the cell empty", c.Name)
		return
	}
	a, err := factor.Parse(r.text(column))
	if err != nil {
		r.wrong(column, "%s", err)
		return
	}
	found := load.Finding{Factor: id, Amount: &a}
	if factor.YesNo {
		found = load.Finding{Factor: id, Present: a.Sign() > 0}
	}
	p.Sample.Findings = append(p.Sample.Findings, found)
}

func (r *reader) disposition() load.Disposition {
	text := strings.ToLower(r.text("disposition"))
	switch d := load.Disposition(text); d {
	case "", load.Sold, load.Stored, load.Contract:
		return d
	}
	r.wrong("disposition", "%q is not one of sold, stored, contract; choose one or leave it empty", text)
	return ""
}

// price reads a price. Which unit the load is settled in is for its rates to
// say; a bare price is noted as such.
func (r *reader) price(p *Past) {
	text := r.text("price")
	if text == "" {
		return
	}
	p.BarePrice = !strings.Contains(text, "/")
	unit := quantity.DollarsPerBu
	for _, u := range []quantity.Unit{quantity.DollarsPerCwt, quantity.DollarsPerT} {
		if strings.HasSuffix(text, strings.TrimPrefix(u.String(), "$")) {
			unit = u
		}
	}
	if a, ok := r.figure("price", text, quantity.Field{Unit: unit, Places: 4, Min: quantity.Of("0.0001", unit), Max: quantity.Int(9999, unit)}); ok {
		p.Details.Price, p.Details.PriceSource = &a, fmt.Sprintf("old books, line %d", r.row.Line)
	}
}
