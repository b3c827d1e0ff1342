package widgets

import (
	"fmt"
	"strings"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
)

// picking is a find field that records all it calls back.
type picking struct {
	*house
	pick  *Autocomplete
	order *FocusOrder
	said  []string
}

func newPicking(t *testing.T) *picking {
	t.Helper()
	d := &deeds{}
	p := &picking{house: newHouse(t, d.commands()...), pick: NewAutocomplete(widgettest.Growers())}
	d.watch(p.Commands)
	p.order = p.Cast(map[string]Keyed{"grower": p.pick, "truck": NewFieldEntry()}, "grower", "truck")
	say := func(format string, args ...any) { p.said = append(p.said, fmt.Sprintf(format, args...)) }
	p.pick.OnPick = func(o model.Option) { say("picked %s", o.Code) }
	p.pick.OnUnpick = func() { say("unpicked") }
	p.pick.OnNoFit = func(text string) { say("no fit for %s", text) }
	p.pick.OnCommit = func(text string) string { say("went on with %s", text); return "" }
	p.order.Focus("grower")
	return p
}

func (p *picking) heard(want ...string) {
	p.T.Helper()
	widgettest.Equal(p.T, "said", strings.Join(p.said, "; "), strings.Join(want, "; "))
	p.said = nil
}

func (p *picking) open(want bool) {
	p.T.Helper()
	widgettest.Equal(p.T, "list open", p.pick.ListOpen(), want)
	widgettest.Equal(p.T, "on the layer", len(p.UI.layer.Objects) == 1, want)
}

func TestLettersAndEnterPick(t *testing.T) {
	p := newPicking(t)
	p.Write("acre")
	p.open(true)
	p.Press(fyne.KeyReturn)
	p.heard("picked 118", "went on with 118  Long Acre Partners")
	p.open(false)
	p.At(p.order, "truck")
	widgettest.Equal(t, "text", p.pick.Text, "118  Long Acre Partners")
}

func TestArrowsMoveInTheList(t *testing.T) {
	p := newPicking(t)
	p.Write("farm")
	p.Press(fyne.KeyDown, fyne.KeyDown, fyne.KeyUp, fyne.KeyDown, fyne.KeyEnter)
	p.heard("picked 207", "went on with 207  Millrace Farm")
}

// TestCodeInFullWinsAtOnce, without Enter, unless a longer code could follow.
func TestCodeInFullWinsAtOnce(t *testing.T) {
	p := newPicking(t)
	p.Write("11")
	p.heard()
	p.open(true)
	p.Write("4")
	p.heard("picked 114")
	p.open(false)
	p.Press(fyne.KeyReturn)
	p.heard("went on with 114  Éthier et fils")

	p.order.Focus("grower")
	p.Write("11")
	p.heard("unpicked")
	p.Press(fyne.KeyReturn) // the code itself is marked, though 114 begins so
	p.heard("picked 11", "went on with 11  Hollow Oak Farm")
}

func TestDownOpensTheWholeList(t *testing.T) {
	p := newPicking(t)
	p.Press(fyne.KeyDown)
	p.open(true)
	fits, marked := p.pick.Fits()
	widgettest.Equal(t, "fits", widgettest.Codes(fits), "11 114 118 207")
	widgettest.Equal(t, "marked", marked, 0)
	p.Press(fyne.KeyPageDown, fyne.KeyReturn)
	p.heard("picked 207", "went on with 207  Millrace Farm")
	p.order.Focus("grower")
	p.Press(fyne.KeyDown)
	fits, _ = p.pick.Fits()
	widgettest.Equal(t, "all again over a chosen one", widgettest.Codes(fits), "11 114 118 207")
}

func TestEscapeClosesTheListFirst(t *testing.T) {
	p := newPicking(t)
	p.Write("farm")
	p.Press(fyne.KeyEscape)
	p.open(false)
	widgettest.Equal(t, "text kept", p.pick.Text, "farm")
	p.At(p.order, "grower")
	var ran int
	p.order.OnEscape = func() bool { ran++; return true }
	p.Press(fyne.KeyEscape)
	widgettest.Equal(t, "the next Escape", ran, 1)
}

func TestNothingFits(t *testing.T) {
	p := newPicking(t)
	p.Write("zz")
	p.open(true) // to say so
	p.Press(fyne.KeyReturn)
	p.heard("no fit for zz")
	p.At(p.order, "grower")
}

// TestEnterOnAClosedListOpensIt: what was typed still fits several.
func TestEnterOnAClosedListOpensIt(t *testing.T) {
	p := newPicking(t)
	p.Write("farm")
	p.Press(fyne.KeyEscape, fyne.KeyReturn)
	p.open(true)
	p.heard()
	p.Press(fyne.KeyReturn)
	p.heard("picked 11", "went on with 11  Hollow Oak Farm")
}

func TestEmptyFieldWalksOn(t *testing.T) {
	p := newPicking(t)
	p.Press(fyne.KeyReturn)
	p.heard("went on with ")
	p.At(p.order, "truck")
}

func TestFreeTextStands(t *testing.T) {
	p := newPicking(t)
	p.pick.FreeText = true
	p.Write("farm") // fits two, but Enter keeps what was written
	p.Press(fyne.KeyReturn)
	p.heard("went on with farm")
	_, chosen := p.pick.Chosen()
	widgettest.Equal(t, "chosen", chosen, false)
	p.order.Focus("grower")
	p.Write("11")
	p.Press(fyne.KeyReturn) // a code is a code
	p.heard("picked 11", "went on with 11  Hollow Oak Farm")
}

