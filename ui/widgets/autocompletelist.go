package widgets

import (
	"fmt"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// The most and the fewest lines of a list that show at once.
const (
	pickMost   = 8
	pickFewest = 3
)

// suggestions is the list below an Autocomplete. It never has the focus: the field keeps it, so that
// more typing narrows the list.
type suggestions struct {
	widget.BaseWidget
	of    *Autocomplete
	top   int // first line that shows
	lines int // how many show
}

func newSuggestions(of *Autocomplete) *suggestions {
	l := &suggestions{of: of, lines: pickMost}
	l.ExtendBaseWidget(l)
	return l
}

// fit chooses how many lines show in a height, less the line at the foot.
func (l *suggestions) fit(room float32) {
	l.lines = max(pickFewest, min(pickMost, int(room/l.rowHeight(paint.PainterFor(l)))-1))
}

// follow scrolls so that the marked line shows.
func (l *suggestions) follow(marked int) {
	if marked < 0 {
		return
	}
	l.top = min(l.top, marked)
	l.top = max(l.top, marked-l.lines+1)
}

// rows returns the options that are shown.
func (l *suggestions) rows() []model.Option {
	fits := l.of.fits
	from := min(l.top, len(fits))
	return fits[from:min(from+l.lines, len(fits))]
}

// Tapped chooses the line under the pointer, as Enter would.
func (l *suggestions) Tapped(ev *fyne.PointEvent) {
	i := int((ev.Position.Y - 1) / l.rowHeight(paint.PainterFor(l)))
	if rows := l.rows(); i >= 0 && i < len(rows) {
		l.of.choose(rows[i])
		l.of.goOn()
	}
}

// A click on something that cannot have the focus takes the focus away, and closes the list, before
// the click arrives. So the list claims to be focusable, and passes on any focus.

// FocusGained does nothing.
func (l *suggestions) FocusGained() {}

// FocusLost does nothing.
func (l *suggestions) FocusLost() {}

// TypedRune is the field's.
func (l *suggestions) TypedRune(letter rune) { l.of.TypedRune(letter) }

// TypedKey is the field's.
func (l *suggestions) TypedKey(ev *fyne.KeyEvent) { l.of.TypedKey(ev) }

// CreateRenderer draws the list.
func (l *suggestions) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(l) }

func (l *suggestions) letters() (code, name, detail paint.TextStyle) {
	return paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorInk, Style: paint.Bold},
		paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorInk},
		paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorQuiet}
}

func (l *suggestions) rowHeight(p paint.Painter) float32 {
	code, _, _ := l.letters()
	return p.LineHeight(code) + p.Inner()
}

// columns returns the widths of code, name and detail over the rows that show.
func (l *suggestions) columns(p paint.Painter) (code, name, detail float32) {
	codeL, nameL, detailL := l.letters()
	for _, o := range l.rows() {
		first, second := o.Shown()
		code = max(code, p.Measure(first, codeL).Width)
		name = max(name, p.Measure(second, nameL).Width)
		detail = max(detail, p.Measure(o.Detail, detailL).Width)
	}
	return code, name, detail
}

// foot is the line under the rows: how many more there are, or that none fits.
func (l *suggestions) foot() string {
	if len(l.of.fits) == 0 {
		return l.of.words().NoMatch
	}
	if more := len(l.of.fits) - len(l.rows()); more > 0 {
		return fmt.Sprintf(l.of.words().More, more)
	}
	return ""
}

func (l *suggestions) LeastSize() fyne.Size {
	p := paint.PainterFor(l)
	code, name, detail := l.columns(p)
	_, _, small := l.letters()
	lines := float32(len(l.rows()))
	height := lines*l.rowHeight(p) + 2
	if l.foot() != "" {
		height += p.LineHeight(small) + p.Inner()
	}
	width := max(code+name+detail+7*p.Inner(), p.Measure(l.foot(), small).Width+4*p.Inner())
	return fyne.NewSize(width, height)
}

func (l *suggestions) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(l)
	codeL, nameL, detailL := l.letters()
	code, name, _ := l.columns(p)
	ground := p.Block(theme.ColorNameMenuBackground, fyne.NewPos(0, 0), size)
	ground.StrokeColor, ground.StrokeWidth = p.Color(theme.ColorNameInputBorder), 1
	objects := []fyne.CanvasObject{p.Block(theme.ColorNameShadow, fyne.NewPos(3, 3), size), ground}
	height := l.rowHeight(p)
	y := float32(1)
	for i, o := range l.rows() {
		if l.top+i == l.of.marked {
			objects = append(objects,
				p.Block(apptheme.ColorChosen, fyne.NewPos(1, y), fyne.NewSize(size.Width-2, height)),
				p.Block(apptheme.ColorFocus, fyne.NewPos(1, y), fyne.NewSize(p.Size(apptheme.SizeMark)+1, height)))
		}
		x, top := 2*p.Inner(), y+p.Inner()/2
		low := top + p.LineHeight(nameL) - p.LineHeight(detailL) - 1
		first, second := o.Shown()
		objects = append(objects,
			p.Write(first, codeL, fyne.NewPos(x, top)),
			p.Write(second, nameL, fyne.NewPos(x+code+p.Inner(), top)),
			p.Write(o.Detail, detailL, fyne.NewPos(x+code+name+3*p.Inner(), low)))
		y += height
	}
	if foot := l.foot(); foot != "" {
		objects = append(objects, p.Write(foot, detailL, fyne.NewPos(2*p.Inner(), y+p.Inner()/2)))
	}
	return objects
}
