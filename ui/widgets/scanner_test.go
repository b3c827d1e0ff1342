package widgets

import (
	"testing"

	"fyne.io/fyne/v2"

	"tenthpoint/ui/model"
	"tenthpoint/ui/widgettest"
)

// scanning is a window whose codes begin with "TP2:" or "TPT:".
func scanning(t *testing.T) (*house, *[]string) {
	h, codes := newHouse(t), new([]string)
	h.UI.OnScan([]string{"TP2:", "TPT:"}, func(code string) { *codes = append(*codes, code) })
	return h, codes
}

// reads types a code as a reader does: every letter is a key too.
func (h *house) reads(code string) {
	for _, r := range code {
		h.Press(fyne.KeyName(string(r)))
		h.Write(string(r))
	}
	h.Press(fyne.KeyReturn)
}

// A code goes to whoever reads codes, from any place, and leaves the place as it was.
func TestACodeIsNotTyped(t *testing.T) {
	h, codes := scanning(t)
	words, figures, button := NewFieldEntry(), NewFigureEntry(), NewButton("Issue", func() { t.Error("a code pressed a button") })
	figures.Words = []string{"posted"}
	find := NewAutocomplete([]model.Option{{Code: "123", Name: "Ada"}, {Code: "T", Name: "Ted"}})
	picked := ""
	find.OnPick = func(o model.Option) { picked = o.Code }
	find.OnUnpick = func() { picked = "" }
	order := h.Cast(map[string]Keyed{"words": words, "figures": figures, "find": find, "button": button}, "words", "figures", "find", "button")
	words.SetText("a remark")
	figures.SetText("52,300")
	find.SetChosen("123")
	picked = "123"
	for _, at := range []string{"words", "figures", "find", "button"} {
		order.Focus(at)
		h.reads("TPT:23")
		h.At(order, at)
	}
	widgettest.Equal(t, "codes", len(*codes), 4)
	widgettest.Equal(t, "code", (*codes)[0], "TPT:23")
	widgettest.Equal(t, "words", words.Text, "a remark")
	widgettest.Equal(t, "figures", figures.Text, "52,300")
	o, chosen := find.Chosen()
	if !chosen || o.Code != "123" || picked != "123" {
		t.Errorf("the choice is %v %v, picked %q", o, chosen, picked)
	}
}

// Letters that only begin like a mark are text, and Escape gives a code up.
func TestWhatIsNoCodeIsTyped(t *testing.T) {
	h, codes := scanning(t)
	e := NewFieldEntry()
	order := h.Cast(map[string]Keyed{"e": e}, "e")
	for _, c := range []struct{ typed, stands string }{
		{"TP2", "TP2"}, {"TTP2 x", "TTP2 x"}, {"tp2:1", "tp2:1"}, {"TPTP2", "TPTP2"},
	} {
		order.Focus("e")
		e.SelectAll()
		h.reads(c.typed)
		widgettest.Equal(t, "typed "+c.typed, e.Text, c.stands)
	}
	order.Focus("e")
	e.SelectAll()
	h.Write("TTP2:99")
	h.Press(fyne.KeyEscape)
	h.Write("!")
	widgettest.Equal(t, "codes", len(*codes), 0)
}
