package rates

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
)

// Cautions returns warnings about rules that are allowed but unusual, one sentence each. They
// refuse nothing.
func (e *Edition) Cautions() []message.Text {
	var out []message.Text
	for _, caution := range []message.Text{e.otherBushel(), secondLook(e.Shrink.Method, e.Shrink), secondLook(e.Handling.Method, e.Handling), secondLook(e.Drying.Method, e.Drying)} {
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
