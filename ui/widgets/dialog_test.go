package widgets

import (
	"fmt"
	"strings"
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
)

// boxed is a window with a field that has the focus, and its commands.
type boxed struct {
	*house
	deeds deeds
	field *FieldEntry
	order *FocusOrder
	said  []string
}

func newBoxed(t *testing.T) *boxed {
	t.Helper()
	b := &boxed{deeds: deeds{open: true}}
	b.house = newHouse(t, b.deeds.commands()...)
	b.deeds.watch(b.Commands)
	b.field = NewFieldEntry()
	b.order = b.Cast(map[string]Keyed{"field": b.field}, "field")
	b.Window.Resize(fyne.NewSize(1280, 720))
	b.order.Focus("field")
	return b
}

func (b *boxed) say(format string, args ...any) {
	b.said = append(b.said, fmt.Sprintf(format, args...))
}

func (b *boxed) heard(want ...string) {
	b.T.Helper()
	widgettest.Equal(b.T, "said", strings.Join(b.said, "; "), strings.Join(want, "; "))
	b.said = nil
}

// gone fails the test unless the box is away and all is as before.
func (b *boxed) gone(d *Dialog) {
	b.T.Helper()
	widgettest.Equal(b.T, "open", d.Open(), false)
	widgettest.Equal(b.T, "in front", b.UI.FrontDialog() == nil, true)
	widgettest.Equal(b.T, "overlays", b.UI.canvas.Overlays().Top() == nil, true)
	widgettest.Equal(b.T, "commands held back", b.Commands.BoxOpen(), false)
	b.At(b.order, "field")
}

func (b *boxed) ask(q Question) *Dialog {
	return b.UI.Ask(q, func(yes bool) { b.say("%v", yes) })
}

func TestAskIsAnsweredByKeyboard(t *testing.T) {
	for _, c := range []struct {
		name   string
		danger bool
		keys   []fyne.KeyName
		want   string
	}{
		{"Enter goes on", false, []fyne.KeyName{fyne.KeyReturn}, "true"},
		{"keypad Enter too", false, []fyne.KeyName{fyne.KeyEnter}, "true"},
		{"Escape does not", false, []fyne.KeyName{fyne.KeyEscape}, "false"},
		{"danger starts on the safe side", true, []fyne.KeyName{fyne.KeyReturn}, "false"},
		{"Tab and Enter go into danger", true, []fyne.KeyName{fyne.KeyTab, fyne.KeyReturn}, "true"},
		{"so does the arrow", true, []fyne.KeyName{fyne.KeyRight, fyne.KeySpace}, "true"},
		{"left and right cancel out", true, []fyne.KeyName{fyne.KeyRight, fyne.KeyLeft, fyne.KeyReturn}, "false"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBoxed(t)
			d := b.ask(Question{Title: "Void?", Text: "The number is kept.", Danger: c.danger})
			b.Press(c.keys...)
			b.heard(c.want)
			b.gone(d)
		})
	}
}

func TestAnswerComesOnce(t *testing.T) {
	b := newBoxed(t)
	d := b.ask(Question{Title: "Settle?"})
	b.Press(fyne.KeyReturn)
	d.Dismiss()
	d.Dismiss()
	b.heard("true")
}

func TestOnlyModalSafeCommandsPassABox(t *testing.T) {
	b := newBoxed(t)
	d := b.ask(Question{Title: "Settle?"})
	b.Press(fyne.KeyF2, fyne.KeyF9, fyne.KeyF1)
	b.UI.Chord(Ctrl(fyne.KeyN))
	widgettest.Equal(t, "ran", strings.Join(b.deeds.ran, ","), "help")
	widgettest.Equal(t, "refused", strings.Join(b.deeds.refused, ","), "new,settle,new")
	b.Press(fyne.KeyEscape) // the box's own, not the command on Escape
	b.gone(d)
	b.Press(fyne.KeyF2)
	widgettest.Equal(t, "ran", strings.Join(b.deeds.ran, ","), "help,new")
}

