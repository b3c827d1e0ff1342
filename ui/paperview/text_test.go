package paperview

import (
	"strings"
	"testing"

	"tenthpoint/internal/paper"
	"tenthpoint/ui/model"
)

// A paper is copied line by line as it stands: left before right, top before bottom.
func TestPaperIsCopiedAsText(t *testing.T) {
	at := func(x, y paper.Length, text string) paper.Run {
		return paper.Run{At: paper.Place{X: x, Y: y}, Text: text}
	}
	got := textOf(paper.Layout{Pages: []paper.Marks{{Runs: []paper.Run{at(500, 200, "28,000 lb"), at(0, 100, "Ticket 7"), at(0, 200, "Net")}}, {Runs: []paper.Run{at(0, 0, "Page 2")}}}})
	if want := "Ticket 7\nNet\t28,000 lb\nPage 2\n"; got != want {
		t.Errorf("copied %q, want %q", got, want)
	}
	v := NewSlipView()
	v.SetLines([]model.CardLine{{Left: "Grower", Right: "Ada Field"}})
	if got := v.Text(); strings.TrimSpace(got) != "Grower\tAda Field" {
		t.Errorf("a card is copied as %q", got)
	}
}
