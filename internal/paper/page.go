package paper

import (
	"slices"
	"time"
)

// Layout is a paper, set: its pages in their order, ready to be drawn.
type Layout struct {
	Title         string
	Made          time.Time // the date of the paper, from its facts and never the clock
	Width, Height Length    // of every page
	Pages         []Marks
}

// Equal reports whether two papers look the same.
func (l Layout) Equal(other Layout) bool {
	return l.Title == other.Title && l.Made.Equal(other.Made) && l.Width == other.Width && l.Height == other.Height &&
		slices.EqualFunc(l.Pages, other.Pages, Marks.equal)
}

func (m Marks) equal(other Marks) bool {
	sameStamp := m.Stamp == other.Stamp || m.Stamp != nil && other.Stamp != nil && *m.Stamp == *other.Stamp
	return sameStamp && slices.Equal(m.Boxes, other.Boxes) && slices.Equal(m.Rules, other.Rules) && slices.Equal(m.Runs, other.Runs) &&
		slices.Equal(m.Areas, other.Areas) && slices.EqualFunc(m.Pictures, other.Pictures, func(a, b Picture) bool {
		return a.At == b.At && a.Width == b.Width && a.Height == b.Height && a.Code.Payload == b.Code.Payload
	})
}

// Place is a place on a page, from its top left corner.
type Place struct{ X, Y Length }

// Marks are the drawing marks of a page, or of a piece of one, in drawing order: the stamp first,
// words last.
type Marks struct {
	Stamp    *Stamp
	Boxes    []Box
	Rules    []Rule
	Pictures []Picture
	Runs     []Run
	Areas    []Area
}

// Run is one line of letters in one style.
type Run struct {
	At    Place // its left end, on the baseline
	Text  string
	Style Style
}

// Rule is a straight line.
type Rule struct {
	From, To Place
	Thick    Length
	Ink      Ink
}

// Box is a rectangle, filled, edged, or both.
type Box struct {
	At            Place
	Width, Height Length
	Fill, Edge    Ink
}

// EdgeThick is the line width of a box.
const EdgeThick Length = 0.7 * Point

// Picture is a code of dark and light modules.
type Picture struct {
	At            Place
	Width, Height Length
	Code          *Code
}

// Stamp is a word set slantwise over the middle of a page.
type Stamp struct {
	Text  string
	Style Style
}

// A stamp is turned by 52 degrees: these are the sine and cosine in millionths. StampMiddle is the
// position of its middle, in thousandths of the page height.
const (
	StampSine   = 788011
	StampCosine = 615661
	StampMiddle = 560
)

// StampRoom returns the greatest length of a stamp that keeps off the page edges.
func StampRoom(width, height Length) Length {
	// The length of the slanted line through the page, from its projections.
	return (width*StampCosine + height*StampSine) / 1_000_000 * 78 / 100
}

// Area is the place of a fact on a page, so that it can be found.
type Area struct {
	Field       string
	Top, Bottom Length
	// Sum marks the most important fact of a paper.
	Sum bool
}

// Find returns the place of a fact in the marks: the last of the areas that name it, since the
// first is only a summary.
func (m *Marks) Find(field string) (Area, bool) {
	for i := len(m.Areas) - 1; i >= 0 && field != ""; i-- {
		if m.Areas[i].Field == field {
			return m.Areas[i], true
		}
	}
	return Area{}, false
}

// Sum is the stretch that a paper is looked at for, from the first of its figures to
// the last of its totals; of no height where there are none.
func (m *Marks) Sum() (sum Area) {
	for _, a := range m.Areas {
		switch {
		case !a.Sum:
		case !sum.Sum:
			sum = a
		default:
			sum.Bottom = max(sum.Bottom, a.Bottom)
		}
	}
	return sum
}

