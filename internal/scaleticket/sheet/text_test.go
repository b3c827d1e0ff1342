package sheet

import (
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/paper/plain"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

// TestText compares the roll and the page of every ticket with the slips kept in testdata.
func TestText(t *testing.T) {
	for _, c := range tickettest.Table {
		d := scaleticket.Compose(c.Make(t))
		tickettest.Golden(t, c.Name+".roll.txt", Text(d, RollColumns))
		tickettest.Golden(t, c.Name+".page.txt", Text(d, PageColumns))
	}
}

// TestPages compares the marks on the pages of every ticket with testdata: page, place of the left
// end and the line, size, words.
func TestPages(t *testing.T) {
	for _, c := range tickettest.Table {
		var b strings.Builder
		for n, page := range Layout(scaleticket.Compose(c.Make(t)), HalfLetter, Options{}).Pages {
			for _, r := range page.Runs {
				weight := " "
				if r.Style.Bold {
					weight = "*"
				}
				fmt.Fprintf(&b, "%d %5d.%d %5d.%d %3d.%d%s %s\n", n+1, r.At.X/1000, r.At.X%1000/100, r.At.Y/1000, r.At.Y%1000/100, r.Style.Size/1000, r.Style.Size%1000/100, weight, r.Text)
			}
		}
		tickettest.Golden(t, c.Name+".places.txt", b.String())
	}
}

// TestRollFits: no line of any ticket is wider than its paper.
func TestRollFits(t *testing.T) {
	for _, c := range tickettest.Table {
		d := scaleticket.Compose(c.Make(t))
		for _, width := range []int{leastColumns, 32, RollColumns, 48, PageColumns, 132} {
			for _, l := range strings.Split(Text(d, width), "\n") {
				if plain.Letters(l) > width || strings.ContainsAny(l, "−×÷→…\t") {
					t.Errorf("%s in %d columns: %q", c.Name, width, l)
				}
			}
		}
	}
}

// TestSameWordsEverywhere: the text of the ticket is on the roll, in the same order.
func TestSameWordsEverywhere(t *testing.T) {
	for _, c := range tickettest.Table {
		d := scaleticket.Compose(c.Make(t))
		inOrder(t, c.Name+" on the roll", squashed(strings.NewReplacer("-----", "").Replace(Text(d, RollColumns))), d, simple)
	}
}

func inOrder(t *testing.T, name, words string, d scaleticket.Document, written func(string) string) {
	t.Helper()
	for _, s := range d.Sections {
		for _, l := range s.Lines {
			for _, text := range append([]string{l.Label, l.Value}, l.Notes...) {
				text = squashed(written(text))
				at := strings.Index(words, text)
				if at < 0 {
					t.Errorf("%s: %q of %s is missing or out of order", name, text, s.ID)
					continue
				}
				words = words[at+len(text):]
			}
		}
	}
}
