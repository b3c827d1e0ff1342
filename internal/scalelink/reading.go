package scalelink

import (
	"time"

	"tenthpoint/internal/quantity"
)

// State is the status an indicator reports with its reading. The states are ordered: when a frame
// reports two, the worse counts.
type State int

const (
	Unsaid State = iota // the frame has no motion status
	Stable              // at rest
	Motion              // the weight is still moving
	Under               // below the range of the scale
	Over                // above the range of the scale
	Fault               // the indicator reports a fault
)

var stateWords = [...]string{"unsaid", "stable", "motion", "under", "over", "fault"}

// String is the word a profile uses for the state.
func (s State) String() string { return stateWords[s] }

// Mode is which weight the indicator shows.
type Mode int

const (
	ModeUnsaid Mode = iota // the frame does not tell; taken as gross
	Gross                  // everything on the deck
	Net                    // the deck less a tare held in the indicator
)

var modeWords = [...]string{"unsaid", "gross", "net"}

// String is the word a profile uses for the mode.
func (m Mode) String() string { return modeWords[m] }

// Reading is one parsed frame. Weight is in lb, kg or t, as the indicator shows it; it is zero,
// with its unit, when State is Under, Over or Fault, for then the digits mean nothing. Raw is the
// frame without its start and end bytes, unprintable bytes escaped, as stored in the book beside
// the weight. At is the time the frame arrived.
type Reading struct {
	Weight quantity.Amount
	State  State
	Mode   Mode
	Raw    string
	At     time.Time
}

// IsStable reports a weight at rest.
func (r Reading) IsStable() bool { return r.State == Stable }

// hasWeight reports whether the digits of the frame mean a weight.
func (r Reading) hasWeight() bool { return r.State < Under }
