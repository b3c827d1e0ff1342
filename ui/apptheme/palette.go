package apptheme

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// The program's own colour names. A view names the meaning of a colour, never its looks.
const (
	ColorInk   fyne.ThemeColorName = "kit.ink"   // text people must read
	ColorQuiet fyne.ThemeColorName = "kit.quiet" // text that may stay in the background
	ColorOK    fyne.ThemeColorName = "kit.ok"    // all is well
	ColorWarn  fyne.ThemeColorName = "kit.warn"  // look twice
	ColorStop  fyne.ThemeColorName = "kit.stop"  // refused, void, wrong
	ColorWait  fyne.ThemeColorName = "kit.wait"  // under way, for information

	ColorPlainGround fyne.ThemeColorName = "kit.plainGround"
	ColorOKGround    fyne.ThemeColorName = "kit.okGround"
	ColorWarnGround  fyne.ThemeColorName = "kit.warnGround"
	ColorStopGround  fyne.ThemeColorName = "kit.stopGround"
	ColorWaitGround  fyne.ThemeColorName = "kit.waitGround"

	ColorPanel  fyne.ThemeColorName = "kit.panel"  // a raised part of the window
	ColorStripe fyne.ThemeColorName = "kit.stripe" // every other row of a wide table
	ColorRule   fyne.ThemeColorName = "kit.rule"   // a ruled line
	ColorFocus  fyne.ThemeColorName = "kit.focus"  // the outline of what has the focus
	ColorChosen fyne.ThemeColorName = "kit.chosen" // the ground of a chosen row

	ColorPaper            fyne.ThemeColorName = "kit.paper"
	ColorPaperInk         fyne.ThemeColorName = "kit.paperInk"
	ColorPaperQuiet       fyne.ThemeColorName = "kit.paperQuiet"
	ColorPaperRule        fyne.ThemeColorName = "kit.paperRule"
	ColorPaperMissing     fyne.ThemeColorName = "kit.paperMissing"
	ColorPaperMissingEdge fyne.ThemeColorName = "kit.paperMissingEdge"
	ColorPaperStop        fyne.ThemeColorName = "kit.paperStop"

	ColorBar  fyne.ThemeColorName = "kit.bar"  // the body of a chart
	ColorBand fyne.ThemeColorName = "kit.band" // the wanted stretch of a scale
)

// palette maps every name to a colour. Light and dark have the same names.
type palette map[fyne.ThemeColorName]color.NRGBA

func rgb(hex uint32) color.NRGBA { return rgba(hex, 0xff) }

func rgba(hex uint32, alpha uint8) color.NRGBA {
	return color.NRGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: alpha}
}

// LightPalette has the colours of lime-washed boards, galvanised blue and ink. The backgrounds stay
// pale so that text stays legible with sun on the screen.
var LightPalette = palette{
	theme.ColorNameBackground:          rgb(0xEFEBE0),
	theme.ColorNameButton:              rgb(0xDFD9C8),
	theme.ColorNameDisabled:            rgb(0x5D635F),
	theme.ColorNameDisabledButton:      rgb(0xE7E2D5),
	theme.ColorNameError:               rgb(0x9C2A1E),
	theme.ColorNameFocus:               rgba(0x1B5567, 0x30),
	theme.ColorNameForeground:          rgb(0x1E282B),
	theme.ColorNameForegroundOnError:   rgb(0xFFFFFF),
	theme.ColorNameForegroundOnPrimary: rgb(0xFFFFFF),
	theme.ColorNameForegroundOnSuccess: rgb(0xFFFFFF),
	theme.ColorNameForegroundOnWarning: rgb(0xFFFFFF),
	theme.ColorNameHeaderBackground:    rgb(0xE1DAC8),
	theme.ColorNameHover:               rgba(0x1E282B, 0x12),
	theme.ColorNameHyperlink:           rgb(0x1B5567),
	theme.ColorNameInputBackground:     rgb(0xFFFEFB),
	theme.ColorNameInputBorder:         rgb(0x857F6C),
	theme.ColorNameMenuBackground:      rgb(0xFAF8F2),
	theme.ColorNameOverlayBackground:   rgb(0xFAF8F2),
	theme.ColorNamePlaceHolder:         rgb(0x666C68),
	theme.ColorNamePressed:             rgba(0x1E282B, 0x22),
	theme.ColorNamePrimary:             rgb(0x1B5567),
	theme.ColorNameScrollBar:           rgba(0x4A4A42, 0xB0),
	theme.ColorNameScrollBarBackground: rgb(0xE1DAC8),
	theme.ColorNameSelection:           rgba(0x1B5567, 0x3C),
	theme.ColorNameSeparator:           rgb(0xCDC6B3),
	theme.ColorNameShadow:              rgba(0x201C12, 0x59),
	theme.ColorNameSuccess:             rgb(0x28602E),
	theme.ColorNameWarning:             rgb(0x7D4A00),

	ColorInk:   rgb(0x1E282B),
	ColorQuiet: rgb(0x525A57),
	ColorOK:    rgb(0x28602E),
	ColorWarn:  rgb(0x7D4A00),
	ColorStop:  rgb(0x9C2A1E),
	ColorWait:  rgb(0x1B5567),

	ColorPlainGround: rgb(0xE5E0D2),
	ColorOKGround:    rgb(0xDAE9D5),
	ColorWarnGround:  rgb(0xF9E6BE),
	ColorStopGround:  rgb(0xF7DCD5),
	ColorWaitGround:  rgb(0xD9E7EC),

	ColorPanel:  rgb(0xF7F4EB),
	ColorStripe: rgb(0xE9E4D7),
	ColorRule:   rgb(0xCDC6B3),
	ColorFocus:  rgb(0x0F6A86),
	ColorChosen: rgb(0xCDE0E6),

	ColorPaper:            rgb(0xFFFDF7),
	ColorPaperInk:         rgb(0x1B1B18),
	ColorPaperQuiet:       rgb(0x5A5950),
	ColorPaperRule:        rgb(0xBFB9A8),
	ColorPaperMissing:     rgb(0xF9E6BE),
	ColorPaperMissingEdge: rgb(0x7D4A00),
	ColorPaperStop:        rgb(0x9C2A1E),

	ColorBar:  rgb(0x4A7F8F),
	ColorBand: rgb(0xBBD6B2),
}

