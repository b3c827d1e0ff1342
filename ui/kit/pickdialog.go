package kit

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2/widget"
)

// Choice is a list to choose one from, in a dialog.
type Choice struct {
	Title, Text string
	Label       string // beside the find field
	Options     []model.Option
	Yes, No     string
}

// AskChoice lets a person choose one of the options, by code, by letters or by
// arrows. The list stands open from the start. The answer is called once.
func (s *Stage) AskChoice(c Choice, answer func(chosen model.Option, ok bool)) *Dialog {
	d := s.newDialog(c.Title, model.Plain, c.Text)
	d.onDismiss = func() { answer(model.Option{}, false) }
	pick := NewPickEntry(c.Options)
	field := NewField(c.Label, "", pick)
	field.Chars = 30
	d.body = append(d.body, NewSheet(field))
	d.ring.Add("pick", pick)
	submit := func() {
		if o, ok := pick.Chosen(); ok {
			d.finish(func() { answer(o, true) })
			return
		}
		field.SetProblem(words.Needed)
		d.ring.Focus("pick")
	}
	pick.OnCommit = func(string) string { submit(); return "pick" }
	pick.OnNoFit = func(string) { field.SetProblem(words.NoMatch) }
	pick.OnEdit = func(string) { field.SetProblem("") }
	d.addButton("no", or(c.No, words.Cancel), widget.MediumImportance, d.Dismiss)
	d.addButton("yes", or(c.Yes, words.Agree), widget.HighImportance, submit)
	d.show("pick")
	pick.down()
	return d
}
