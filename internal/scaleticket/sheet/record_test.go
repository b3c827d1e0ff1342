package sheet

import (
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/paper"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"

	"pgregory.net/rapid"
)

// record is a paper, with what lies outside of it or on something else.
type record struct {
	pages         int
	texts         []written
	width, height paper.Length
	stamps        []string
	outside       []string
}

// written is one line of text with the box its letters fill.
type written struct {
	page                     int
	text                     string
	left, top, right, bottom paper.Length
}

// recorded lists the marks with their places.
func recorded(l paper.Layout) *record {
	r := &record{width: l.Width, height: l.Height, pages: len(l.Pages)}
	for n, page := range l.Pages {
		r.page(n, page)
	}
	return r
}

func (r *record) page(n int, m paper.Marks) {
	if m.Stamp != nil {
		r.stamps = append(r.stamps, m.Stamp.Text)
	}
	for _, l := range m.Rules {
		r.inside("a rule", l.From.X, l.From.Y, l.To.X, l.To.Y)
	}
	for _, b := range m.Boxes {
		r.inside("a box", b.At.X, b.At.Y, b.At.X+b.Width, b.At.Y+b.Height)
	}
	for _, p := range m.Pictures {
		r.inside("a picture", p.At.X, p.At.Y, p.At.X+p.Width, p.At.Y+p.Height)
	}
	for _, t := range m.Runs {
		size := t.Style.Size
		w := written{n, t.Text, t.At.X, t.At.Y - size*73/100, t.At.X + t.Style.Width(t.Text), t.At.Y + size*19/100}
		r.inside(t.Text, w.left, w.top, w.right, w.bottom)
		r.texts = append(r.texts, w)
	}
}

// inside notes what a printer could not print: nothing may come nearer to the
// edge of the paper than a tenth of an inch.
func (r *record) inside(what string, left, top, right, bottom paper.Length) {
	const edge = 7.2 * paper.Point
	if left < edge || top < edge || right > r.width-edge || bottom > r.height-edge {
		r.outside = append(r.outside, fmt.Sprintf("%q at %d,%d to %d,%d", what, left, top, right, bottom))
	}
}

// overlaps lists pairs of texts that lie on each other.
func (r *record) overlaps() []string {
	var out []string
	const slack = 0.3 * paper.Point // letters seldom fill their box
	for i, a := range r.texts {
		for _, b := range r.texts[:i] {
			if a.page == b.page && a.left < b.right-slack && b.left < a.right-slack && a.top < b.bottom-slack && b.top < a.bottom-slack {
				out = append(out, fmt.Sprintf("%q and %q on page %d", b.text, a.text, a.page))
			}
		}
	}
	return out
}

// words is everything written, in order, blanks as single ones.
func (r *record) words() string {
	var b strings.Builder
	for _, w := range r.texts {
		b.WriteString(w.text + " ")
	}
	return squashed(b.String())
}

// squashed drops blanks and the difference of capitals: a title is set in
// capitals, and a line may break anywhere.
func squashed(text string) string {
	return strings.ToLower(strings.Join(strings.Fields(text), ""))
}

func drawn(t rapid.TB, d scaleticket.Document, size Size, o Options) *record {
	t.Helper()
	return recorded(Layout(d, size, o))
}

// check compares a drawn slip with its document: everything on the paper, nothing on anything else,
// nothing left out.
func (r *record) check(t rapid.TB, name string, d scaleticket.Document) {
	t.Helper()
	for _, what := range r.outside {
		t.Errorf("%s: outside the paper: %s", name, what)
	}
	for _, what := range r.overlaps() {
		t.Errorf("%s: on each other: %s", name, what)
	}
	words := r.words()
	for _, text := range printedTexts(d) {
		if !strings.Contains(words, squashed(text)) {
			t.Errorf("%s: not printed: %q", name, text)
		}
	}
}

