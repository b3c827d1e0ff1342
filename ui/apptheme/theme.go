package apptheme

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Own sizes beside Fyne's.
const (
	SizeFigure fyne.ThemeSizeName = "kit.figure" // a weight read from across the room
	SizeStatus fyne.ThemeSizeName = "kit.status" // the status line
	SizeNote   fyne.ThemeSizeName = "kit.note"   // what is said beside a field
	SizeFine   fyne.ThemeSizeName = "kit.fine"   // tables of many columns, where letters are large
	SizeMark   fyne.ThemeSizeName = "kit.mark"   // the stroke of a focus ring or marker bar
)

// TextScale is a text size relative to the ordinary one.
type TextScale float32

// The text sizes a desk offers.
const (
	TextOrdinary TextScale = 1.0
	TextLarge    TextScale = 1.25
	TextLargest  TextScale = 1.5
)

// TextScales lists the sizes in order, for a set-up screen.
func TextScales() []TextScale { return []TextScale{TextOrdinary, TextLarge, TextLargest} }

// Theme is the look of the desk. The zero value is light with ordinary text.
// It decides light or dark itself and never asks the system.
type Theme struct {
	Dark  bool
	Scale TextScale
}

var _ fyne.Theme = Theme{}

// NewTheme returns the theme for a choice of light or dark and text size. A scale that is not one
// of TextScales falls back to TextOrdinary.
func NewTheme(dark bool, scale TextScale) Theme {
	for _, known := range TextScales() {
		if scale == known {
			return Theme{Dark: dark, Scale: scale}
		}
	}
	return Theme{Dark: dark, Scale: TextOrdinary}
}

// Color returns the colour of a name. It ignores the variant.
func (t Theme) Color(name fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	colors, fallback := LightPalette, theme.VariantLight
	if t.Dark {
		colors, fallback = darkPalette, theme.VariantDark
	}
	if c, ok := colors[name]; ok {
		return c
	}
	return theme.DefaultTheme().Color(name, fallback)
}

// Font returns Fyne's own font, whose digits are all equally wide.
func (t Theme) Font(style fyne.TextStyle) fyne.Resource {
	return theme.DefaultTheme().Font(style)
}

// Icon returns Fyne's own icon of a name.
func (t Theme) Icon(name fyne.ThemeIconName) fyne.Resource {
	return theme.DefaultTheme().Icon(name)
}

// sizes at ordinary text, in Fyne's device independent units.
var sizes = map[fyne.ThemeSizeName]float32{
	theme.SizeNameText:           15,
	theme.SizeNameCaptionText:    12.5,
	theme.SizeNameSubHeadingText: 18,
	theme.SizeNameHeadingText:    23,
	theme.SizeNameInlineIcon:     18,
	theme.SizeNameInputRadius:    3,
	SizeFigure:                   30,
	SizeStatus:                   17,
	SizeNote:                     13,
}

// grounds are the ground around letters, and the letters of tables with no room.
// They grow half as fast as the others: in large letters there is less room to
// give away.
var grounds = map[fyne.ThemeSizeName]float32{
	theme.SizeNameInnerPadding: 6,
	theme.SizeNamePadding:      4,
	SizeFine:                   13,
}

// Strokes do not grow with the text: a line is a line.
var Strokes = map[fyne.ThemeSizeName]float32{
	theme.SizeNameInputBorder: 2,
	SizeMark:                  3,
}

// Size returns a size, multiplied by the text scale where it concerns text.
func (t Theme) Size(name fyne.ThemeSizeName) float32 {
	if stroke, ok := Strokes[name]; ok {
		return stroke
	}
	scale := float32(t.Scale)
	if scale == 0 {
		scale = float32(TextOrdinary)
	}
	if ground, ok := grounds[name]; ok {
		return ground * (1 + scale) / 2
	}
	if size, ok := sizes[name]; ok {
		return size * scale
	}
	return theme.DefaultTheme().Size(name)
}
