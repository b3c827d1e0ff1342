package present

// State says how a thing stands. A view shows it as a word, an icon and a
// colour together.
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