// Bottom returns the position of the lowest mark.
func (m *Marks) Bottom() (low Length) {
	for _, b := range m.Boxes {
		low = max(low, b.At.Y+b.Height)
	}
	for _, r := range m.Rules {
		low = max(low, r.From.Y, r.To.Y)
	}
	for _, p := range m.Pictures {
		low = max(low, p.At.Y+p.Height)
	}
	for _, r := range m.Runs {
		low = max(low, r.At.Y+r.Style.Leading()-r.Style.Baseline())
	}
	return low
}

// Text writes a line from x on; baseline is the foot of its letters.
func (m *Marks) Text(x, baseline Length, line string, s Style) {
	if line != "" {
		m.Runs = append(m.Runs, Run{Place{x, baseline}, line, s})
	}
}

// TextEnding writes a line that ends at x.
func (m *Marks) TextEnding(x, baseline Length, line string, s Style) {
	m.Text(x-s.Width(line), baseline, line, s)
}

// TextMiddle writes a line with its middle at x.
func (m *Marks) TextMiddle(x, baseline Length, line string, s Style) {
	m.Text(x-s.Width(line)/2, baseline, line, s)
}

// Paragraph writes lines one under the other, the top of the first at y, and returns their height.
func (m *Marks) Paragraph(x, y Length, lines []string, s Style) Length {
	for i, line := range lines {
		m.Text(x, y+Length(i)*s.Leading()+s.Baseline(), line, s)
	}
	return Length(len(lines)) * s.Leading()
}

// Line draws a straight line.
func (m *Marks) Line(x1, y1, x2, y2, thick Length, k Ink) {
	m.Rules = append(m.Rules, Rule{Place{x1, y1}, Place{x2, y2}, thick, k})
}

// Box draws a rectangle.
func (m *Marks) Box(x, y, width, height Length, fill, edge Ink) {
	m.Boxes = append(m.Boxes, Box{Place{x, y}, width, height, fill, edge})
}

// Picture draws a code.
func (m *Marks) Picture(x, y, width, height Length, code *Code) {
	m.Pictures = append(m.Pictures, Picture{Place{x, y}, width, height, code})
}

// Put draws other marks with their top left corner at a place.
func (m *Marks) Put(x, y Length, other Marks) {
	by := func(at Place) Place { return Place{at.X + x, at.Y + y} }
	for _, b := range other.Boxes {
		b.At = by(b.At)
		m.Boxes = append(m.Boxes, b)
	}
	for _, r := range other.Rules {
		r.From, r.To = by(r.From), by(r.To)
		m.Rules = append(m.Rules, r)
	}
	for _, p := range other.Pictures {
		p.At = by(p.At)
		m.Pictures = append(m.Pictures, p)
	}
	for _, r := range other.Runs {
		r.At = by(r.At)
		m.Runs = append(m.Runs, r)
	}
	for _, a := range other.Areas {
		a.Top, a.Bottom = a.Top+y, a.Bottom+y
		m.Areas = append(m.Areas, a)
	}
}

// Scale sets the marks larger or smaller, by thousandths. Rules keep their
// thickness.
func (m *Marks) Scale(permille Length) {
	by := func(l *Length) { *l = *l * permille / 1000 }
	at := func(p *Place) { by(&p.X); by(&p.Y) }
	if m.Stamp != nil {
		by(&m.Stamp.Style.Size)
	}
	for i := range m.Boxes {
		b := &m.Boxes[i]
		at(&b.At)
		by(&b.Width)
		by(&b.Height)
	}
	for i := range m.Rules {
		at(&m.Rules[i].From)
		at(&m.Rules[i].To)
	}
	for i := range m.Pictures {
		p := &m.Pictures[i]
		at(&p.At)
		by(&p.Width)
		by(&p.Height)
	}
	for i := range m.Runs {
		at(&m.Runs[i].At)
		by(&m.Runs[i].Style.Size)
	}
	for i := range m.Areas {
		by(&m.Areas[i].Top)
		by(&m.Areas[i].Bottom)
	}
}
