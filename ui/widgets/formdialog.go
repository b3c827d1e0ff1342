package widgets

import (
	"strings"
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Every dialog has one rule for Enter: in a field it goes to the next one, in the last to the
// confirm button, and on a button it presses it.

// AskForm shows a form. The answer is called once: with the values by field id
// and true, or with nil and false.
func (s *UIContext) AskForm(f model.Ask, answer func(values map[string]string, ok bool)) *Dialog {
	d := s.newDialog(f.Title, f.State, f.Text)
	d.onDismiss = func() { answer(nil, false) }
	rows := make([]*formRow, len(f.Fields))
	submit := func() {
		values := formValues(rows)
		if bad := formFaults(f, rows, values, s.words.Needed); bad != "" {
			d.order.Focus(bad)
			return
		}
		d.finish(func() { answer(values, true) })
	}
	typed := func() {
		if f.Typed != nil {
			f.Typed(formValues(rows))
		}
	}
	var stacked []fyne.CanvasObject
	for i, spec := range f.Fields {
		in := Input{Edit: func(string) { typed() }, Search: func(string) { typed() }}
		in.Refused = func(why string) { rows[i].field.SetNote(model.Warn, why) }
		if i == len(f.Fields)-1 {
			in.Enter = func() string { return "yes" }
		}
		rows[i] = newFormRow(spec, in)
		stacked = append(stacked, rows[i].field)
		d.order.Add(spec.ID, rows[i].entry)
	}
	d.body = append(d.body, NewSheet(stacked...))
	d.addFault(f.Fault)
	importance := widget.HighImportance
	if f.Danger {
		importance = widget.DangerImportance
	}
	d.addButton("yes", or(f.Yes, s.words.Agree), importance, submit)
	d.addButton("no", or(f.No, s.words.Cancel), widget.MediumImportance, d.Dismiss)
	if len(rows) == 0 {
		return d.show("no")
	}
	return d.show(f.Fields[0].ID)
}

// formFaults shows the errors beside the fields, for a required one without a text the words for
// that, and returns the id of the first invalid one, or "".
func formFaults(f model.Ask, rows []*formRow, values map[string]string, needed string) string {
	var faults map[string]string
	if f.Check != nil {
		faults = f.Check(values)
	}
	first := ""
	for _, row := range rows {
		fault := faults[row.spec.ID]
		if row.spec.Required && strings.TrimSpace(values[row.spec.ID]) == "" {
			fault = needed
		}
		row.field.SetProblem(fault)
		if fault != "" && first == "" {
			first = row.spec.ID
		}
	}
	return first
}

func formValues(rows []*formRow) map[string]string {
	values := make(map[string]string, len(rows))
	for _, row := range rows {
		values[row.spec.ID] = InputValue(row.entry)
	}
	return values
}

// formRow is a field made from its spec.
type formRow struct {
	spec  model.AskField
	field *Field
	entry Keyed
}

func newFormRow(spec model.AskField, in Input) *formRow {
	f := spec.Field()
	row := &formRow{spec: spec, entry: in.New(f)}
	if box, tick := row.entry.(*Checkbox); tick { // a box has its label beside it
		box.Text, f.Label = spec.Label, ""
	}
	row.field = NewField(f.Label, f.Unit, row.entry)
	row.field.Chars = f.Chars
	row.field.SetReading(f.Reading)
	return row
}

// Choice is a list to choose one from, in a dialog.
type Choice struct {
	Title, Text string
	Label       string // beside the find field
	Options     []model.Option
	Yes, No     string
	Fault       string // why the previous choice was invalid
}

// AskChoice lets a person choose one of the options, by code, by letters or by arrows. The list is
// open from the start. answer is called once.
func (s *UIContext) AskChoice(c Choice, answer func(chosen model.Option, ok bool)) *Dialog {
	d := s.newDialog(c.Title, model.Plain, c.Text)
	d.onDismiss = func() { answer(model.Option{}, false) }
	pick := NewAutocomplete(c.Options)
	field := NewField(c.Label, "", pick)
	field.Chars = 30
	d.body = append(d.body, NewSheet(field))
	d.order.Add("pick", pick)
	submit := func() {
		if o, ok := pick.Chosen(); ok {
			d.finish(func() { answer(o, true) })
			return
		}
		field.SetProblem(s.words.Needed)
		d.order.Focus("pick")
	}
	pick.OnCommit = func(string) string { return "yes" }
	pick.OnNoFit = func(string) { field.SetProblem(s.words.NoMatch) }
	pick.OnEdit = func(string) { field.SetProblem("") }
	d.addFault(c.Fault)
	d.addButton("yes", or(c.Yes, s.words.Agree), widget.HighImportance, submit)
	d.addButton("no", or(c.No, s.words.Cancel), widget.MediumImportance, d.Dismiss)
	d.show("pick")
	pick.down()
	return d
}