func TestLeavingTakesACodeInFull(t *testing.T) {
	p := newPicking(t)
	p.Write("11")
	p.Press(fyne.KeyTab)
	p.heard("picked 11")
	p.open(false)
	widgettest.Equal(t, "text", p.pick.Text, "11  Hollow Oak Farm")
}

// TestLeavingTakesTheMarkedLine, as Enter does; with the list closed, only what
// nothing else fits.
func TestLeavingTakesTheMarkedLine(t *testing.T) {
	for _, c := range []struct {
		typed string
		keys  []fyne.KeyName
		want  string // picked; empty: the letters stay
	}{
		{"far", nil, "11"},
		{"far", []fyne.KeyName{fyne.KeyDown}, "207"},
		{"mill", nil, "207"},
		{"mill", []fyne.KeyName{fyne.KeyEscape}, "207"},
		{"far", []fyne.KeyName{fyne.KeyEscape}, ""},
		{"zz", nil, ""},
	} {
		p := newPicking(t)
		p.Write(c.typed)
		p.Press(c.keys...)
		p.Press(fyne.KeyTab)
		p.open(false)
		o, chosen := p.pick.Chosen()
		widgettest.Equal(t, "picked after "+c.typed, o.Code, c.want)
		if !chosen {
			widgettest.Equal(t, "text", p.pick.Text, c.typed)
		}
	}
}

// TestLeavingKeepsFreeText: what no code in full says is taken as it was typed.
func TestLeavingKeepsFreeText(t *testing.T) {
	p := newPicking(t)
	p.pick.FreeText = true
	p.Write("mill")
	p.Press(fyne.KeyTab)
	_, chosen := p.pick.Chosen()
	widgettest.Equal(t, "chosen", chosen, false)
	widgettest.Equal(t, "text", p.pick.Text, "mill")
}

func TestSetChosenCallsNothingBack(t *testing.T) {
	p := newPicking(t)
	p.pick.SetChosen("207")
	widgettest.Equal(t, "text", p.pick.Text, "207  Millrace Farm")
	p.pick.SetChosen("999")
	widgettest.Equal(t, "a code nobody has", p.pick.Text, "999")
	p.pick.SetChosen("")
	widgettest.Equal(t, "emptied", p.pick.Text, "")
	p.heard()
}

func TestClickPicks(t *testing.T) {
	p := newPicking(t)
	p.Write("farm")
	// The window leaves the keyboard in the field, since the list can have it; the test driver does not.
	p.pick.list.Tapped(&fyne.PointEvent{Position: fyne.NewPos(20, 1.5*p.pick.list.rowHeight(paint.PainterFor(p.pick)))})
	p.heard("picked 207", "went on with 207  Millrace Farm")
}

func TestOptionsMayChangeUnderTheList(t *testing.T) {
	p := newPicking(t)
	p.Write("farm")
	p.Press(fyne.KeyDown)
	p.pick.SetOptions([]model.Option{{Code: "5", Name: "New Farm"}})
	fits, marked := p.pick.Fits()
	widgettest.Equal(t, "fits", widgettest.Codes(fits), "5")
	widgettest.Equal(t, "marked", marked, 0)
	p.pick.SetOptions(nil)
	p.Press(fyne.KeyDown, fyne.KeyUp, fyne.KeyPageDown, fyne.KeyReturn)
	p.heard("no fit for farm")
}

// TestLongListsScroll: the marked line is always among those that show.
func TestLongListsScroll(t *testing.T) {
	p := newPicking(t)
	var many []model.Option
	for i := range 50 {
		many = append(many, model.Option{Code: fmt.Sprint(100 + i), Name: "Farm"})
	}
	p.pick.SetOptions(many)
	p.Write("farm")
	widgettest.Equal(t, "rows", len(p.pick.list.rows()), pickMost)
	widgettest.Equal(t, "foot", p.pick.list.foot(), "42 more")
	for range 60 {
		p.Press(fyne.KeyDown)
		_, marked := p.pick.Fits()
		if top := p.pick.list.top; marked < top || marked >= top+pickMost {
			t.Fatalf("line %d is marked but %d to %d show", marked, top, top+pickMost-1)
		}
	}
	p.Press(fyne.KeyReturn)
	p.heard("picked 149", "went on with 149  Farm")
}

// TestListStaysInTheWindow: near the bottom it opens upward.
func TestListStaysInTheWindow(t *testing.T) {
	h := newHouse(t)
	for _, c := range []struct {
		at    float32
		above bool
	}{{20, false}, {440, true}} {
		pick := NewAutocomplete(widgettest.Growers())
		order := NewFocusOrder(h.UI)
		order.Add("p", pick)
		h.Show(widgettest.At(pick, fyne.NewPos(30, c.at), fyne.NewSize(200, 34)), fyne.NewSize(400, 500))
		order.Focus("p")
		h.Press(fyne.KeyDown)
		list := pick.list
		widgettest.Equal(t, "above the field", list.Position().Y < pick.Position().Y, c.above)
		if list.Position().Y < 0 || list.Position().Y+list.Size().Height > 500 {
			t.Errorf("the list runs from %v to %v, out of the window", list.Position().Y, list.Position().Y+list.Size().Height)
		}
	}
}