// TestClickBesideABox: with nothing focused, Escape still dismisses and any
// other key finds the box again.
func TestClickBesideABox(t *testing.T) {
	b := newBoxed(t)
	d := b.ask(Question{Title: "Settle?"})
	b.UI.canvas.Unfocus()
	b.Press(fyne.KeyLeft)
	b.At(d.FocusOrder(), "yes") // where the box began
	b.UI.canvas.Unfocus()
	b.Press(fyne.KeyEscape)
	b.heard("false")
	b.gone(d)
}

func TestBoxOnBox(t *testing.T) {
	b := newBoxed(t)
	first := b.ask(Question{Title: "Settle?"})
	b.At(first.FocusOrder(), "yes")
	second := b.UI.Tell(Notice{Title: "The printer is out of paper"}, func() { b.say("told") })
	widgettest.Equal(t, "in front", b.UI.FrontDialog(), second)
	b.Press(fyne.KeyReturn)
	b.heard("told")
	widgettest.Equal(t, "in front", b.UI.FrontDialog(), first)
	b.At(first.FocusOrder(), "yes")
	widgettest.Equal(t, "commands held back", b.Commands.BoxOpen(), true)
	b.Press(fyne.KeyReturn)
	b.heard("true")
	b.gone(first)
}

// TestAnswerMayOpenTheNextBox and move the focus: the first is gone by then.
func TestAnswerMayOpenTheNextBox(t *testing.T) {
	b := newBoxed(t)
	var next *Dialog
	b.UI.Ask(Question{Title: "Refuse the load?"}, func(bool) {
		next = b.askReason(model.Ask{Title: "Why?"}, false)
	})
	b.Press(fyne.KeyReturn)
	b.At(next.FocusOrder(), "reason")
	b.Write("hot")
	b.Press(fyne.KeyReturn, fyne.KeyReturn)
	b.heard("hot true")
	b.gone(next)
}

// askReason asks for a reason and records what was answered.
func (b *boxed) askReason(ask model.Ask, required bool) *Dialog {
	ask.Fields = []model.AskField{{ID: "reason", Label: "Reason", Chars: 40, Required: required}}
	return b.UI.AskForm(ask, func(v map[string]string, ok bool) { b.say("%s %v", v["reason"], ok) })
}

func TestReasonIsRequired(t *testing.T) {
	b := newBoxed(t)
	d := b.askReason(model.Ask{Title: "Void"}, true)
	b.Press(fyne.KeyReturn, fyne.KeyReturn)
	b.Write("   ")
	b.Press(fyne.KeyReturn, fyne.KeyReturn)
	b.heard()
	b.At(d.FocusOrder(), "reason")
	b.Write("wrong grower")
	b.Press(fyne.KeyReturn, fyne.KeyReturn)
	b.heard("wrong grower true")
	b.gone(d)
}

// TestEnterGoesToTheButton: in every box Enter in the last field goes to the button
// that does what is asked, and does it there; Tab goes the same way.
func TestEnterGoesToTheButton(t *testing.T) {
	for _, danger := range []bool{false, true} {
		for _, key := range []fyne.KeyName{fyne.KeyReturn, fyne.KeyTab} {
			b := newBoxed(t)
			d := b.askReason(model.Ask{Title: "Void", Danger: danger}, false)
			b.Write("wrong grower")
			b.Press(key)
			b.heard()
			b.At(d.FocusOrder(), "yes")
			b.Press(fyne.KeyReturn)
			b.heard("wrong grower true")
		}
	}
}

// TestABoxSaysWhyItStandsAgain: what failed is read over the buttons.
func TestABoxSaysWhyItStandsAgain(t *testing.T) {
	b := newBoxed(t)
	d := b.askReason(model.Ask{Title: "Void", Fault: "Ticket 7 is void already."}, false)
	widgettest.Equal(t, "state", d.fault.State(), model.Stop)
	widgettest.Equal(t, "said", d.fault.Text(), "Ticket 7 is void already.")
}

func exampleFields() []model.AskField {
	return []model.AskField{
		{ID: "grower", Label: "Grower", Options: widgettest.Growers(), Required: true},
		{ID: "truck", Label: "Truck", Options: []model.Option{{Code: "T1"}}, FreeText: true},
		{ID: "moisture", Label: "Moisture", Unit: "%", Figures: true, Value: "17.2"},
		{ID: "keep", Label: "Keep the sample", Checkbox: true, Value: model.TickOn},
	}
}

