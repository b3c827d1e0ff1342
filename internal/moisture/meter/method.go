package meter

import "tenthpoint/internal/message"

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

// Message is the method for people.
func (m Method) Message() message.Text {
	switch m {
	case ByDial:
		return message.New("dial and chart")
	case Direct:
		return message.New("direct-reading meter")
	case ByOven:
		return message.New("oven")
	case Typed:
		return message.New("typed by hand")
	}
	return message.New("unknown method %q", string(m))
}

// String is the method in English.
func (m Method) String() string { return m.Message().String() }

// UsesMeter reports whether a moisture meter gave the figure.
func (m Method) UsesMeter() bool { return m == ByDial || m == Direct }
