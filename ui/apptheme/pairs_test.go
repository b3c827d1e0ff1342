package apptheme

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Pair is a text colour and the ground it is read on. Over names the tints
// laid on the ground first, such as a selection or the tint under the pointer.
type Pair struct {
	Text   fyne.ThemeColorName
	Ground fyne.ThemeColorName
	Over   []fyne.ThemeColorName
}

// TextPairs lists every text and ground the desk puts together. Whoever writes
// a new combination adds it here, and the contrast test reads it.
func TextPairs() []Pair {
	var pairs []Pair
	add := func(text, ground fyne.ThemeColorName, over ...fyne.ThemeColorName) {
		pairs = append(pairs, Pair{Text: text, Ground: ground, Over: over})
	}
	for _, ground := range []fyne.ThemeColorName{
		theme.ColorNameBackground, theme.ColorNameOverlayBackground, theme.ColorNameMenuBackground,
		theme.ColorNameInputBackground, theme.ColorNameHeaderBackground, ColorPanel, ColorStripe, ColorPlainGround, ColorChosen,
	} {
		for _, text := range []fyne.ThemeColorName{
			theme.ColorNameForeground, ColorInk, ColorQuiet, ColorOK, ColorWarn, ColorStop, ColorWait,
		} {
			add(text, ground)
		}
	}
	for _, text := range []fyne.ThemeColorName{
		theme.ColorNamePlaceHolder, theme.ColorNameDisabled,
	} {
		add(text, theme.ColorNameInputBackground)
		add(text, theme.ColorNameBackground)
		add(text, theme.ColorNameMenuBackground)
		add(text, ColorPanel)
	}
	for _, state := range []model.State{model.Plain, model.OK, model.Warn, model.Stop, model.Wait} {
		add(StateInk(state), StateGround(state))
		add(theme.ColorNameBackground, StateInk(state)) // the tag of a ruler's reading
		add(ColorInk, StateGround(state))
	}
	addFyneControls(add)
	for _, text := range []fyne.ThemeColorName{ColorPaperInk, ColorPaperQuiet, ColorPaperStop, ColorPaperMissingEdge} {
		add(text, ColorPaper)
	}
	add(ColorPaperInk, ColorPaperMissing)
	add(ColorPaperMissingEdge, ColorPaperMissing)
	add(ColorInk, ColorBand)
	add(ColorWait, ColorBand) // the clamp about a reading
	return pairs
}

// addFyneControls lists what Fyne's own widgets put together.
func addFyneControls(add func(text, ground fyne.ThemeColorName, over ...fyne.ThemeColorName)) {
	ink := theme.ColorNameForeground
	add(ink, theme.ColorNameInputBackground, theme.ColorNameSelection)
	add(ink, theme.ColorNameButton)
	add(ColorQuiet, theme.ColorNameButton)
	add(ColorStop, theme.ColorNameButton) // what takes something away
	add(theme.ColorNameDisabled, theme.ColorNameDisabledButton)
	add(theme.ColorNameHyperlink, theme.ColorNameBackground)
	add(theme.ColorNameHyperlink, ColorPanel)
	for _, tint := range []fyne.ThemeColorName{theme.ColorNameHover, theme.ColorNameFocus, theme.ColorNamePressed} {
		add(ink, theme.ColorNameButton, tint)
		add(ink, theme.ColorNameMenuBackground, tint)
		add(theme.ColorNameForegroundOnPrimary, theme.ColorNamePrimary, tint)
		add(theme.ColorNameForegroundOnError, theme.ColorNameError, tint)
	}
	add(theme.ColorNameForegroundOnPrimary, theme.ColorNamePrimary)
	add(theme.ColorNameForegroundOnError, theme.ColorNameError)
	add(theme.ColorNameForegroundOnSuccess, theme.ColorNameSuccess)
	add(theme.ColorNameForegroundOnWarning, theme.ColorNameWarning)
}

// EdgePairs lists the outlines that must be seen against their ground: the frame of a field, and
// the ring around what has the focus.
func EdgePairs() []Pair {
	var pairs []Pair
	for _, ground := range []fyne.ThemeColorName{
		theme.ColorNameBackground, theme.ColorNameInputBackground, theme.ColorNameOverlayBackground, ColorPanel,
	} {
		for _, edge := range []fyne.ThemeColorName{theme.ColorNameInputBorder, theme.ColorNamePrimary, ColorFocus} {
			pairs = append(pairs, Pair{Text: edge, Ground: ground})
		}
	}
	return append(pairs,
		Pair{Text: ColorFocus, Ground: ColorChosen},
		Pair{Text: ColorInk, Ground: ColorBand},
		Pair{Text: ColorBar, Ground: theme.ColorNameBackground},
		Pair{Text: ColorBar, Ground: ColorPanel},
		Pair{Text: ColorPaperMissingEdge, Ground: ColorPaper})
}
