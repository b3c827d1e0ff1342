package report

import (
	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/message"
)

// Picture is a chart of columns side by side, each of parts stacked on one another. Heights are
// thousandths of the picture's own height. Plain text shows nothing of it, so the figures it is
// made of stand in a table of the same paper.
type Picture struct {
	Title message.Text
	// Says is the picture in a sentence.
	Says   message.Text
	Empty  message.Text // said where there are no columns
	Stacks []Stack
	Legend []Legend
	// Stroke is the legend of the strokes across columns; empty where there are none.
	Stroke message.Text
	Guides []Guide
	Edge   Edge
	// Base is the height of the zero line: columns of figures below zero go down from it.
	Base int
	// Wide is a picture that takes the whole width of a paper.
	Wide bool
}

// Stack is one column.
type Stack struct {
	Label message.Text // below
	Value message.Text // over it
	Said  message.Text // all of it in a sentence
	Parts []Part       // from the ground up
	// Stroke is the height of a stroke across it, if HasStroke.
	Stroke    int
	HasStroke bool
	// Opens is the search that lists the tickets it is made of; empty where it is made of none.
	Opens string
	// Now marks the day that is today.
	Now bool
}

// Part is a piece of a column, or where its height is below zero, of one that goes down.
type Part struct {
	Height int
	Look   look.Look
}

// Legend is the name of a look.
type Legend struct {
	Name message.Text
	Look look.Look
}

// Guide is a line across a picture with its value. That of a limit is drawn stronger.
type Guide struct {
	At    int
	Label message.Text
	Limit bool
}

// Edge is the position at which something begins, from left to right: everything beyond it is shaded. The zero Edge
// is none.
type Edge struct {
	// At is a place in thousandths of the width.
	At    int
	Label message.Text
}

// IsZero reports whether there is no edge.
func (e Edge) IsZero() bool { return e.Label.IsZero() }
