package rates

import (
	"strings"

	"tenthpoint/internal/dated"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
)

func (r *reader) readHead(t *tomlfile.Table) {
	e := r.e
	e.ID, e.Title, e.Schedule = rule.ReadName(t, "id"), t.Text("title"), rule.ReadName(t, "schedule")
	e.From, e.Until = t.Date("from"), t.OptionalDate("until")
	e.Status = Status(t.Choice("status", string(Example), string(House), string(Statute)))
	e.Corrects = t.OptionalText("corrects")
	e.Format = readFormat(t)
	e.Order = t.Texts("order")
	r.commodity(t)
	dated.Period(t, e.Dated())
}

func (r *reader) commodity(t *tomlfile.Table) {
	if r.e.Commodity = grain.ReadCommodity(t); t.Has("commodity") {
		r.factors()
	}
}

// factors reads the factors the elevator adds to the built-in ones: unit, recording rule and limits
// are in the edition, which every ticket settled under it keeps. Ids begin with "own-", so that no
// later built-in factor can collide.
func (r *reader) factors() {
	e := r.e
	for i, row := range r.root.Tables("factor") {
		row.SetTitle(message.New("place|factor %d", i+1))
		f := grain.ReadFactor(row)
		_, taken := e.Commodity.Factor(f.ID)
		switch {
		case taken:
			row.AddProblem("id", message.New("two factors are called %v", f.ID), message.New("Give one of them another id."))
		case f.ID != "" && !strings.HasPrefix(string(f.ID), "own-"):
			row.AddProblem("id", message.New("the id of a factor of the house is %q", f.ID), message.New("Let it begin with own-, such as \"own-zearalenone\"."))
		}
		e.Factors = append(e.Factors, f)
		e.Commodity = e.Commodity.With(f)
	}
}

func (r *reader) units() {
	t, found := r.root.Table("units", true)
	// Money is printed with the sign $, so only a dollar may be meant by it.
	u := rule.Units{Weight: quantity.Lb, Settle: quantity.Bushel, Currency: t.Choice("currency", "USD", "CAD", "AUD", "NZD")}
	if t.Choice("weight", "lb", "kg") == "kg" {
		u.Weight = quantity.Kg
	}
	switch t.Choice("settle", "bu", "cwt", "t") {
	case "cwt":
		u.Settle = quantity.Cwt
	case "t":
		u.Settle = quantity.Tonne
	}
	if found {
		readBushel(t, &u)
	}
	r.e.Units, r.head.NoBushel = u, found && !t.Has("bushel")
}

func readBushel(t *tomlfile.Table, u *rule.Units) {
	if !t.Has("bushel") {
		withoutBushel(t, u)
		return
	}
	bushel, ok := t.OptionalAmount("bushel", u.Weight.Per(quantity.Bushel))
	u.Bushel, u.BushelSource = bushel, t.Text("bushel_source")
	if ok && bushel.Sign() <= 0 {
		t.AddProblem("bushel", message.New("units.bushel is %s: weights are divided by it", bushel.Written()), message.New("Write the legal weight of one bushel, such as \"56 lb/bu\"."))
	}
}

func withoutBushel(t *tomlfile.Table, u *rule.Units) {
	if u.Settle == quantity.Bushel {
		t.AddProblem("bushel", message.New("units.bushel is missing, and the edition settles in bushels"), message.New("Add the legal weight of one bushel, such as bushel = \"56 lb/bu\"."))
	}
	if t.OptionalText("bushel_source") != "" {
		t.AddProblem("bushel_source", message.New("units.bushel_source names a law, but there is no bushel weight"), message.New("Add units.bushel, or take the line out."))
	}
}

func (r *reader) rounding() {
	t, _ := r.root.Table("rounding", true)
	r.e.Rounding = rule.Places{
		Moisture: t.Rounding("moisture"), Weight: t.Rounding("weight"),
		Quantity: t.Rounding("quantity"), Money: t.Rounding("money"),
	}
	rule.MustRound(t, "weight", r.e.Rounding.Weight)
	rule.MustRound(t, "quantity", r.e.Rounding.Quantity)
	rule.MustRound(t, "money", r.e.Rounding.Money)
}
