package model

import "tenthpoint/internal/grain/look"

// BinPicture is one bin of a house drawn to scale, its lengths in thousandths of the tallest bin.
type BinPicture struct {
	Key   string
	Label string // its short name
	Under string // how full it is, and of what, ready to read

	Width, Wall int // of the straight part
	Cone        int // the hopper below the wall; zero for a flat floor
	Peak        int // the roof, or of a pile its height
	Pile        bool
	Unmeasured  bool // drawn in an ordinary size, without a level

	Look   look.Look // of the grain that most of it is
	Level  int       // how full, in thousandths of the room to the eave
	State  State
	Chosen bool
}
