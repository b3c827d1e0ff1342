package paperview

import (
	"strings"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// proseLayout sets passages one under another.
type proseLayout struct {
	*cardLayout
}

var (
	proseTitle   = paint.TextStyle{Size: theme.SizeNameHeadingText, Color: apptheme.ColorPaperInk, Style: paint.Bold}
	proseHeading = paint.TextStyle{Size: theme.SizeNameSubHeadingText, Color: apptheme.ColorPaperInk, Style: paint.Bold}
)

// readable is the longest line, in figures, that the eye follows with ease.
const readable = 84

// edge is the right edge of the text.
func (t *proseLayout) edge() float32 {
	return min(t.right(), t.margin()+readable*t.Measure("0", PaperPlain).Width)
}

func (t *proseLayout) setAll(all []Passage) {
	t.y = t.margin()
	for i, p := range all {
		if i > 0 {
			t.y += t.before(p, all[i-1])
		}
		t.setOne(p)
	}
}

// before is the ground over a passage.
func (t *proseLayout) before(p, last Passage) float32 {
	line := t.LineHeight(PaperPlain)
	switch {
	case p.Kind == PassageHeading:
		return line
	case last.Kind == PassageHeading:
		return line / 4
	case p.Kind == PassagePoint && last.Kind == PassagePoint:
		return line / 6
	}
	return line / 2
}

func (t *proseLayout) setOne(p Passage) {
	switch p.Kind {
	case PassageTitle:
		t.flow(p.Spans, proseTitle, t.margin(), t.edge())
		t.rule()
	case PassageHeading:
		t.flow(p.Spans, proseHeading, t.margin(), t.edge())
	case PassagePoint:
		t.point(p)
	case PassageTable:
		t.table(p.Rows)
	case PassageSum:
		t.sum(p.Lines)
	case PassageCaution:
		t.caution(p)
	default:
		t.flow(p.Spans, PaperPlain, t.margin(), t.edge())
	}
}

func (t *proseLayout) point(p Passage) {
	mark := p.Mark
	if mark == "" {
		mark = "•"
	}
	indent := t.Measure("00", PaperPlain).Width + t.Inner()
	t.add(t.WriteEnding(mark, PaperPlain, t.margin()+indent-t.Inner(), t.y))
	t.flow(p.Spans, PaperPlain, t.margin()+indent, t.edge())
}

// caution lays a tint under the text, with a bar and an icon at the left.
func (t *proseLayout) caution(p Passage) {
	side := t.LineHeight(PaperPlain)
	top, left := t.y, t.margin()+side+2*t.Inner()
	inside := &proseLayout{cardLayout: &cardLayout{Painter: t.Painter, width: t.width, y: top + t.Inner()}}
	inside.flow(p.Spans, PaperPlain, left, t.edge()-t.Inner())
	size := fyne.NewSize(t.edge()-t.margin(), inside.y+t.Inner()-top)
	t.add(t.Block(apptheme.ColorPaperMissing, fyne.NewPos(t.margin(), top), size),
		t.Block(apptheme.ColorPaperMissingEdge, fyne.NewPos(t.margin(), top), fyne.NewSize(t.Size(apptheme.SizeMark), size.Height)),
		t.Icon(theme.NewColoredResource(apptheme.IconWarn, apptheme.ColorPaperMissingEdge), fyne.NewPos(t.margin()+t.Inner()+t.Pad(), top+t.Inner()), side))
	t.add(inside.objects...)
	t.y = top + size.Height
}

// sum sets lines of figures in two columns, split at two blanks.
func (t *proseLayout) sum(lines []string) {
	names := make([]string, len(lines))
	sums := make([]string, len(lines))
	column := float32(0)
	for i, line := range lines {
		name, rest, parted := strings.Cut(strings.TrimSpace(line), "  ")
		if !parted {
			name, rest = "", name
		}
		names[i], sums[i] = name, strings.TrimSpace(rest)
		if name != "" {
			column = max(column, t.Measure(name, PaperPlain).Width+2*t.Inner())
		}
	}
	left := t.margin() + 2*t.Inner()
	top := t.y
	for i := range lines {
		if names[i] != "" {
			t.add(t.Write(names[i], PaperPlain, fyne.NewPos(left, t.y)))
		}
		for _, text := range t.Wrap(sums[i], PaperPlain, t.edge()-left-column) {
			t.add(t.Write(text, PaperPlain, fyne.NewPos(left+column, t.y)))
			t.y += t.LineHeight(PaperPlain)
		}
	}
	t.add(t.Block(apptheme.ColorPaperRule, fyne.NewPos(t.margin(), top), fyne.NewSize(t.Size(apptheme.SizeMark)-1, t.y-top)))
}

// word is one word in its letters; tied words have no blank before them.
type word struct {
	text    string
	letters paint.TextStyle
	Tied    bool
}

// WordsIn parts spans into words.
func WordsIn(spans []Span, l paint.TextStyle) []word {
	var out []word
	open := false // the last span ended without a blank
	for _, s := range spans {
		letters := l
		letters.Style.Bold = l.Style.Bold || s.Bold
		tied := open && !strings.HasPrefix(s.Text, " ")
		for _, text := range paint.Breakable(s.Text) {
			out = append(out, word{text, letters, tied})
			tied = false
		}
		if s.Text != "" {
			open = !strings.HasSuffix(s.Text, " ")
		}
	}
	return out
}

// flow sets words from left to right between two edges, line under line. Words
// in the same letters are drawn together.
func (t *proseLayout) flow(spans []Span, l paint.TextStyle, left, right float32) {
	height := t.LineHeight(l)
	blank := t.Measure(" ", l).Width
	x := left
	line := &stretch{set: t}
	all := WordsIn(spans, l)
	for i := 0; i < len(all); {
		end, width := t.tiedFrom(all, i)
		gap := blank
		if x == left {
			gap = 0
		}
		if x > left && x+gap+width > right {
			line.end()
			x, gap = left, 0
			t.y += height
		}
		x += gap
		for ; i < end; i++ {
			line.put(all[i], x)
			x += t.Measure(all[i].text, all[i].letters).Width
		}
	}
	line.end()
	t.y += height
}

// stretch gathers the words of a line that are in the same letters.
type stretch struct {
	set     *proseLayout
	text    string
	letters paint.TextStyle
	x       float32
}

func (r *stretch) put(w word, x float32) {
	switch {
	case r.text == "" || r.letters != w.letters:
		r.end()
		r.text, r.letters, r.x = w.text, w.letters, x
	case w.Tied:
		r.text += w.text
	default:
		r.text += " " + w.text
	}
}

func (r *stretch) end() {
	if r.text != "" {
		r.set.add(r.set.Write(r.text, r.letters, fyne.NewPos(r.x, r.set.y)))
	}
	r.text = ""
}

// tiedFrom returns the end of the words tied together from a word on, and their width.
func (t *proseLayout) tiedFrom(all []word, from int) (end int, width float32) {
	for end = from; end < len(all) && (end == from || all[end].Tied); end++ {
		width += t.Measure(all[end].text, all[end].letters).Width
	}
	return end, width
}
