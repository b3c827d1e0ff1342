package rates

import (
	"strings"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
)

// Cautions returns warnings about rules that are allowed but unusual, one sentence each. They
// refuse nothing.
func (e *Edition) Cautions() []message.Text {
	var out []message.Text
	for _, caution := range []message.Text{e.otherBushel(), e.dockageOfNone(), e.withoutPremium(), secondLook(e.Shrink.Method, e.Shrink), secondLook(e.Handling.Method, e.Handling), secondLook(e.Drying.Method, e.Drying)} {
		if !caution.IsZero() {
			out = append(out, caution)
		}
	}
	return append(append(out, e.unlikely()...), e.paidMore()...)
}

// otherBushel compares the bushel with the one usual where the rates pay; weights in kilograms are
// left alone, since laws give pounds.
func (e *Edition) otherBushel() message.Text {
	own := e.Units.Bushel
	if usual, other := bushelsInCanada[e.Commodity.ID]; other && e.Units.Currency == "CAD" {
		if own.Unit() != usual.Unit() || own.Equal(usual) {
			return message.Text{}
		}
		return message.New("A bushel of %s is %s here and %s in Canada (%v).", e.Commodity.Name, own.Written(), usual.Written(), bushelsInCanadaSource)
	}
	legal := e.Commodity.Bushel
	if legal.IsZero() || own.Unit() != legal.Unit() || own.Equal(legal) {
		return message.Text{}
	}
	return message.New("A bushel of %s is %s here and %s by law (%s). Check which law binds the elevator.", e.Commodity.Name, own.Written(), legal.Written(), e.Commodity.BushelSource)
}

// dockageOfNone is said where rates in US dollars take dockage of a grain that has none there.
func (e *Edition) dockageOfNone() message.Text {
	c, err := grain.ByID(e.Commodity.ID)
	_, determined := c.Dockage()
	if err != nil || determined || e.Dockage.Source.IsZero() || e.Units.Currency != "USD" {
		return message.Text{}
	}
	return message.New("No dockage is determined of %s in the United States (7 CFR 810.104): what these rates take is the house's own.", c.Name)
}

// withoutPremium names the discounts that pay nothing for better grain, where the rates go by the
// law of Minnesota.
func (e *Edition) withoutPremium() message.Text {
	if !strings.HasPrefix(e.Units.BushelSource, "Minnesota") {
		return message.Text{}
	}
	var only []message.Text
	for i := range e.Discounts {
		if r := &e.Discounts[i]; !r.Factor.YesNo && r.Factor.ID != grain.Moisture && takesAlone(r) {
			only = append(only, r.Label)
		}
	}
	if len(only) == 0 {
		return message.Text{}
	}
	return message.New("The bushel is that of Minnesota, whose law asked for a premium as great as the discount (Minnesota Statutes 17B.0451, in its text of 2008): %s. Confirm whether it binds the elevator.", message.Texts(", ", only))
}

// takesAlone reports whether a rule has discounts and no premium.
func takesAlone(r *discount.Rule) bool {
	takes, pays := r.Direction == rule.Docks && r.Cell.Given(), r.Direction == rule.Pays && r.Cell.Given()
	for _, row := range r.Rows {
		takes = takes || row.Direction == rule.Docks && !row.Cell.Amount.IsZero()
		pays = pays || row.Direction == rule.Pays
	}
	return takes && !pays
}

// bushelsInCanada are the bushels that Canada counts otherwise than the statutes of the states.
var bushelsInCanada = map[string]quantity.Amount{"oats": quantity.Of("34", quantity.LbPerBushel)}

const bushelsInCanadaSource = "Government of Alberta, bushel equivalents per tonne, 2002"

// secondLook returns a method's warnings about its own rule.
func secondLook[R, W any](m *rule.Method[R, W], r R) message.Text {
	if m.Caution == nil {
		return message.Text{}
	}
	return m.Caution(r)
}
