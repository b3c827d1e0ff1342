package kit

import "fyne.io/fyne/v2"

// State says how a thing stands. It is always shown as a word, an icon and a
// colour together, so that it survives sunlight and colour-blind eyes.
type State int

// The states a badge, a note, a status line or a chart mark can have.
const (
	Plain   State = iota // nothing to remark
	OK                   // all is well
	Warn                 // look twice before going on
	Stop                 // refused, void, or wrong
	Wait                 // under way, or for information
	Locked               // closed for changes
	Missing              // still to be given
)

// ink is the colour of the state's word and icon.
func (s State) ink() fyne.ThemeColorName {
	switch s {
	case OK:
		return ColorOK
	case Warn, Missing:
		return ColorWarn
	case Stop:
		return ColorStop
	case Wait:
		return ColorWait
	default:
		return ColorQuiet
	}
}

// ground is the tint laid behind the state's word.
func (s State) ground() fyne.ThemeColorName {
	switch s {
	case OK:
		return ColorOKGround
	case Warn, Missing:
		return ColorWarnGround
	case Stop:
		return ColorStopGround
	case Wait:
		return ColorWaitGround
	default:
		return ColorPlainGround
	}
}

// Icon is the shape of the state, in the state's own colour; nil for Plain.
// No two states share a shape.
func (s State) Icon() fyne.Resource {
	switch s {
	case OK:
		return tinted(iconOK, ColorOK)
	case Warn:
		return tinted(iconWarn, ColorWarn)
	case Stop:
		return tinted(iconStop, ColorStop)
	case Wait:
		return tinted(iconWait, ColorWait)
	case Locked:
		return tinted(iconLock, ColorQuiet)
	case Missing:
		return tinted(iconMissing, ColorWarn)
	default:
		return nil
	}
}
