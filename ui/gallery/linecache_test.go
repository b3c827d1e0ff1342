package gallery

import (
	"fmt"
	"strings"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// anyLine draws a line of any kind, from few texts, so that lines come back.
func anyLine(t *rapid.T) model.CardLine {
	texts := []string{"", "Net", "28,180 lb", "Broken corn and foreign material", "a sentence that is long enough to be set on two lines or three of a narrow sheet"}
	text := rapid.SampledFrom(texts)
	line := model.CardLine{
		Kind: model.CardKind(rapid.IntRange(int(model.CardPair), int(model.CardHeading)).Draw(t, "kind")),
		Left: text.Draw(t, "left"), Right: text.Draw(t, "right"), Note: text.Draw(t, "note"),
	}
	return line
}

// looksOf tells of each object of a sheet what a person sees of it.
func looksOf(v *paperview.SlipView) []string {
	var looks []string
	for _, o := range test.WidgetRenderer(v.Card()).Objects() {
		look := fmt.Sprintf("%T at %v, %v", o, o.Position(), o.Size())
		switch o := o.(type) {
		case *canvas.Text:
			look += fmt.Sprint(" ", o.Text, o.Color, o.TextSize, o.TextStyle)
		case *canvas.Rectangle:
			look += fmt.Sprint(" ", o.FillColor, o.StrokeColor, o.StrokeWidth)
		case *canvas.Image:
			if o.Resource != nil {
				look += " " + o.Resource.Name()
			}
		}
		looks = append(looks, look)
	}
	return looks
}

// TestKeptTypeLooksNew: after any series of changes a card looks as one made
// again with the last lines, at the same place.
func TestKeptTypeLooksNew(t *testing.T) {
	h := newHouse(t)
	rapid.Check(t, func(t *rapid.T) {
		size := fyne.NewSize(float32(rapid.IntRange(260, 700).Draw(t, "width")), float32(rapid.IntRange(100, 900).Draw(t, "height")))
		kept := paperview.NewSlipView()
		h.Show(kept, size)
		var lines []model.CardLine
		for range rapid.IntRange(1, 5).Draw(t, "changes") {
			fresh := rapid.SliceOfN(rapid.Custom(anyLine), 0, 12).Draw(t, "lines")
			at := rapid.IntRange(0, len(lines)).Draw(t, "from")
			lines = append(append([]model.CardLine{}, lines[:at]...), fresh...)
			kept.SetLines(lines)
		}
		anew := paperview.NewSlipView()
		anew.SetLines(lines)
		h.Show(anew, size)
		anew.Scroll.ScrollToOffset(fyne.NewPos(0, kept.Offset()))
		if d := cmp.Diff(looksOf(anew), looksOf(kept)); d != "" {
			t.Fatalf("-anew +kept:\n%s", d)
		}
	})
}

// TestEveryLineIsSet: lines that share a row lose nothing, beside any neighbor and on any width.
func TestEveryLineIsSet(t *testing.T) {
	h := newHouse(t)
	rapid.Check(t, func(t *rapid.T) {
		paper := paperview.NewCard()
		h.Show(paper, fyne.NewSize(float32(rapid.IntRange(260, 700).Draw(t, "width")), 400))
		lines := rapid.SliceOfN(rapid.Custom(anyLine), 1, 12).Draw(t, "lines")
		words := map[string]int{}
		for _, l := range lines {
			if l.Kind != model.CardRule && l.Kind != model.CardGap {
				count(words, l.Left, 1)
			}
		}
		paper.SetLines(lines)
		for _, text := range widgettest.Letters(paper) {
			count(words, text.Text, -1)
		}
		for word, more := range words {
			if more > 0 {
				t.Errorf("%q is missing %d times", word, more)
			}
		}
	})
}

func count(words map[string]int, text string, by int) {
	for _, word := range strings.Fields(text) {
		words[word] += by
	}
}

// TestOnlyWhatChangedIsSetAgain: of a card of which one line changes, the
// letters of the others are the same objects as before.
func TestOnlyWhatChangedIsSetAgain(t *testing.T) {
	_, v, _ := shownCard(t, fyne.NewSize(460, 900))
	before := map[fyne.CanvasObject]bool{}
	for _, text := range widgettest.Letters(v.Card()) {
		before[text] = true
	}
	lines := exampleCard()
	for i, l := range lines {
		if l.Left == "Tare" {
			lines[i].Right = "24,100 lb"
		}
	}
	v.SetLines(lines)
	var set []string
	for _, text := range widgettest.Letters(v.Card()) {
		if !before[text] {
			set = append(set, text.Text)
		}
	}
	if want := []string{"24,100 lb", "Tare"}; !cmp.Equal(set, want) {
		t.Errorf("set again: %q, want %q", set, want)
	}
}
