package kit

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// typesetter sets passages one under another.
type typesetter struct {
	*setting
}

var (
	proseTitle   = lettering{size: theme.SizeNameHeadingText, color: ColorPaperInk, style: bold}
	proseHeading = lettering{size: theme.SizeNameSubHeadingText, color: ColorPaperInk, style: bold}
)

// readable is the longest line, in figures, that the eye follows with ease.
const readable = 84

// edge is where the text ends at the right.
func (t *typesetter) edge() float32 {
	return min(t.right(), t.margin()+readable*t.measure("0", paperPlain).Width)
}

func (t *typesetter) setAll(all []Passage) {
	t.y = t.margin()
	for i, p := range all {
		if i > 0 {
			t.y += t.before(p, all[i-1])
		}
		t.setOne(p)
	}
}

// before is the ground over a passage.
func (t *typesetter) before(p, last Passage) float32 {
	line := t.lineHeight(paperPlain)
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

func (t *typesetter) setOne(p Passage) {
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
		t.flow(p.Spans, paperPlain, t.margin(), t.edge())
	}
}

func (t *typesetter) point(p Passage) {
	mark := p.Mark
	if mark == "" {
		mark = "•"
	}
	indent := t.measure("00", paperPlain).Width + t.inner()
	t.add(t.writeEnding(mark, paperPlain, t.margin()+indent-t.inner(), t.y))
	t.flow(p.Spans, paperPlain, t.margin()+indent, t.edge())
}

// caution lays a tint under the text, with a bar and an icon at the left.
func (t *typesetter) caution(p Passage) {
	side := t.lineHeight(paperPlain)
	top, left := t.y, t.margin()+side+2*t.inner()
	inside := &typesetter{setting: &setting{pen: t.pen, width: t.width, y: top + t.inner()}}
	inside.flow(p.Spans, paperPlain, left, t.edge()-t.inner())
	size := fyne.NewSize(t.edge()-t.margin(), inside.y+t.inner()-top)
	t.add(t.block(ColorPaperMissing, fyne.NewPos(t.margin(), top), size),
		t.block(ColorPaperMissingEdge, fyne.NewPos(t.margin(), top), fyne.NewSize(t.size(SizeMark), size.Height)),
		t.icon(theme.NewColoredResource(iconWarn, ColorPaperMissingEdge), fyne.NewPos(t.margin()+t.inner()+t.pad(), top+t.inner()), side))
	t.add(inside.objects...)
	t.y = top + size.Height
}

// sum sets lines of figures: what stands before two blanks at the left, the
// rest in a column of its own.
func (t *typesetter) sum(lines []string) {
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
			column = max(column, t.measure(name, paperPlain).Width+2*t.inner())
		}
	}
	left := t.margin() + 2*t.inner()
	top := t.y
	for i := range lines {
		if names[i] != "" {
			t.add(t.write(names[i], paperPlain, fyne.NewPos(left, t.y)))
		}
		for _, text := range t.wrap(sums[i], paperPlain, t.edge()-left-column) {
			t.add(t.write(text, paperPlain, fyne.NewPos(left+column, t.y)))
			t.y += t.lineHeight(paperPlain)
		}
	}
	t.add(t.block(ColorPaperRule, fyne.NewPos(t.margin(), top), fyne.NewSize(t.size(SizeMark)-1, t.y-top)))
}

// word is one word in its letters; tied words have no blank before them.
type word struct {
	text    string
	letters lettering
	tied    bool
}

// wordsIn parts spans into words.
func wordsIn(spans []Span, l lettering) []word {
	var out []word
	open := false // the last span ended without a blank
	for _, s := range spans {
		letters := l
		letters.style.Bold = l.style.Bold || s.Bold
		tied := open && !strings.HasPrefix(s.Text, " ")
		for _, text := range breakable(s.Text) {
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
func (t *typesetter) flow(spans []Span, l lettering, left, right float32) {
	height := t.lineHeight(l)
	blank := t.measure(" ", l).Width
	x := left
	line := &stretch{set: t}
	all := wordsIn(spans, l)
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
			x += t.measure(all[i].text, all[i].letters).Width
		}
	}
	line.end()
	t.y += height
}

// stretch gathers the words of a line that are in the same letters.
type stretch struct {
	set     *typesetter
	text    string
	letters lettering
	x       float32
}

func (r *stretch) put(w word, x float32) {
	switch {
	case r.text == "" || r.letters != w.letters:
		r.end()
		r.text, r.letters, r.x = w.text, w.letters, x
	case w.tied:
		r.text += w.text
	default:
		r.text += " " + w.text
	}
}

func (r *stretch) end() {
	if r.text != "" {
		r.set.add(r.set.write(r.text, r.letters, fyne.NewPos(r.x, r.set.y)))
	}
	r.text = ""
}

// tiedFrom is where the words end that stand together from a word on, and how
// wide they are.
func (t *typesetter) tiedFrom(all []word, from int) (end int, width float32) {
	for end = from; end < len(all) && (end == from || all[end].tied); end++ {
		width += t.measure(all[end].text, all[end].letters).Width
	}
	return end, width
}
