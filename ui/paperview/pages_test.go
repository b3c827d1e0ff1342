package paperview

import (
	"bytes"
	"fmt"
	"testing"

	"tenthpoint/internal/paper"
	"tenthpoint/internal/paper/pdf"
	"tenthpoint/internal/paper/pdf/pdfwords"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
	"tenthpoint/internal/tickettest"
	"tenthpoint/ui/apptheme"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// drawnRun is a line of text as drawn in the window.
type drawnRun struct {
	key runKey
	at  fyne.Position // the left end, on the baseline
}

// drawn are the lines of letters in the window, as they are drawn.
func drawn(p *Pages) (runs []drawnRun) {
	looks := map[fyne.CanvasObject]runKey{}
	for key, objects := range p.drawer.now {
		if k, is := key.(runKey); is {
			for _, o := range objects {
				looks[o] = k
			}
		}
	}
	for _, o := range test.WidgetRenderer(p).Objects() {
		if k, is := looks[o]; is {
			base := float32(int(p.View().unit(k.style.Size)*ascent) + 1)
			runs = append(runs, drawnRun{k, o.Position().AddXY(before+float32(k.quarter)/4, base)})
		}
	}
	return runs
}

func shown(t *testing.T, l paper.Layout, size fyne.Size) *Pages {
	t.Helper()
	test.NewTempApp(t)
	test.ApplyTheme(t, apptheme.NewTheme(false, apptheme.TextOrdinary))
	p := NewPages()
	p.put(l)
	w := test.NewTempWindow(t, p)
	w.SetPadded(false)
	w.Resize(size)
	return p
}

// TestWindowDrawsThePageThatPrints reads the words of every ticket back out of its
// PDF, and finds each of them in the window: the same letters, in the same size, at
// the same place but for the window's own pixels.
func TestWindowDrawsThePageThatPrints(t *testing.T) {
	for _, c := range tickettest.Table {
		for _, size := range []sheet.Size{sheet.HalfLetter, sheet.A5} {
			layout := sheet.Layout(scaleticket.Compose(c.Make(t)), size, sheet.Options{})
			var file bytes.Buffer
			if err := pdf.Write(&file, layout); err != nil {
				t.Fatal(err)
			}
			pages, err := pdfwords.Runs(file.Bytes())
			if err != nil || len(pages) != len(layout.Pages) {
				t.Fatalf("%s: %d pages of %d, %v", c.Name, len(pages), len(layout.Pages), err)
			}
			for _, width := range []float32{410, 777} {
				p := shown(t, layout, fyne.NewSize(width, 900))
				for _, wrong := range differences(layout, pages, p) {
					t.Errorf("%s, %v wide: %s", c.Name, width, wrong)
				}
			}
		}
	}
}

// differences names what is in a PDF and not so in the window.
func differences(l paper.Layout, pages [][]pdfwords.Run, p *Pages) (wrong []string) {
	window, v := drawn(p), p.View()
	for n, page := range pages {
		for _, r := range page {
			if l.Pages[n].Stamp != nil && r.Text == l.Pages[n].Stamp.Text && paper.Length(r.Size) == l.Pages[n].Stamp.Style.Size {
				continue // set across the page: there are no runs of it in the window
			}
			if len(window) == 0 {
				return append(wrong, fmt.Sprintf("%q and what follows it is missing", r.Text))
			}
			got := window[0]
			window = window[1:]
			want := v.at(n, paper.Place{X: paper.Length(r.X), Y: l.Height - paper.Length(r.Y)})
			off := got.at.Subtract(want)
			if got.key.text != r.Text || got.key.style.Size != paper.Length(r.Size) || off.X < -0.3 || off.X > 0.3 || off.Y < -0.55 || off.Y > 0.55 {
				wrong = append(wrong, fmt.Sprintf("%q stands at %v in %v, on paper %q at %v in %v", got.key.text, got.at, got.key.style.Size, r.Text, want, r.Size))
			}
		}
	}
	for _, more := range window {
		wrong = append(wrong, fmt.Sprintf("%q is not on the paper", more.key.text))
	}
	return wrong
}

// TestDifferenceIsFound: the comparison can fail.
func TestDifferenceIsFound(t *testing.T) {
	ticket := tickettest.Corn(t)
	layout := sheet.Layout(scaleticket.Compose(ticket), sheet.HalfLetter, sheet.Options{})
	var file bytes.Buffer
	if err := pdf.Write(&file, layout); err != nil {
		t.Fatal(err)
	}
	pages, err := pdfwords.Runs(file.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	ticket.Load.Details.Driver = "E. Driver"
	other := shown(t, sheet.Layout(scaleticket.Compose(ticket), sheet.HalfLetter, sheet.Options{}), fyne.NewSize(400, 900))
	if len(differences(layout, pages, other)) == 0 {
		t.Error("another driver, and no difference")
	}
}

// TestOnlyWhatChangedIsDrawnAgain: of a slip of which one fact changes, the letters of
// the others are the same objects as before.
func TestOnlyWhatChangedIsDrawnAgain(t *testing.T) {
	ticket := tickettest.Corn(t)
	p := shown(t, sheet.Layout(scaleticket.Compose(ticket), sheet.HalfLetter, sheet.Options{}), fyne.NewSize(400, 900))
	before := map[fyne.CanvasObject]bool{}
	for _, o := range test.WidgetRenderer(p).Objects() {
		before[o] = true
	}
	ticket.Load.Details.Bin = "Pit 3"
	p.put(sheet.Layout(scaleticket.Compose(ticket), sheet.HalfLetter, sheet.Options{}))
	p.Refresh()
	fresh := 0
	for _, o := range test.WidgetRenderer(p).Objects() {
		if !before[o] {
			fresh++
		}
	}
	if fresh != 1 {
		t.Errorf("%d objects are new, want the one of the pit", fresh)
	}
}

// TestEveryPageIsInTheWindow: pages follow each other, none over another, and all of
// them can be reached by scrolling.
func TestEveryPageIsInTheWindow(t *testing.T) {
	layout := sheet.Layout(scaleticket.Compose(tickettest.Named(t, "split")), sheet.HalfLetter, sheet.Options{})
	p := shown(t, layout, fyne.NewSize(400, 900))
	v := p.View()
	for n := range layout.Pages {
		if n > 0 && v.tops[n]+v.unit(aboveShown) < v.tops[n-1]+v.unit(p.ends[n-1]) {
			t.Errorf("page %d begins on page %d", n+1, n)
		}
	}
	if low := v.tops[len(v.tops)-1] + v.unit(p.ends[len(p.ends)-1]); low > p.MinSize().Height || low < p.MinSize().Height-1 {
		t.Errorf("the last page ends at %v, the sheet at %v", low, p.MinSize().Height)
	}
}

// TestRevealScrollsNoFurtherThanNeeded: a fact out of sight is brought into sight, one
// in sight moves nothing, and what is no fact of the slip moves nothing.
func TestRevealScrollsNoFurtherThanNeeded(t *testing.T) {
	test.NewTempApp(t)
	test.ApplyTheme(t, apptheme.NewTheme(false, apptheme.TextOrdinary))
	v := NewSlipView()
	v.SetPages(sheet.Layout(scaleticket.Compose(tickettest.Named(t, "preview")), sheet.HalfLetter, sheet.Options{}))
	w := test.NewTempWindow(t, v)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(400, 120))
	for _, step := range []struct {
		field string
		move  bool
	}{{"grower", false}, {"tare", true}, {"tare", false}, {"grower", true}, {"no such fact", false}, {"price", true}, {"", false}} {
		before := v.Offset()
		v.Reveal(step.field)
		if moved := v.Offset() != before; moved != step.move {
			t.Errorf("revealing %q moved the slip from %v to %v, want a move: %v", step.field, before, v.Offset(), step.move)
		}
		if fact, found := v.pages.find(step.field); found && (fact.from < v.Offset() || fact.to > v.Offset()+v.Scroll.Size().Height) {
			t.Errorf("%q at %v is out of sight: the slip stands at %v", step.field, fact, v.Offset())
		}
	}
	w.Resize(fyne.NewSize(400, 900))
	if v.Offset() != 0 {
		t.Errorf("with room for all of it the slip stands at %v", v.Offset())
	}
}
