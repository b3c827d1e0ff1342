package kit

import (
	"fmt"
	"strings"
	"tenthpoint/ui/model"
	"testing"

	"fyne.io/fyne/v2"
)

// boxed is a window with a field that has the keyboard, and its commands.
type boxed struct {
	*house
	deeds deeds
	field *FieldEntry
	ring  *Ring
	said  []string
}

func newBoxed(t *testing.T) *boxed {
	t.Helper()
	b := &boxed{deeds: deeds{open: true}}
	b.house = newHouse(t, b.deeds.commands()...)
	b.deeds.watch(b.commands)
	b.field = NewFieldEntry()
	b.ring = b.cast(map[string]Keyed{"field": b.field}, "field")
	b.window.Resize(fyne.NewSize(1280, 720))
	b.ring.Focus("field")
	return b
}

func (b *boxed) say(format string, args ...any) {
	b.said = append(b.said, fmt.Sprintf(format, args...))
}

func (b *boxed) heard(want ...string) {
	b.t.Helper()
	equal(b.t, "said", strings.Join(b.said, "; "), strings.Join(want, "; "))
	b.said = nil
}

// gone fails the test unless the box is away and all is as before.
func (b *boxed) gone(d *Dialog) {
	b.t.Helper()
	equal(b.t, "open", d.Open(), false)
	equal(b.t, "in front", b.stage.FrontDialog() == nil, true)
	equal(b.t, "overlays", b.stage.canvas.Overlays().Top() == nil, true)
	equal(b.t, "commands held back", b.commands.BoxOpen(), false)
	b.at(b.ring, "field")
}

func (b *boxed) ask(q Question) *Dialog {
	return b.stage.Ask(q, func(yes bool) { b.say("%v", yes) })
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
			b.press(c.keys...)
			b.heard(c.want)
			b.gone(d)
		})
	}
}

func TestAnswerComesOnce(t *testing.T) {
	b := newBoxed(t)
	d := b.ask(Question{Title: "Settle?"})
	b.press(fyne.KeyReturn)
	d.Dismiss()
	d.Dismiss()
	b.heard("true")
}

func TestOnlyModalSafeCommandsPassABox(t *testing.T) {
	b := newBoxed(t)
	d := b.ask(Question{Title: "Settle?"})
	b.press(fyne.KeyF2, fyne.KeyF9, fyne.KeyF1)
	b.stage.Chord(Ctrl(fyne.KeyN))
	equal(t, "ran", strings.Join(b.deeds.ran, ","), "help")
	equal(t, "refused", strings.Join(b.deeds.refused, ","), "new,settle,new")
	b.press(fyne.KeyEscape) // the box's own, not the command on Escape
	b.gone(d)
	b.press(fyne.KeyF2)
	equal(t, "ran", strings.Join(b.deeds.ran, ","), "help,new")
}

// TestClickBesideABox: with nothing focused, Escape still dismisses and any
// other key finds the box again.
func TestClickBesideABox(t *testing.T) {
	b := newBoxed(t)
	d := b.ask(Question{Title: "Settle?"})
	b.stage.canvas.Unfocus()
	b.press(fyne.KeyLeft)
	b.at(d.Ring(), "no")
	b.stage.canvas.Unfocus()
	b.press(fyne.KeyEscape)
	b.heard("false")
	b.gone(d)
}

func TestBoxOnBox(t *testing.T) {
	b := newBoxed(t)
	first := b.ask(Question{Title: "Settle?"})
	b.at(first.Ring(), "yes")
	second := b.stage.Tell(Notice{Title: "The printer is out of paper"}, func() { b.say("told") })
	equal(t, "in front", b.stage.FrontDialog(), second)
	b.press(fyne.KeyReturn)
	b.heard("told")
	equal(t, "in front", b.stage.FrontDialog(), first)
	b.at(first.Ring(), "yes")
	equal(t, "commands held back", b.commands.BoxOpen(), true)
	b.press(fyne.KeyReturn)
	b.heard("true")
	b.gone(first)
}

// TestAnswerMayOpenTheNextBox and move the keyboard: the first is gone by then.
func TestAnswerMayOpenTheNextBox(t *testing.T) {
	b := newBoxed(t)
	var next *Dialog
	b.stage.Ask(Question{Title: "Refuse the load?"}, func(bool) {
		next = b.stage.AskReason(Reason{Title: "Why?", Label: "Reason"}, func(reason string, ok bool) { b.say("%s %v", reason, ok) })
	})
	b.press(fyne.KeyReturn)
	b.at(next.Ring(), "reason")
	b.write("hot")
	b.press(fyne.KeyReturn)
	b.heard("hot true")
	b.gone(next)
}

func TestReasonIsRequired(t *testing.T) {
	b := newBoxed(t)
	d := b.stage.AskReason(Reason{Title: "Void", Label: "Reason", Required: true}, func(reason string, ok bool) { b.say("%s %v", reason, ok) })
	b.press(fyne.KeyReturn)
	b.write("   ")
	b.press(fyne.KeyReturn)
	b.heard()
	b.at(d.Ring(), "reason")
	b.write("wrong grower")
	b.press(fyne.KeyReturn)
	b.heard("wrong grower true")
	b.gone(d)
}

