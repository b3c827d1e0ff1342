package typeset

import (
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"

	"pgregory.net/rapid"
)

// record is a canvas that writes down what is drawn where.
type record struct {
	pages         []int // index of the first text of each page
	texts         []written
	width, height float64
	stamps        []string
	outside       []string
}

// written is one line of text with the box its letters fill.
type written struct {
	page                     int
	text                     string
	left, top, right, bottom float64
}

func (r *record) page() { r.pages = append(r.pages, len(r.texts)) }

func (r *record) text(x, baseline float64, line string, s style) {
	if line == "" {
		return
	}
	w := written{len(r.pages), line, x, baseline - 0.73*s.size, x + s.width(line), baseline + 0.19*s.size}
	r.inside(line, w.left, w.top, w.right, w.bottom)
	r.texts = append(r.texts, w)
}

func (r *record) line(x1, y1, x2, y2, _ float64, _ ink) { r.inside("a rule", x1, y1, x2, y2) }

func (r *record) box(x, y, w, h float64, _, _ ink) { r.inside("a box", x, y, x+w, y+h) }

func (r *record) across(word string, _ style, _, _ float64) { r.stamps = append(r.stamps, word) }

// inside notes what a printer could not print: nothing may come nearer to the
// edge of the paper than a tenth of an inch.
func (r *record) inside(what string, left, top, right, bottom float64) {
	const edge = 7.2
	if left < edge || top < edge || right > r.width-edge || bottom > r.height-edge {
		r.outside = append(r.outside, fmt.Sprintf("%q at %.1f,%.1f to %.1f,%.1f", what, left, top, right, bottom))
	}
}

// overlaps lists pairs of texts that lie on each other.
func (r *record) overlaps() []string {
	var out []string
	const slack = 0.3 // points; letters seldom fill their box
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
	r := &record{width: size.width(), height: size.height()}
	drawSlip(r, d, size, o)
	return r
}

// check holds a drawn slip against its document: everything on the paper,
// nothing on anything else, nothing left out.
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
			if (d.Stamp != "") != (len(r.stamps) == len(r.pages)) {
				t.Errorf("%s: stamp %q on %d of %d pages", c.Name, d.Stamp, len(r.stamps), len(r.pages))
			}
			if n := len(r.pages); n > 1 && !strings.Contains(r.words(), squashed(fmt.Sprintf(d.PageOf, n, n))) {
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
			if r := drawn(t, d, size, Options{NoWorking: true}); len(r.pages) != 1 {
				t.Errorf("%s: %d pages without the working", name, len(r.pages))
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
	r := &record{width: 100, height: 100}
	r.page()
	r.text(10, 20, "one", plainStyle)
	r.text(12, 23, "two", plainStyle)
	r.text(10, 60, "three", plainStyle)
	r.text(95, 60, "four", plainStyle)
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