func TestFormGivesItsValues(t *testing.T) {
	b := newBoxed(t)
	d := b.UI.AskForm(model.Ask{Title: "Load", Fields: exampleFields()}, func(v map[string]string, ok bool) {
		b.say("%v %s/%s/%s/%s", ok, v["grower"], v["truck"], v["moisture"], v["keep"])
	})
	widgettest.Equal(t, "order", strings.Join(d.FocusOrder().IDs(), " "), "grower truck moisture keep yes no")
	b.Press(fyne.KeyTab, fyne.KeyTab, fyne.KeyTab, fyne.KeyReturn, fyne.KeyReturn) // to the tick, the button, and on
	b.heard()
	b.At(d.FocusOrder(), "grower") // still needed
	b.Write("114")
	b.Press(fyne.KeyReturn)
	b.At(d.FocusOrder(), "truck")
	b.Write("blue one")
	b.Press(fyne.KeyReturn)
	b.Write("a16.5") // the letter is kept out, the rest replaces
	b.Press(fyne.KeyReturn)
	b.At(d.FocusOrder(), "keep")
	b.Press(fyne.KeySpace, fyne.KeyReturn, fyne.KeyReturn)
	b.heard("true 114/blue one/16.5/")
	b.gone(d)
}

// Typed is called with all values at every change, for every kind of field.
func TestFormTellsEveryChange(t *testing.T) {
	b := newBoxed(t)
	b.UI.AskForm(model.Ask{Title: "Load", Fields: exampleFields(), Typed: func(v map[string]string) {
		b.say("%s/%s/%s/%s", v["grower"], v["truck"], v["moisture"], v["keep"])
	}}, func(map[string]string, bool) {})
	b.Press(fyne.KeyTab, fyne.KeyTab)
	b.Write("7")
	b.heard("//7/on")
	b.Press(fyne.KeyTab, fyne.KeySpace)
	b.heard("//7/")
}

func TestFormChecksBeforeGoingOn(t *testing.T) {
	b := newBoxed(t)
	var asked int
	form := model.Ask{Title: "Load", Fields: []model.AskField{{ID: "gross", Label: "Gross"}, {ID: "tare", Label: "Tare"}},
		Check: func(v map[string]string) map[string]string {
			asked++
			if v["gross"] < v["tare"] {
				return map[string]string{"gross": "Gross 2 is less than tare 3. Swap the two."}
			}
			return nil
		}}
	d := b.UI.AskForm(form, func(v map[string]string, ok bool) { b.say("%v %v", ok, v["gross"]) })
	b.Write("2")
	b.Press(fyne.KeyReturn)
	b.Write("3")
	b.Press(fyne.KeyReturn, fyne.KeyReturn)
	widgettest.Equal(t, "asked", asked, 1)
	b.At(d.FocusOrder(), "gross")
	b.heard()
	b.Write("4")
	b.Press(fyne.KeyReturn, fyne.KeyReturn, fyne.KeyReturn)
	b.heard("true 4")
	b.gone(d)
}

func TestFormEscapes(t *testing.T) {
	b := newBoxed(t)
	d := b.UI.AskForm(model.Ask{Title: "Load", Fields: exampleFields()}, func(v map[string]string, ok bool) { b.say("%v %v", v == nil, ok) })
	b.Write("farm")
	b.Press(fyne.KeyEscape) // the list
	widgettest.Equal(t, "open", d.Open(), true)
	b.Press(fyne.KeyEscape) // the box
	b.heard("true false")
	b.gone(d)
}

func TestChoice(t *testing.T) {
	for _, c := range []struct {
		name  string
		write string
		keys  []fyne.KeyName
		want  string
	}{
		{"by arrows", "", []fyne.KeyName{fyne.KeyDown, fyne.KeyReturn, fyne.KeyReturn}, "114 true"},
		{"by letters", "mill", []fyne.KeyName{fyne.KeyReturn, fyne.KeyReturn}, "207 true"},
		{"by code", "118", []fyne.KeyName{fyne.KeyReturn, fyne.KeyReturn}, "118 true"},
		{"none", "zz", []fyne.KeyName{fyne.KeyReturn, fyne.KeyEscape, fyne.KeyEscape}, " false"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBoxed(t)
			d := b.UI.AskChoice(Choice{Title: "Grower", Label: "Find", Options: widgettest.Growers()}, func(o model.Option, ok bool) { b.say("%s %v", o.Code, ok) })
			b.Write(c.write)
			b.Press(c.keys...)
			b.heard(c.want)
			b.gone(d)
		})
	}
}

