package apptheme

import (
	"image/color"
	"math"
	"tenthpoint/ui/model"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// channel and luminance and contrast follow the definitions of relative
// luminance and contrast ratio in W3C, Web Content Accessibility Guidelines 2.1.
func channel(c uint8) float64 {
	x := float64(c) / 255
	if x <= 0.03928 {
		return x / 12.92
	}
	return math.Pow((x+0.055)/1.055, 2.4)
}

func luminance(c color.NRGBA) float64 {
	return 0.2126*channel(c.R) + 0.7152*channel(c.G) + 0.0722*channel(c.B)
}

func contrast(a, b color.NRGBA) float64 {
	high, low := luminance(a), luminance(b)
	if high < low {
		high, low = low, high
	}
	return (high + 0.05) / (low + 0.05)
}

// laid gives a colour with a tint laid over it.
func laid(ground, tint color.NRGBA) color.NRGBA {
	mix := func(g, t uint8) uint8 {
		return uint8((int(g)*(255-int(tint.A)) + int(t)*int(tint.A)) / 255)
	}
	return color.NRGBA{R: mix(ground.R, tint.R), G: mix(ground.G, tint.G), B: mix(ground.B, tint.B), A: 255}
}

func nrgba(th Theme, name fyne.ThemeColorName) color.NRGBA {
	return color.NRGBAModel.Convert(th.Color(name, theme.VariantLight)).(color.NRGBA)
}

func ratio(th Theme, p Pair) float64 {
	ground := nrgba(th, p.Ground)
	for _, tint := range p.Over {
		ground = laid(ground, nrgba(th, tint))
	}
	return contrast(nrgba(th, p.Text), ground)
}

func TestContrastFormula(t *testing.T) {
	white := rgb(0xFFFFFF)
	for _, c := range []struct {
		text color.NRGBA
		want float64
	}{
		{rgb(0x000000), 21}, {rgb(0xFFFFFF), 1}, {rgb(0x767676), 4.54}, {rgb(0x777777), 4.48},
	} {
		if got := contrast(c.text, white); math.Abs(got-c.want) > 0.005 {
			t.Errorf("contrast of %v on white: got %.3f, want %.2f", c.text, got, c.want)
		}
	}
	if got := laid(white, rgba(0x000000, 0x80)); got != rgb(0x7F7F7F) {
		t.Errorf("half black over white: got %v", got)
	}
}

func TestTextContrast(t *testing.T) {
	for _, th := range []Theme{{Dark: false}, {Dark: true}} {
		for _, p := range TextPairs() {
			if got := ratio(th, p); got < 4.5 {
				t.Errorf("dark %v: %s on %s %v is %.2f : 1, want at least 4.5", th.Dark, p.Text, p.Ground, p.Over, got)
			}
		}
		for _, p := range EdgePairs() {
			if got := ratio(th, p); got < 3 {
				t.Errorf("dark %v: the edge %s on %s is %.2f : 1, want at least 3", th.Dark, p.Text, p.Ground, got)
			}
		}
	}
}

// TestPairsKnowEveryState: a state added without a pair would go untested.
func TestPairsKnowEveryState(t *testing.T) {
	known := map[[2]fyne.ThemeColorName]bool{}
	for _, p := range TextPairs() {
		known[[2]fyne.ThemeColorName{p.Text, p.Ground}] = true
	}
	for s := model.Plain; s <= model.Missing; s++ {
		if !known[[2]fyne.ThemeColorName{StateInk(s), StateGround(s)}] {
			t.Errorf("state %d: %s on %s is in no pair", s, StateInk(s), StateGround(s))
		}
	}
}

func TestPalettesAreWhole(t *testing.T) {
	for _, name := range []fyne.ThemeColorName{
		theme.ColorNameBackground, theme.ColorNameButton, theme.ColorNameDisabled, theme.ColorNameDisabledButton,
		theme.ColorNameError, theme.ColorNameFocus, theme.ColorNameForeground, theme.ColorNameForegroundOnError,
		theme.ColorNameForegroundOnPrimary, theme.ColorNameForegroundOnSuccess, theme.ColorNameForegroundOnWarning,
		theme.ColorNameHeaderBackground, theme.ColorNameHover, theme.ColorNameHyperlink, theme.ColorNameInputBackground,
		theme.ColorNameInputBorder, theme.ColorNameMenuBackground, theme.ColorNameOverlayBackground,
		theme.ColorNamePlaceHolder, theme.ColorNamePressed, theme.ColorNamePrimary, theme.ColorNameScrollBar,
		theme.ColorNameScrollBarBackground, theme.ColorNameSelection, theme.ColorNameSeparator, theme.ColorNameShadow,
		theme.ColorNameSuccess, theme.ColorNameWarning,
	} {
		if _, ok := LightPalette[name]; !ok {
			t.Errorf("the light palette has no %s", name)
		}
	}
	for name := range LightPalette {
		if _, ok := darkPalette[name]; !ok {
			t.Errorf("the dark palette has no %s", name)
		}
	}
	equal(t, "names in the dark palette", len(darkPalette), len(LightPalette))
}

func TestThemeDecidesItself(t *testing.T) {
	test.NewTempApp(t)
	for _, variant := range []fyne.ThemeVariant{theme.VariantLight, theme.VariantDark, 2} {
		light, dark := NewTheme(false, 1).Color(ColorInk, variant), NewTheme(true, 1).Color(ColorInk, variant)
		if light != LightPalette[ColorInk] || dark != darkPalette[ColorInk] {
			t.Errorf("variant %d: ink is %v in light and %v in dark", variant, light, dark)
		}
	}
}

func TestTextScale(t *testing.T) {
	test.NewTempApp(t)
	for _, c := range []struct {
		scale  TextScale
		want   float32
		ground float32
		stroke float32
	}{
		{TextOrdinary, 15, 4, 2}, {TextLarge, 18.75, 4.5, 2}, {TextLargest, 22.5, 5, 2},
		{3, 15, 4, 2}, // no such scale: ordinary
	} {
		th := NewTheme(false, c.scale)
		equal(t, "text", th.Size(theme.SizeNameText), c.want)
		equal(t, "ground", th.Size(theme.SizeNamePadding), c.ground)
		equal(t, "stroke", th.Size(theme.SizeNameInputBorder), c.stroke)
	}
	equal(t, "zero theme", Theme{}.Size(theme.SizeNameText), 15)
	equal(t, "a size only Fyne knows", Theme{}.Size(theme.SizeNameScrollBar), 12)
}

// TestNoStateByColourAlone: every state but Plain has a shape of its own.
func TestNoStateByColourAlone(t *testing.T) {
	test.NewTempApp(t)
	shapes := map[string]model.State{}
	for s := model.OK; s <= model.Missing; s++ {
		icon := StateIcon(s)
		if icon == nil {
			t.Fatalf("state %d has no icon", s)
		}
		if other, taken := shapes[icon.Name()]; taken {
			t.Errorf("states %d and %d share the shape %s", s, other, icon.Name())
		}
		shapes[icon.Name()] = s
	}
	if StateIcon(model.Plain) != nil {
		t.Error("a plain state has an icon")
	}
}

// equal fails the test unless got is want.
func equal[T comparable](t *testing.T, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}