// TestDangerousReasonGoesToTheSafeButton: Enter in the field does not void.
func TestDangerousReasonGoesToTheSafeButton(t *testing.T) {
	b := newBoxed(t)
	d := b.stage.AskReason(Reason{Title: "Void", Label: "Reason", Danger: true}, func(reason string, ok bool) { b.say("%s %v", reason, ok) })
	b.write("wrong grower")
	b.press(fyne.KeyReturn)
	b.at(d.Ring(), "no")
	b.press(fyne.KeyTab, fyne.KeyReturn)
	b.heard("wrong grower true")
}

func exampleFields() []model.AskField {
	return []model.AskField{
		{ID: "grower", Label: "Grower", Options: exampleGrowers(), Required: true},
		{ID: "truck", Label: "Truck", Options: []model.Option{{Code: "T1"}}, FreeText: true},
		{ID: "moisture", Label: "Moisture", Unit: "%", Figures: true, Value: "17.2"},
		{ID: "keep", Label: "Keep the sample", Tick: true, Value: model.TickOn},
	}
}

func TestFormGivesItsValues(t *testing.T) {
	b := newBoxed(t)
	d := b.stage.AskForm(model.Ask{Title: "Load", Fields: exampleFields()}, func(v map[string]string, ok bool) {
		b.say("%v %s/%s/%s/%s", ok, v["grower"], v["truck"], v["moisture"], v["keep"])
	})
	equal(t, "ring", strings.Join(d.Ring().IDs(), " "), "grower truck moisture keep no yes")
	b.press(fyne.KeyTab, fyne.KeyTab, fyne.KeyTab, fyne.KeyReturn) // to the tick, and on
	b.heard()
	b.at(d.Ring(), "grower") // still needed
	b.write("114")
	b.press(fyne.KeyReturn)
	b.at(d.Ring(), "truck")
	b.write("blue one")
	b.press(fyne.KeyReturn)
	b.write("a16.5") // the letter is kept out, the rest replaces
	b.press(fyne.KeyReturn)
	b.at(d.Ring(), "keep")
	b.press(fyne.KeySpace, fyne.KeyReturn)
	b.heard("true 114/blue one/16.5/")
	b.gone(d)
}

// Whoever asks is told all values at every change, whatever kind of field it is
// made in.
func TestFormTellsEveryChange(t *testing.T) {
	b := newBoxed(t)
	b.stage.AskForm(model.Ask{Title: "Load", Fields: exampleFields(), Typed: func(v map[string]string) {
		b.say("%s/%s/%s/%s", v["grower"], v["truck"], v["moisture"], v["keep"])
	}}, func(map[string]string, bool) {})
	b.press(fyne.KeyTab, fyne.KeyTab)
	b.write("7")
	b.heard("//7/on")
	b.press(fyne.KeyTab, fyne.KeySpace)
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
	d := b.stage.AskForm(form, func(v map[string]string, ok bool) { b.say("%v %v", ok, v["gross"]) })
	b.write("2")
	b.press(fyne.KeyReturn)
	b.write("3")
	b.press(fyne.KeyReturn)
	equal(t, "asked", asked, 1)
	b.at(d.Ring(), "gross")
	b.heard()
	b.write("4")
	b.press(fyne.KeyReturn, fyne.KeyReturn)
	b.heard("true 4")
	b.gone(d)
}

func TestFormEscapes(t *testing.T) {
	b := newBoxed(t)
	d := b.stage.AskForm(model.Ask{Title: "Load", Fields: exampleFields()}, func(v map[string]string, ok bool) { b.say("%v %v", v == nil, ok) })
	b.write("farm")
	b.press(fyne.KeyEscape) // the list
	equal(t, "open", d.Open(), true)
	b.press(fyne.KeyEscape) // the box
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
		{"by arrows", "", []fyne.KeyName{fyne.KeyDown, fyne.KeyReturn}, "114 true"},
		{"by letters", "mill", []fyne.KeyName{fyne.KeyReturn}, "207 true"},
		{"by code", "118", []fyne.KeyName{fyne.KeyReturn}, "118 true"},
		{"none", "zz", []fyne.KeyName{fyne.KeyReturn, fyne.KeyEscape, fyne.KeyEscape}, " false"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBoxed(t)
			d := b.stage.AskChoice(Choice{Title: "Grower", Label: "Find", Options: exampleGrowers()}, func(o model.Option, ok bool) { b.say("%s %v", o.Code, ok) })
			b.write(c.write)
			b.press(c.keys...)
			b.heard(c.want)
			b.gone(d)
		})
	}
}

func TestBoxesSpeakTheWordsGiven(t *testing.T) {
	t.Cleanup(func() { SetWords(EnglishWords()) })
	w := EnglishWords()
	w.Agree, w.Cancel = "D'accord", "Annuler"
	SetWords(w)
	b := newBoxed(t)
	d := b.ask(Question{Title: "?"})
	equal(t, "buttons", d.buttons[0].Text+" "+d.buttons[1].Text, "Annuler D'accord")
	d.Dismiss()
	d = b.ask(Question{Title: "?", Yes: "Settle", No: "Wait"})
	equal(t, "own words", d.buttons[0].Text+" "+d.buttons[1].Text, "Wait Settle")
}
