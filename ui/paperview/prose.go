package paperview

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgets"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// PassageKind says how a passage of running text is set.
type PassageKind int

// The kinds of passage.
const (
	PassageTitle   PassageKind = iota
	PassageHeading             // of a section
	PassageText                // running text
	PassagePoint               // one of a list, after its mark
	PassageTable               // rows of cells under headings
	PassageSum                 // lines of figures, what at the left and the sum beside it
	PassageCaution             // to be read before anything is done
)

// Passage is one piece of running text, ready to read.
type Passage struct {
	Kind  PassageKind
	Mark  string     // before a point: "1."; empty takes a dot
	Spans []Span     // the words
	Rows  [][]string // of a table, the first of them the headings
	Lines []string   // of a sum; two blanks part what from how much
}

// Span is a stretch of words in one kind of letters.
type Span struct {
	Text string
	Bold bool
}

// Prose sets running text on a sheet of paper: a chapter of the handbook, the
// terms of an edition. Lines are broken to the width there is, and no wider
// than the eye likes to read. It is as high as its text needs.
type Prose struct {
	widget.BaseWidget
	passages []Passage
	width    float32
}

// NewProse makes an empty sheet.
func NewProse() *Prose {
	p := &Prose{}
	p.ExtendBaseWidget(p)
	return p
}

// SetPassages shows other text.
func (p *Prose) SetPassages(all []Passage) {
	p.passages = all
	p.Refresh()
}

// Passages returns the passages shown.
func (p *Prose) Passages() []Passage { return p.passages }

// CreateRenderer implements fyne.Widget.
func (p *Prose) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(p) }

// Resize notes the width: lines wrap to it, and the height follows.
func (p *Prose) Resize(size fyne.Size) {
	changed := p.width != size.Width
	p.width = size.Width
	p.BaseWidget.Resize(size)
	if changed {
		canvas.Refresh(p)
	}
}

// Layout lays the text out at a width.
func (p *Prose) Layout(width float32) *proseLayout {
	s := &cardLayout{Painter: paint.PainterFor(p), width: width}
	return &proseLayout{cardLayout: s}
}

func (p *Prose) LeastSize() fyne.Size {
	t := p.Layout(max(p.width, 1))
	t.setAll(p.passages)
	return fyne.NewSize(t.leastWidth(), t.y+t.margin())
}

func (p *Prose) Paint(size fyne.Size) []fyne.CanvasObject {
	t := p.Layout(size.Width)
	sheet := t.Block(apptheme.ColorPaper, fyne.NewPos(0, 0), size)
	sheet.StrokeColor, sheet.StrokeWidth = t.Color(apptheme.ColorPaperRule), 1
	t.add(sheet)
	t.setAll(p.passages)
	return t.objects
}

// Top returns the top of a passage.
func (p *Prose) Top(passage int) float32 {
	t := p.Layout(max(p.width, 1))
	t.setAll(p.passages[:min(passage, len(p.passages))])
	return t.y
}

// ProseView is running text to be read with the keyboard.
type ProseView struct {
	widgets.Reader
	Prose *Prose
}

// NewProseView makes an empty view.
func NewProseView() *ProseView {
	v := &ProseView{Prose: NewProse()}
	v.Scroll = container.NewVScroll(v.Prose)
	v.ExtendBaseWidget(v)
	return v
}

// Open shows other text from a passage on; zero is the beginning.
func (v *ProseView) Open(all []Passage, from int) {
	v.Prose.SetPassages(all)
	v.Scroll.Refresh()
	y := float32(0)
	if from > 0 {
		y = max(0, v.Prose.Top(from)-paint.PainterFor(v).Pad())
	}
	v.Scroll.ScrollToOffset(fyne.NewPos(0, y))
}

// Passages returns the passages shown.
func (v *ProseView) Passages() []Passage { return v.Prose.passages }

// CreateRenderer implements fyne.Widget.
func (v *ProseView) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(v) }
