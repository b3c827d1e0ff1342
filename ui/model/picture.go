package model

import "tenthpoint/internal/grain/look"

// Picture is a chart of columns, each of parts stacked on one another, ready to be drawn. Heights are
// thousandths of the picture's own.
type Picture struct {
	Title, Says, Empty string
	Stacks             []Stack
	Legend             []Legend
	Stroke             string // what a stroke across a column stands for
	Guides             []Guide
	Edge               PictureEdge
	Base               int // how high the ground line is
}

// Stack is one column of a picture.
type Stack struct {
	Label, Value, Said string
	Parts              []StackPart
	Stroke             int
	HasStroke          bool
	Opens              string // the search for what it is made of; empty for none
	Now                bool
}

// StackPart is a piece of a column; below zero it goes down.
type StackPart struct {
	Height int
	Look   look.Look
}

// Legend is the name of a look.
type Legend struct {
	Name string
	Look look.Look
}

// PictureEdge is the position from which a picture is shaded, in thousandths of its width. Without a label there
// is none.
type PictureEdge struct {
	At    int
	Label string
}
