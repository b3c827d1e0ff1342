package rates

import (
	"tenthpoint/internal/message"
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

// otherBushel compares the bushel with the grain's legal one; weights in
// kilograms are left alone, since laws give pounds.
func (e *Edition) otherBushel() message.Text {
	legal, own := e.Commodity.Bushel, e.Units.Bushel
	if legal.IsZero() || own.Unit() != legal.Unit() || own.Equal(legal) {
		return message.Text{}
	}
	return message.New("A bushel of %s is %s here and %s by law (%s). Check which law binds the elevator.", e.Commodity.Name, own.Written(), legal.Written(), e.Commodity.BushelSource)
}

// secondLook returns a method's warnings about its own rule.
func secondLook[R, W any](m *rule.Method[R, W], r R) message.Text {
	if m.Caution == nil {
		return message.Text{}
	}
	return m.Caution(r)
}
