package model

// ChartPoint is one point of a check chart, in thousandths of its width and
// height. One that is not Plain is ringed in its state's colour and has a label.
type ChartPoint struct {
	X, Y  int
	Label string
	State State
}

// Guide is a line or a label along the edge of a chart, in thousandths. Its state
// colours the line of a limit.
type Guide struct {
	At    int
	Label string
	State State
}

// Figure is a number to be read from across the room.
type Figure struct {
	Caption, Value, Unit string
	State                State
}
