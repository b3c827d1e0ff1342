package apptheme

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
)

// StateInk is the colour of the state's word and icon.
func StateInk(s model.State) fyne.ThemeColorName {
	switch s {
	case model.OK:
		return ColorOK
	case model.Warn, model.Missing:
		return ColorWarn
	case model.Stop:
		return ColorStop
	case model.Wait:
		return ColorWait
	default:
		return ColorQuiet
	}
}

// StateGround is the tint laid behind the state's word.
func StateGround(s model.State) fyne.ThemeColorName {
	switch s {
	case model.OK:
		return ColorOKGround
	case model.Warn, model.Missing:
		return ColorWarnGround
	case model.Stop:
		return ColorStopGround
	case model.Wait:
		return ColorWaitGround
	default:
		return ColorPlainGround
	}
}

// StateIcon is the shape of the state, in the state's own colour; nil for Plain.
// No two states share a shape.
func StateIcon(s model.State) fyne.Resource {
	switch s {
	case model.OK:
		return tinted(iconOK, ColorOK)
	case model.Warn:
		return tinted(IconWarn, ColorWarn)
	case model.Stop:
		return tinted(iconStop, ColorStop)
	case model.Wait:
		return tinted(iconWait, ColorWait)
	case model.Locked:
		return tinted(iconLock, ColorQuiet)
	case model.Missing:
		return tinted(IconMissing, ColorWarn)
	default:
		return nil
	}
}
