package model

// State is the status of a thing. It is always shown as a word, an icon and a
// colour together, so that it survives sunlight and colour-blind eyes.
type State int

// The states.
const (
	Plain   State = iota // nothing to remark
	OK                   // all is well
	Warn                 // look twice before going on
	Stop                 // refused, void, or wrong
	Wait                 // under way, or for information
	Locked               // closed for changes
	Missing              // still to be given
)

// Status is a state with its sentence, under a word where it has one.
type Status struct {
	State State
	Word  string
	Text  string
}
