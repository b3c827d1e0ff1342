package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Paper shows the lines of a slip as a sheet of paper. Figures end at the
// right edge; digits are equally wide, so they stand under each other. Lines
// still missing are marked where they will print. It is as high as its lines
// need at the width it has.
type Paper struct {
	widget.BaseWidget
	lines []PaperLine
	width float32 // the width last given, for saying how high it needs to be
}

// NewPaper makes an empty sheet.
func NewPaper() *Paper {
	p := &Paper{}
	p.ExtendBaseWidget(p)
	return p
}

// SetLines shows other lines.
func (p *Paper) SetLines(lines []PaperLine) {
	p.lines = lines
	p.Refresh()
}

// Lines gives what stands on the paper.
func (p *Paper) Lines() []PaperLine { return p.lines }

// CreateRenderer is Fyne's way to draw the sheet.
func (p *Paper) CreateRenderer() fyne.WidgetRenderer { return newDrawing(p) }

// Resize notes the width: lines wrap to it, and the height follows.
func (p *Paper) Resize(size fyne.Size) {
	changed := p.width != size.Width
	p.width = size.Width
	p.BaseWidget.Resize(size)
	if changed {
		canvas.Refresh(p)
	}
}

func (p *Paper) least() fyne.Size {
	s := &setting{pen: penFor(p), width: p.width}
	s.width = max(s.width, s.leastWidth())
	s.setAll(p.lines)
	return fyne.NewSize(s.leastWidth(), s.y+s.margin())
}

func (p *Paper) draw(size fyne.Size) []fyne.CanvasObject {
	s := &setting{pen: penFor(p), width: size.Width}
	sheet := s.block(ColorPaper, fyne.NewPos(0, 0), size)
	sheet.StrokeColor, sheet.StrokeWidth = s.color(ColorPaperRule), 1
	s.objects = append(s.objects, sheet)
	s.setAll(p.lines)
	return s.objects
}

// SlipView is the paper at the right of the form. It scrolls, by mouse or
// keyboard, only when the slip is longer than the window is high.
type SlipView struct {
	Reader
	paper *Paper
}

// NewSlipView makes a slip view with an empty sheet.
func NewSlipView() *SlipView {
	v := &SlipView{paper: NewPaper()}
	v.scroll = container.NewVScroll(v.paper)
	v.ExtendBaseWidget(v)
	return v
}

// SetLines shows other lines, and keeps the place one had scrolled to.
func (v *SlipView) SetLines(lines []PaperLine) {
	v.paper.SetLines(lines)
	v.scroll.Refresh()
}

// Lines gives what stands on the paper.
func (v *SlipView) Lines() []PaperLine { return v.paper.lines }

// Paper is the sheet itself, to show without scrolling.
func (v *SlipView) Paper() *Paper { return v.paper }

// CreateRenderer is Fyne's way to draw the view.
func (v *SlipView) CreateRenderer() fyne.WidgetRenderer { return newDrawing(v) }