func TestBoxesSpeakTheWordsGiven(t *testing.T) {
	b := newBoxed(t)
	b.UI.words.Agree, b.UI.words.Cancel = "D'accord", "Annuler"
	d := b.ask(Question{Title: "?"})
	widgettest.Equal(t, "buttons", d.buttons[0].Text+" "+d.buttons[1].Text, "D'accord Annuler")
	d.Dismiss()
	d = b.ask(Question{Title: "?", Yes: "Settle", No: "Wait"})
	widgettest.Equal(t, "own words", d.buttons[0].Text+" "+d.buttons[1].Text, "Settle Wait")
}

// A table in a box: Enter goes from cell to cell, an empty last cell of a row ends it, and a fault names
// its row.
func TestATableInABox(t *testing.T) {
	h := newBoxed(t)
	var got map[string]string
	cell := func(id string, row int, last bool) model.AskField {
		return model.AskField{ID: id, Label: "Oven", Unit: "%", Row: row, Chars: 6, Figures: true, Last: last}
	}
	refuse := true
	h.UI.AskForm(model.Ask{
		Title: "Round", Fields: []model.AskField{cell("a.1", 1, false), cell("b.1", 1, false), cell("a.2", 2, true), cell("b.2", 2, false)},
		Check: func(map[string]string) map[string]string {
			if refuse {
				return map[string]string{"b.1": "too dry"}
			}
			return nil
		},
	}, func(values map[string]string, ok bool) { got = values })
	write := func(text string) {
		h.UI.Write(text)
		h.UI.Press(fyne.KeyEnter)
	}
	write("15")
	write("1")
	write("") // the second row is left empty: on to the button
	h.UI.Press(fyne.KeyEnter)
	if got != nil {
		t.Fatalf("what was refused was answered: %v", got)
	}
	refuse = false
	write("16") // the keyboard is back at the cell at fault, selected
	write("")
	h.UI.Press(fyne.KeyEnter)
	if got["a.1"] != "15" || got["b.1"] != "16" || got["a.2"] != "" {
		t.Errorf("the table answers %v", got)
	}
}

func TestSecretFieldIsNotShown(t *testing.T) {
	for secret := range map[bool]bool{true: true, false: false} {
		field := model.AskField{ID: "pin", Label: "PIN", Secret: secret}.Field()
		e, is := Input{}.New(field).(*FieldEntry)
		if !is || e.Password != secret {
			t.Errorf("secret is %v, and the entry hides its text: %v", secret, is && e.Password)
		}
	}
}

// A sheet of more fields than the window is high keeps its buttons in sight, and shows the field that
// has the keyboard.
func TestABoxHigherThanTheWindow(t *testing.T) {
	b := newBoxed(t)
	b.Window.Resize(fyne.NewSize(800, 360))
	var fields []model.AskField
	for i := range 16 {
		fields = append(fields, model.AskField{ID: fmt.Sprint(i), Label: fmt.Sprint("Field ", i)})
	}
	d := b.UI.AskForm(model.Ask{Title: "A long sheet", Fields: fields, Fault: "The disk is full."}, func(map[string]string, bool) {})
	inSight := func(what string, o fyne.CanvasObject) {
		t.Helper()
		top := fyne.CurrentApp().Driver().AbsolutePositionForObject(o).Y
		if top < 0 || top+o.Size().Height > b.UI.canvas.Size().Height {
			t.Errorf("%s lies from %v to %v in a window %v high", what, top, top+o.Size().Height, b.UI.canvas.Size().Height)
		}
	}
	inSight("the button", d.buttons[0])
	inSight("what went wrong", d.fault)
	for i := range fields {
		b.At(d.FocusOrder(), fmt.Sprint(i))
		inSight(fields[i].Label, b.UI.canvas.Focused().(fyne.CanvasObject))
		b.Press(fyne.KeyTab)
	}
	d.Dismiss()
}
