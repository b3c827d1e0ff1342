package rates

import (
	"fmt"

	"tenthpoint/internal/rates/rule"
)

// Cautions are things an edition may say and that are yet worth a second look,
// a sentence each. They refuse nothing.
func (e *Edition) Cautions() []string {
	var out []string
	for _, caution := range []string{e.otherBushel(), secondLook(e.Shrink.Method, e.Shrink), secondLook(e.Handling.Method, e.Handling), secondLook(e.Drying.Method, e.Drying)} {
		if caution != "" {
			out = append(out, caution)
		}
	}
	return out
}

// otherBushel compares the bushel with the grain's legal one; weights in
// kilograms are left alone, since laws give pounds.
func (e *Edition) otherBushel() string {
	legal, own := e.Commodity.Bushel, e.Units.Bushel
	if legal.IsZero() || own.Unit() != legal.Unit() || own.Equal(legal) {
		return ""
	}
	return fmt.Sprintf("A bushel of %s is %s here and %s by law (%s). Check which law binds the elevator.", e.Commodity.Name, own.Written(), legal.Written(), e.Commodity.BushelSource)
}

// secondLook is what a method cautions about its own rule.
func secondLook[R, W any](m *rule.Method[R, W], r R) string {
	if m.Caution == nil {
		return ""
	}
	return m.Caution(r)
}
