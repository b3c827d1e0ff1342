package apptheme

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"tenthpoint/internal/grain/look"
)

// LookInk is the colour of a grain's lines on a theme, LookGround that of the surface between them.
func LookInk(t fyne.Theme, l look.Look) color.NRGBA { return opaque(lookColour(t, l)) }

// LookGround is the colour between the lines of a grain.
func LookGround(t fyne.Theme, l look.Look) color.NRGBA {
	return opaque(lookColour(t, l).Toward(ground(t), look.Washed))
}

// lookColour is a grain's colour by day or by night.
func lookColour(t fyne.Theme, l look.Look) look.Colour {
	if g := ground(t); int(g.Red)+int(g.Green)+int(g.Blue) < 3*128 {
		return l.Dark
	}
	return l.Light
}

// ground is the colour that grain is drawn on.
func ground(t fyne.Theme) look.Colour {
	c := color.NRGBAModel.Convert(t.Color(theme.ColorNameBackground, theme.VariantLight)).(color.NRGBA)
	return look.Colour{Red: c.R, Green: c.G, Blue: c.B}
}

func opaque(c look.Colour) color.NRGBA {
	return color.NRGBA{R: c.Red, G: c.Green, B: c.Blue, A: 0xff}
}
