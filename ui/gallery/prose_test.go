package gallery

import (
	"strings"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/widgets"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

func exampleProse() []paperview.Passage {
	return []paperview.Passage{
		{Kind: paperview.PassageTitle, Spans: []paperview.Span{{Text: "The scale"}}},
		{Kind: paperview.PassageText, Spans: []paperview.Span{{Text: "Press "}, {Text: "F12", Bold: true}, {Text: ". The ticket gets its number and prints, and the next truck rolls on as soon as the deck is clear of this one."}}},
		{Kind: paperview.PassageHeading, Spans: []paperview.Span{{Text: "Before weighing"}}},
		{Kind: paperview.PassagePoint, Mark: "1.", Spans: []paperview.Span{{Text: "See the deck clear."}}},
		{Kind: paperview.PassagePoint, Mark: "2.", Spans: []paperview.Span{{Text: "Zero it."}}},
		{Kind: paperview.PassagePoint, Spans: []paperview.Span{{Text: "Weigh."}}},
		{Kind: paperview.PassageCaution, Spans: []paperview.Span{{Text: "Nobody stands between a truck and the dump, and nobody is on the deck when a truck moves."}}},
		{Kind: paperview.PassageTable, Rows: [][]string{{"word", "meaning"}, {"gross", "the truck full"}, {"tare", "the truck empty, with its driver on for both weights or off for both, never on for one of them"}}},
		{Kind: paperview.PassageSum, Lines: []string{"Net   52,300 − 24,120 = 28,180", "Dry   28,180 − 729 = 27,451", "100 ÷ 85"}},
	}
}

func TestProseGolden(t *testing.T) {
	h := newHouse(t)
	v := paperview.NewProseView()
	order := widgets.NewFocusOrder(h.UI)
	order.Add("prose", v)
	h.Show(v, fyne.NewSize(420, 560))
	v.Open(exampleProse(), 0)
	order.Focus("prose")
	test.AssertRendersToMarkup(t, "prose.xml", h.Window.Canvas())
}

// Whatever the width, every word is there in its order, and none reaches over
// the edge of the sheet unless it is wider than the sheet alone.
func TestProseKeepsItsWords(t *testing.T) {
	h := newHouse(t)
	p := paperview.NewProse()
	h.Show(p, fyne.NewSize(400, 400))
	p.SetPassages(exampleProse())
	var want []string
	for _, passage := range exampleProse() {
		if passage.Mark != "" {
			want = append(want, passage.Mark)
		} else if passage.Kind == paperview.PassagePoint {
			want = append(want, "•")
		}
		for _, s := range passage.Spans {
			want = append(want, strings.Fields(s.Text)...)
		}
		for _, line := range passage.Lines {
			want = append(want, strings.Fields(paint.StandIns.Replace(line))...)
		}
	}
	for _, width := range []float32{260, 300, 420, 700, 1400} {
		size := fyne.NewSize(width, 2000)
		p.Resize(size)
		var got []string
		for _, o := range p.Paint(size) {
			text, ok := o.(*canvas.Text)
			if !ok {
				continue
			}
			if right := text.Position().X + text.MinSize().Width; right > width {
				t.Errorf("at %v wide, %q ends at %v", width, text.Text, right)
			}
			got = append(got, strings.Fields(text.Text)...)
		}
		all := strings.Join(got, " ")
		for _, word := range want {
			at := strings.Index(all, word)
			if at < 0 {
				t.Errorf("at %v wide, %q is gone or out of order", width, word)
				break
			}
			if word != "•" && !isCell(word) {
				all = all[at+len(word):]
			}
		}
	}
}

// isCell reports whether a word is also in a cell, where rows are drawn line by line and their
// words come in another order.
func isCell(word string) bool {
	return strings.Contains("gross the truck full tare empty, with its driver on for both weights or off never one of them", word)
}

// A later passage begins further down, and opening at it scrolls there.
func TestProseOpensAtAPassage(t *testing.T) {
	h := newHouse(t)
	v := paperview.NewProseView()
	h.Show(v, fyne.NewSize(420, 120))
	v.Open(exampleProse(), 0)
	last := float32(-1)
	for i := range exampleProse() {
		if top := v.Prose.Top(i); top <= last {
			t.Errorf("passage %d begins at %v, the one before at %v", i, top, last)
		} else {
			last = top
		}
	}
	v.Open(exampleProse(), 2)
	if at := v.Offset(); at <= 0 || at > v.Prose.Top(2) {
		t.Errorf("opened at the heading it stands at %v, the heading at %v", at, v.Prose.Top(2))
	}
	v.Open(exampleProse(), 0)
	if at := v.Offset(); at != 0 {
		t.Errorf("opened at the beginning it stands at %v", at)
	}
}

// The width of columns never exceeds the room, and what is narrow is not cut.
func TestProseColumns(t *testing.T) {
	h := newHouse(t)
	p := paperview.NewProse()
	h.Show(p, fyne.NewSize(400, 400))
	set := p.Layout(400)
	long := strings.Repeat("words and ", 30)
	for _, rows := range [][][]string{
		{{"a", "b"}, {"x", long}},
		{{"a", "b", "c"}, {long, "x", long}},
		{{"a"}, {long}},
		{{"a", "b"}, {"x", "y"}},
	} {
		widths := set.ColumnWidths(rows, 300, 10)
		sum := 10 * float32(len(widths)-1)
		for i, w := range widths {
			sum += w
			if need := set.Measure(rows[1][i], paperview.PaperPlain).Width; rows[1][i] != long && w < need {
				t.Errorf("%q has %v, needs %v", rows[1][i], w, need)
			}
		}
		if sum > 300.5 {
			t.Errorf("the columns %v take %v of 300", widths, sum)
		}
	}
}
