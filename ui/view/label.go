package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"tenthpoint/ui/kit"
)

// label is a piece of text in the theme's letters, cut short with three dots
// where it has no room.
type label struct {
	widget.BaseWidget
	letters
	text string
}

// letters is how a label is written.
type letters struct {
	size  fyne.ThemeSizeName
	color fyne.ThemeColorName
	bold  bool
	align fyne.TextAlign
}

var (
	ordinary = letters{size: theme.SizeNameText, color: kit.ColorInk}
	strong   = letters{size: theme.SizeNameText, color: kit.ColorInk, bold: true}
	unitSize = letters{size: theme.SizeNameText, color: kit.ColorQuiet}
	quiet    = letters{size: kit.SizeNote, color: kit.ColorQuiet}
	small    = letters{size: kit.SizeNote, color: kit.ColorInk, bold: true}
	atRight  = letters{size: kit.SizeNote, color: kit.ColorQuiet, align: fyne.TextAlignTrailing}
	large    = letters{size: theme.SizeNameSubHeadingText, color: kit.ColorInk, bold: true}
	heading  = letters{size: theme.SizeNameHeadingText, color: kit.ColorInk, bold: true}
)

func newLabel(text string, l letters) *label {
	out := &label{text: text, letters: l}
	out.ExtendBaseWidget(out)
	return out
}

// say shows another text.
func (l *label) say(text string) {
	if l.text != text {
		l.text = text
		l.Refresh()
	}
}

// CreateRenderer is Fyne's way to draw the label.
func (l *label) CreateRenderer() fyne.WidgetRenderer {
	r := &labelRenderer{label: l, text: canvas.NewText("", nil)}
	r.Refresh()
	return r
}

type labelRenderer struct {
	label *label
	text  *canvas.Text
	width float32
}

func (r *labelRenderer) Layout(size fyne.Size) {
	r.width = size.Width
	r.fit()
	height := r.text.MinSize().Height
	r.text.Resize(fyne.NewSize(size.Width, height))
	r.text.Move(fyne.NewPos(0, (size.Height-height)/2))
}

// fit cuts the text to the width there is.
func (r *labelRenderer) fit() {
	r.text.Text = r.label.text
	letters := []rune(r.label.text)
	for r.width > 0 && r.text.MinSize().Width > r.width && len(letters) > 0 {
		letters = letters[:len(letters)-1]
		r.text.Text = string(letters) + "…"
	}
}

// MinSize is one line, as wide as the whole text.
func (r *labelRenderer) MinSize() fyne.Size {
	return fyne.MeasureText(r.label.text, r.text.TextSize, r.text.TextStyle)
}

func (r *labelRenderer) Refresh() {
	th := theme.CurrentForWidget(r.label)
	variant := fyne.CurrentApp().Settings().ThemeVariant()
	r.text.TextSize = th.Size(r.label.size)
	r.text.TextStyle = fyne.TextStyle{Bold: r.label.bold}
	r.text.Color = th.Color(r.label.color, variant)
	r.text.Alignment = r.label.align
	r.fit()
	r.text.Refresh()
}

func (r *labelRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.text} }
func (r *labelRenderer) Destroy()                     {}