// darkPalette has the same colours at night. Paper stays paper, with the lamp low.
var darkPalette = palette{
	theme.ColorNameBackground:          rgb(0x1A2023),
	theme.ColorNameButton:              rgb(0x333D42),
	theme.ColorNameDisabled:            rgb(0x9DA5A2),
	theme.ColorNameDisabledButton:      rgb(0x262D31),
	theme.ColorNameError:               rgb(0xF29C8E),
	theme.ColorNameFocus:               rgba(0x8CCBDB, 0x30),
	theme.ColorNameForeground:          rgb(0xECE8DC),
	theme.ColorNameForegroundOnError:   rgb(0x2A0C07),
	theme.ColorNameForegroundOnPrimary: rgb(0x0D1B20),
	theme.ColorNameForegroundOnSuccess: rgb(0x0B1F0E),
	theme.ColorNameForegroundOnWarning: rgb(0x261803),
	theme.ColorNameHeaderBackground:    rgb(0x2A3236),
	theme.ColorNameHover:               rgba(0xECE8DC, 0x14),
	theme.ColorNameHyperlink:           rgb(0x8CCBDB),
	theme.ColorNameInputBackground:     rgb(0x101518),
	theme.ColorNameInputBorder:         rgb(0x7D898B),
	theme.ColorNameMenuBackground:      rgb(0x262E32),
	theme.ColorNameOverlayBackground:   rgb(0x262E32),
	theme.ColorNamePlaceHolder:         rgb(0x9AA29F),
	theme.ColorNamePressed:             rgba(0xECE8DC, 0x28),
	theme.ColorNamePrimary:             rgb(0x8CCBDB),
	theme.ColorNameScrollBar:           rgba(0xB9BDB6, 0xB0),
	theme.ColorNameScrollBarBackground: rgb(0x2A3236),
	theme.ColorNameSelection:           rgba(0x8CCBDB, 0x44),
	theme.ColorNameSeparator:           rgb(0x465055),
	theme.ColorNameShadow:              rgba(0x000000, 0x99),
	theme.ColorNameSuccess:             rgb(0x97D29A),
	theme.ColorNameWarning:             rgb(0xEDBB66),

	ColorInk:   rgb(0xECE8DC),
	ColorQuiet: rgb(0xAEB5B1),
	ColorOK:    rgb(0x97D29A),
	ColorWarn:  rgb(0xEDBB66),
	ColorStop:  rgb(0xF29C8E),
	ColorWait:  rgb(0x8CCBDB),

	ColorPlainGround: rgb(0x2A3236),
	ColorOKGround:    rgb(0x1D3524),
	ColorWarnGround:  rgb(0x3D2F14),
	ColorStopGround:  rgb(0x46231D),
	ColorWaitGround:  rgb(0x1D3640),

	ColorPanel:  rgb(0x212A2E),
	ColorStripe: rgb(0x232C30),
	ColorRule:   rgb(0x465055),
	ColorFocus:  rgb(0x8CCBDB),
	ColorChosen: rgb(0x254450),

	ColorPaper:            rgb(0xDAD5C6),
	ColorPaperInk:         rgb(0x17170F),
	ColorPaperQuiet:       rgb(0x48473E),
	ColorPaperRule:        rgb(0xA39D8B),
	ColorPaperMissing:     rgb(0xEBCF93),
	ColorPaperMissingEdge: rgb(0x663A00),
	ColorPaperStop:        rgb(0x851F14),

	ColorBar:  rgb(0x6FA9B9),
	ColorBand: rgb(0x35553A),
}