// printedTexts is every text of a document that the paper has to show.
func printedTexts(d scaleticket.Document) []string {
	var out []string
	for _, s := range d.Sections {
		if s.Title != "" {
			out = append(out, s.Title)
		}
		for i, l := range s.Lines {
			out = append(out, l.Value, l.Mark)
			out = append(out, l.Notes...)
			// The corner with the number has no room for "Ticket", "Status", "Copy".
			if s.Form != scaleticket.Numbering || i >= statusLines {
				out = append(out, l.Label)
			}
		}
	}
	out = append(out, d.Marks...)
	out = append(out, d.Footer...)
	return append(out, d.CodeLine)
}

func TestEveryWordIsOnThePaper(t *testing.T) {
	for _, c := range tickettest.Table {
		d := scaleticket.Compose(c.Make(t))
		for name, size := range map[string]Size{"half letter": HalfLetter, "A5": A5} {
			r := drawn(t, d, size, Options{})
			r.check(t, c.Name+" on "+name, d)
			if (d.Stamp != "") != (len(r.stamps) == r.pages) {
				t.Errorf("%s: stamp %q on %d of %d pages", c.Name, d.Stamp, len(r.stamps), r.pages)
			}
			if n := r.pages; n > 1 && !strings.Contains(r.words(), squashed(fmt.Sprintf(d.PageOf, n, n))) {
				t.Errorf("%s: %d pages, the last is not numbered", c.Name, n)
			}
		}
	}
}

// TestSignatureOnTheFirstPage: the settled tickets people sign every day are
// whole on their first page, however the working runs on.
func TestSignatureOnTheFirstPage(t *testing.T) {
	for _, name := range []string{"corn", "shares", "landlord", "void", "corrected", "correcting", "preview", "empty", "tonnes", "outbound", "weight-deductions", "refused"} {
		d := scaleticket.Compose(tickettest.Named(t, name))
		for _, size := range []Size{HalfLetter, A5} {
			if r := drawn(t, d, size, Options{NoWorking: true}); r.pages != 1 {
				t.Errorf("%s: %d pages without the working", name, r.pages)
			}
		}
	}
}

func TestNoWorkingLeavesItOut(t *testing.T) {
	d := scaleticket.Compose(tickettest.Corn(t))
	if words := drawn(t, d, HalfLetter, Options{NoWorking: true}).words(); strings.Contains(words, "half-up") || !strings.Contains(words, squashed("$3,375.53")) {
		t.Errorf("without the working: %s", words)
	}
}

// TestOverlapIsFound proves that the check can fail.
func TestOverlapIsFound(t *testing.T) {
	var m paper.Marks
	m.Text(10*paper.Point, 20*paper.Point, "one", plainStyle)
	m.Text(12*paper.Point, 23*paper.Point, "two", plainStyle)
	m.Text(10*paper.Point, 60*paper.Point, "three", plainStyle)
	m.Text(95*paper.Point, 60*paper.Point, "four", plainStyle)
	r := recorded(paper.Layout{Width: 100 * paper.Point, Height: 100 * paper.Point, Pages: []paper.Marks{m}})
	if got := r.overlaps(); len(got) != 1 || len(r.outside) != 1 {
		t.Errorf("overlaps %v, outside %v", got, r.outside)
	}
}

// TestAnyTicketFits draws tickets nobody thought of: nothing overlaps, nothing
// is left out.
func TestAnyTicketFits(t *testing.T) {
	editions := tickettest.Editions(t)
	seen := map[string]int{}
	rapid.Check(t, func(rt *rapid.T) {
		ticket := tickettest.AnyTicket(rt, t, editions)
		d := scaleticket.Compose(ticket)
		size := rapid.SampledFrom([]Size{HalfLetter, A5}).Draw(rt, "size")
		drawn(rt, d, size, Options{}).check(rt, "random ticket", d)
		if ticket.Settlement == nil {
			seen["not settled"]++
			return
		}
		seen["settled"]++
	})
	if seen["settled"] == 0 || seen["not settled"] == 0 {
		t.Errorf("the random tickets were %v", seen)
	}
}
