package bench

import (
	"fmt"
	"slices"
	"strings"
)

// Code names a reason to doubt a moisture.
type Code string

// The reasons, in the order they are shown.
const (
	WrongMass     Code = "wrong-mass"     // not the mass the chart or meter is for
	MeterFailed   Code = "meter-failed"   // outside its limit at the last check
	MeterOverdue  Code = "meter-overdue"  // past its check date
	NeverChecked  Code = "never-checked"  // no check under its calibration
	OtherEdition  Code = "other-edition"  // read under another calibration than the meter's
	Cold          Code = "cold"           // sample too cold to read
	FromDryer     Code = "from-dryer"     // hot from a dryer, moisture not yet even
	EstimateOnly  Code = "estimate-only"  // wetter than meters measure
	MeterToGrain  Code = "meter-to-grain" // grain and meter too far apart
	RoomOutside   Code = "room-outside"   // meter stands too cold or too hot
	OutsidePosted Code = "outside-posted" // beyond the limits posted for the grain
	NoSample      Code = "no-sample-temperature"
	NoRoom        Code = "no-room-temperature"
	ByHand        Code = "typed-by-hand"
	InventedChart Code = "example-chart"
	WideSpread    Code = "wide-spread" // tests of one sample differ too much
	TooFewTests   Code = "too-few-tests"
	NearLimit     Code = "near-limit" // more tests are asked for near a limit
)

// Codes lists every reason, in the order they are shown.
func Codes() []Code {
	return []Code{WrongMass, MeterFailed, MeterOverdue, NeverChecked, OtherEdition, Cold, FromDryer, EstimateOnly,
		MeterToGrain, RoomOutside, OutsidePosted, NoSample, NoRoom, ByHand, InventedChart, WideSpread, TooFewTests, NearLimit}
}

// Flag is one reason to doubt the moisture of a sample.
type Flag struct {
	Code Code
	// Test is the test it belongs to; 0 is the sample as a whole.
	Test int
	// What is wrong, Why it matters and what to Do, each a sentence.
	What, Why, Do string
	// Blocking flags stop the ticket; the house says which do.
	Blocking bool
	// Final flags always block and no one may override them.
	Final bool
	// Override is set when a manager let the load through all the same.
	Override *Override
}

// Stops reports whether the flag still stops the ticket.
func (f Flag) Stops() bool { return f.Blocking && f.Override == nil }

// Sentence is the whole flag for screen and slip.
func (f Flag) Sentence() string {
	parts := []string{f.What, f.Why, f.Do}
	if f.Override != nil {
		parts = append(parts, fmt.Sprintf("Let through by %s: %s.", f.Override.By, strings.TrimSuffix(f.Override.Reason, ".")))
	}
	text := strings.Join(slices.DeleteFunc(parts, func(s string) bool { return s == "" }), " ")
	if f.Test > 0 {
		return fmt.Sprintf("Test %d: %s", f.Test, text)
	}
	return text
}

// Stopped reports whether any flag still stops the ticket.
func Stopped(flags []Flag) bool { return slices.ContainsFunc(flags, Flag.Stops) }

// sortFlags puts flags in the order of Codes, then of the tests.
func sortFlags(flags []Flag) {
	order := Codes()
	slices.SortStableFunc(flags, func(a, b Flag) int {
		if a.Code != b.Code {
			return slices.Index(order, a.Code) - slices.Index(order, b.Code)
		}
		return a.Test - b.Test
	})
}
