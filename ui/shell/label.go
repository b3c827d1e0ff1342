package shell

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"tenthpoint/ui/apptheme"
)

// Label is a text in a size of the theme, truncated with three dots where it has no room.
type Label struct {
	widget.BaseWidget
	letters
	Text string
}

// letters is the text style of a label.
type letters struct {
	size  fyne.ThemeSizeName
	color fyne.ThemeColorName
	bold  bool
	align fyne.TextAlign
}

var (
	Ordinary = letters{size: theme.SizeNameText, color: apptheme.ColorInk}
	strong   = letters{size: theme.SizeNameText, color: apptheme.ColorInk, bold: true}
	UnitSize = letters{size: theme.SizeNameText, color: apptheme.ColorQuiet}
	Quiet    = letters{size: apptheme.SizeNote, color: apptheme.ColorQuiet}
	small    = letters{size: apptheme.SizeNote, color: apptheme.ColorInk, bold: true}
	AtRight  = letters{size: apptheme.SizeNote, color: apptheme.ColorQuiet, align: fyne.TextAlignTrailing}
	// lateAtRight is a wait that is too long.
	lateAtRight = letters{size: apptheme.SizeNote, color: apptheme.ColorWarn, bold: true, align: fyne.TextAlignTrailing}

	large   = letters{size: theme.SizeNameSubHeadingText, color: apptheme.ColorInk, bold: true}
	Heading = letters{size: theme.SizeNameHeadingText, color: apptheme.ColorInk, bold: true}
)

func NewLabel(text string, l letters) *Label {
	out := &Label{Text: text, letters: l}
	out.ExtendBaseWidget(out)
	return out
}

// Say shows another text.
func (l *Label) Say(text string) {
	if l.Text != text {
		l.Text = text
		l.Refresh()
	}
}

// CreateRenderer draws the label.
func (l *Label) CreateRenderer() fyne.WidgetRenderer {
	r := &labelRenderer{label: l, text: canvas.NewText("", nil)}
	r.Refresh()
	return r
}

type labelRenderer struct {
	label *Label
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
	r.text.Text = r.label.Text
	letters := []rune(r.label.Text)
	for r.width > 0 && r.text.MinSize().Width > r.width && len(letters) > 0 {
		letters = letters[:len(letters)-1]
		r.text.Text = string(letters) + "…"
	}
}

// MinSize is one line, as wide as the whole text.
func (r *labelRenderer) MinSize() fyne.Size {
	return fyne.MeasureText(r.label.Text, r.text.TextSize, r.text.TextStyle)
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
