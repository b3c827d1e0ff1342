package moisture

import (
	"slices"
	"strings"

	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
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
	RoomOutside   Code = "room-outside"   // the room is too cold or too hot for the meter
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
	// What is wrong, Why it matters and what to Do, one sentence each.
	What, Why, Do message.Text
	// Blocking flags stop the ticket; the elevator says which do.
	Blocking bool
	// Final flags always block and no one may override them.
	Final bool
	// Override is set when a manager let the load through all the same.
	Override *Override
}

// Stops reports whether the flag still stops the ticket.
func (f Flag) Stops() bool { return f.Blocking && f.Override == nil }

// Sentence is the whole flag for screen and slip.
func (f Flag) Sentence() string { return f.Message().String() }

// Message is the whole flag.
func (f Flag) Message() message.Text {
	parts := []any{f.What, f.Why, f.Do}
	if f.Override != nil {
		parts = append(parts, message.New("Overridden by %v: %v.", f.Override.By, strings.TrimSuffix(f.Override.Reason, ".")))
	}
	text := message.List(" ", parts...)
	if f.Test > 0 {
		return message.New("Test %d: %s", f.Test, text)
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

// Override is a manager's recorded decision to accept a flagged moisture.
// Whether By is a manager is for the desk to know.
type Override struct {
	Code   Code   `json:"code"`
	Test   int    `json:"test,string,omitempty"`
	By     string `json:"by"`
	Reason string `json:"reason"`
}

// ApplyOverrides sets the overrides on the flags they are for. It returns an error for each invalid
// override: no such flag, no person, no reason, or a flag that nobody may override.
func ApplyOverrides(flags []Flag, overrides []Override) ([]Flag, []error) {
	flags = slices.Clone(flags)
	var faults fault.List
	for _, o := range overrides {
		i := slices.IndexFunc(flags, func(f Flag) bool { return f.Code == o.Code && f.Test == o.Test })
		switch {
		case i < 0:
			faults.Add("nothing is flagged %s%s, so there is nothing to override; take the override away", o.Code, onTest(o.Test))
		case flags[i].Final:
			faults.Add("%s%s may not be overridden: %s %s", o.Code, onTest(o.Test), flags[i].What, flags[i].Do)
		case strings.TrimSpace(o.By) == "" || strings.TrimSpace(o.Reason) == "":
			faults.Add("the override of %s%s needs the manager's name and a reason; both are printed", o.Code, onTest(o.Test))
		default:
			flags[i].Override = &o
		}
	}
	return flags, faults
}

func onTest(n int) message.Text {
	if n == 0 {
		return message.Text{}
	}
	return message.New(" on test %d", n)
}
