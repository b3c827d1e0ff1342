package gallery

import (
	"strings"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
)

func shownCard(t *testing.T, size fyne.Size) (*house, *paperview.SlipView, *widgets.FocusOrder) {
	t.Helper()
	h := newHouse(t)
	v := paperview.NewSlipView()
	v.SetLines(exampleCard())
	order := widgets.NewFocusOrder(h.UI)
	order.Add("slip", v)
	h.Show(v, size)
	return h, v, order
}

func TestCardShowsEveryWord(t *testing.T) {
	_, v, _ := shownCard(t, fyne.NewSize(460, 900))
	got := strings.Join(widgettest.TextsOf(v.Card()), " ")
	for _, line := range exampleCard() {
		for _, want := range []string{line.Left, line.Right, line.Note} {
			if !strings.Contains(got, want) {
				t.Errorf("%q is not on the card", want)
			}
		}
	}
}

// TestFiguresEndTogether: all right parts end at one edge, inside the sheet.
func TestFiguresEndTogether(t *testing.T) {
	_, v, _ := shownCard(t, fyne.NewSize(460, 900))
	rights := map[string]bool{}
	for _, line := range exampleCard() {
		if line.Right != "" {
			rights[line.Right] = true
		}
	}
	edges := map[float32]int{}
	for _, text := range widgettest.Letters(v.Card()) {
		if rights[text.Text] {
			edges[paint.Floor(text.Position().X+text.Size().Width+0.5)]++
		}
		if end := text.Position().X + text.Size().Width; end > v.Card().Size().Width {
			t.Errorf("%q runs off the card", text.Text)
		}
	}
	if len(edges) != 1 {
		t.Errorf("figures end at different places: %v", edges)
	}
}

func TestLinesDoNotOverlap(t *testing.T) {
	for _, width := range []float32{260, 460, 800} {
		_, v, _ := shownCard(t, fyne.NewSize(width, 900))
		type box struct {
			text                     string
			left, top, right, bottom float32
		}
		var boxes []box
		for _, l := range widgettest.Letters(v.Card()) {
			boxes = append(boxes, box{l.Text, l.Position().X, l.Position().Y, l.Position().X + l.Size().Width, l.Position().Y + l.Size().Height})
		}
		for i, a := range boxes {
			for _, b := range boxes[i+1:] {
				if a.left < b.right-1 && b.left < a.right-1 && a.top < b.bottom-2 && b.top < a.bottom-2 {
					t.Errorf("at width %v %q and %q overlap", width, a.text, b.text)
				}
			}
		}
	}
}

func TestMarksAreSeen(t *testing.T) {
	h := newHouse(t)
	paper := paperview.NewCard()
	count := func() (tints, icons int) {
		for _, o := range test.WidgetRenderer(paper).Objects() {
			if r, ok := o.(*canvas.Rectangle); ok && r.FillColor == apptheme.LightPalette[apptheme.ColorPaperMissing] {
				tints++
			}
			if _, ok := o.(*canvas.Image); ok {
				icons++
			}
		}
		return tints, icons
	}
	paper.SetLines([]model.CardLine{{Left: "Tare", Right: "24,120 lb"}})
	h.Show(paper, fyne.NewSize(400, 300))
	tints, icons := count()
	widgettest.Equal(t, "tints", tints, 0)
	widgettest.Equal(t, "icons", icons, 0)
	paper.SetLines([]model.CardLine{{Kind: model.CardMark, Left: "Tare", Right: "not weighed"}, {Kind: model.CardMark, Left: "Gross", Right: "MANUAL WT"}})
	tints, icons = count()
	widgettest.Equal(t, "tints", tints, 2)
	widgettest.Equal(t, "icons", icons, 2)
}

func TestCardScrollsOnlyWhenItMust(t *testing.T) {
	h, v, order := shownCard(t, fyne.NewSize(460, 900))
	order.Focus("slip")
	h.Press(fyne.KeyEnd, fyne.KeyPageDown, fyne.KeyDown)
	widgettest.Equal(t, "all of it shows", v.Offset(), 0)

	h.Window.Resize(fyne.NewSize(460, 200))
	h.Press(fyne.KeyDown)
	line := v.Offset()
	h.Press(fyne.KeyPageDown)
	page := v.Offset()
	h.Press(fyne.KeyEnd)
	end := v.Offset()
	if !(0 < line && line < page && page <= end) {
		t.Errorf("down %v, page %v, end %v", line, page, end)
	}
	widgettest.Equal(t, "the end is the end", end, v.Card().MinSize().Height-200)
	v.SetLines(exampleCard())
	widgettest.Equal(t, "a change keeps the place", v.Offset(), end)
	h.Press(fyne.KeyPageUp, fyne.KeyUp, fyne.KeyHome)
	widgettest.Equal(t, "home", v.Offset(), 0)
}

// TestCardIsAsHighAsItsLines: also after it got narrower and lines wrapped.
func TestCardIsAsHighAsItsLines(t *testing.T) {
	h, v, _ := shownCard(t, fyne.NewSize(800, 300))
	wide := v.Card().MinSize().Height
	h.Window.Resize(fyne.NewSize(280, 300))
	narrow := v.Card().MinSize().Height
	if narrow <= wide {
		t.Errorf("%v high at 280 wide and %v at 800", narrow, wide)
	}
	widgettest.Equal(t, "the sheet itself", v.Card().Size().Height, narrow)
	bottom := float32(0)
	for _, l := range widgettest.Letters(v.Card()) {
		bottom = max(bottom, l.Position().Y+l.Size().Height)
	}
	if bottom > narrow {
		t.Errorf("letters end at %v, below the paper's %v", bottom, narrow)
	}
}

// BenchmarkCard is one keystroke's worth: other lines, drawn again.
func BenchmarkCard(b *testing.B) {
	app := test.NewTempApp(b)
	app.Settings().SetTheme(apptheme.NewTheme(false, apptheme.TextOrdinary))
	v := paperview.NewSlipView()
	w := test.NewWindow(v)
	defer w.Close()
	w.Resize(fyne.NewSize(460, 700))
	lines := append(exampleCard(), exampleCard()...)
	b.ResetTimer()
	for b.Loop() {
		v.SetLines(lines)
	}
}

// TestLongRightPart: what does not fit beside its name goes below it, and nothing is written over
// anything else.
func TestLongRightPart(t *testing.T) {
	h := newHouse(t)
	p := paperview.NewCard()
	h.Show(p, fyne.NewSize(320, 300))
	p.SetLines([]model.CardLine{{Left: "Shares", Right: "Hollow Oak Farm 1/3; Section Nine Land 2/3 of all that came"}, {Left: "Net", Right: "28,180 lb"}})
	var texts []*canvas.Text
	for _, o := range p.Paint(fyne.NewSize(320, 300)) {
		if text, ok := o.(*canvas.Text); ok {
			texts = append(texts, text)
		}
	}
	for i, a := range texts {
		if a.Position().X < 0 || a.Position().X+a.MinSize().Width > 320 {
			t.Errorf("%q reaches over the edge", a.Text)
		}
		for _, b := range texts[i+1:] {
			apart := a.Position().Y+a.MinSize().Height <= b.Position().Y+3 ||
				a.Position().X+a.MinSize().Width <= b.Position().X || b.Position().X+b.MinSize().Width <= a.Position().X
			if !apart {
				t.Errorf("%q and %q stand in one place", a.Text, b.Text)
			}
		}
	}
}
