package sheet

import (
	"strings"
	"testing"

	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

// TestText holds the roll and the page of every ticket against the slips kept
// in testdata.
func TestText(t *testing.T) {
	for _, c := range tickettest.Table {
		d := scaleticket.Compose(c.Make(t))
		tickettest.Golden(t, c.Name+".roll.txt", Text(d, RollColumns))
		tickettest.Golden(t, c.Name+".page.txt", Text(d, PageColumns))
	}
}

// TestRollFits: no line of any ticket is wider than its paper.
func TestRollFits(t *testing.T) {
	for _, c := range tickettest.Table {
		d := scaleticket.Compose(c.Make(t))
		for _, width := range []int{leastColumns, 32, RollColumns, 48, PageColumns, 132} {
			for _, l := range strings.Split(Text(d, width), "\n") {
				if letters(l) > width || strings.ContainsAny(l, "−×÷→…\t") {
					t.Errorf("%s in %d columns: %q", c.Name, width, l)
				}
			}
		}
	}
}

// TestSameWordsEverywhere: what stands on the paper stands on the roll and on
// the screen, in one order.
func TestSameWordsEverywhere(t *testing.T) {
	for _, c := range tickettest.Table {
		d := scaleticket.Compose(c.Make(t))
		var screen strings.Builder
		for _, l := range scaleticket.Paper(d) {
			screen.WriteString(l.Left + l.Right + l.Note)
		}
		inOrder(t, c.Name+" on the screen", squashed(screen.String()), d, func(text string) string { return text })
		inOrder(t, c.Name+" on the roll", squashed(strings.NewReplacer("-----", "").Replace(Text(d, RollColumns))), d, plain)
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
