package lab

import (
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// texts are the texts typed at the bench for one sample, by field.
type texts map[string]string

// testFigures are the fields that every test begins without; mass and temperatures
// stay as they were.
var testFigures = []string{"dial", "percent", "wet", "tare", "dry", "reason"}

// benchFields are the fields of a sample that are typed at the bench itself.
var benchFields = slices.Concat(benchContext, []string{"chart", "mass", "temperature", "room", "dryer"}, testFigures, keptFields)

// benchContext are the fields that the others depend on.
var benchContext = []string{"grain", "method", "meter"}

// method returns the method of the next test: typed, where no method is chosen.
func (t texts) method() meter.Method {
	m := meter.Method(t["method"])
	if !slices.Contains(meter.Methods(), m) {
		return meter.Typed
	}
	return m
}

// isHalfTyped reports whether a test is typed that has not been made.
func (t texts) isHalfTyped() bool { return strings.TrimSpace(t[lastField(t.method())]) != "" }

// forget removes the texts of fields.
func (t texts) forget(fields ...string) {
	for _, id := range fields {
		delete(t, id)
	}
}

// figures are the texts of the next test as package entry reads them. Its test
// weight is the load's own.
func (t texts) figures() map[string]string {
	out := maps.Clone(map[string]string(t))
	delete(out, "test-weight")
	out["dryer"] = ""
	if t["dryer"] == model.TickOn {
		out["dryer"] = entry.TickedText
	}
	return out
}

// markDegrees marks temperatures that were typed in one unit with its letter, once
// another is usual.
func (t texts) markDegrees(typedIn, usual quantity.Unit) {
	letter := map[quantity.Unit]string{quantity.Fahrenheit: "F", quantity.Celsius: "C"}[typedIn]
	if letter == "" || typedIn == usual {
		return
	}
	for _, id := range []string{"temperature", "room"} {
		if text := strings.TrimSpace(t[id]); text != "" && !strings.ContainsAny(text, "FCfc") {
			t[id] = text + " " + letter
		}
	}
}

// lastField is the field whose Enter makes the test.
func lastField(m meter.Method) string {
	return map[meter.Method]string{meter.ByDial: "dial", meter.Direct: "percent", meter.ByOven: "dry", meter.Typed: "reason"}[m]
}

// firstFigure is the field where a further test of the same sample begins.
func firstFigure(m meter.Method) string {
	return map[meter.Method]string{meter.ByDial: "dial", meter.Direct: "percent", meter.ByOven: "wet", meter.Typed: "percent"}[m]
}
