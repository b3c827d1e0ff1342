package meter

import "fmt"

// Method is the way a moisture was determined.
type Method string

const (
	// ByDial reads a dial and a thermometer and looks them up in a chart.
	ByDial Method = "dial"
	// Direct reads percent from a meter that does its own correction.
	Direct Method = "direct"
	// ByOven dries a weighed sample; it is the reference for the others.
	ByOven Method = "oven"
	// Typed is a figure from elsewhere, with its reason.
	Typed Method = "typed"
)

// Methods lists the four, the everyday ones first.
func Methods() []Method { return []Method{ByDial, Direct, ByOven, Typed} }

// String is the method for people.
func (m Method) String() string {
	switch m {
	case ByDial:
		return "dial and chart"
	case Direct:
		return "direct-reading meter"
	case ByOven:
		return "oven"
	case Typed:
		return "typed by hand"
	}
	return fmt.Sprintf("unknown method %q", string(m))
}

// UsesMeter reports whether a moisture meter gave the figure.
func (m Method) UsesMeter() bool { return m == ByDial || m == Direct }
