package widgets

import (
	"strconv"
	"strings"
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgets/status"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
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
	for i, spec := range f.Fields {
		in := Input{Edit: func(string) { typed() }, Search: func(string) { typed() }}
		in.Refused = func(why string) { rows[i].say(model.Warn, why) }
		switch {
		case i == len(f.Fields)-1:
			in.Enter = func() string { return "yes" }
		case spec.Last:
			in.Enter = func() string { return endsAt(rows[i].entry) }
		}
		rows[i] = newFormRow(spec, in)
		d.order.Add(spec.ID, rows[i].entry)
	}
	d.body = append(d.body, stackRows(rows))
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
		row.say(model.Stop, fault)
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

// endsAt is the stop after a field that ends the form while it is empty.
func endsAt(entry Keyed) string {
	if strings.TrimSpace(InputValue(entry)) == "" {
		return "yes"
	}
	return ""
}

// formRow is a field made from its spec.
type formRow struct {
	spec  model.AskField
	field *Field
	entry Keyed
	table *askTable // that it is a cell of; nil where it has its own line
}

// say shows a sentence about the field: beside it, or under the table it is a cell of.
func (r *formRow) say(state model.State, text string) {
	if r.table != nil {
		r.table.say(r.spec, state, text)
		return
	}
	r.field.SetNote(state, text)
}

// stackRows puts the fields one under the other, and the cells of a table into it.
func stackRows(rows []*formRow) fyne.CanvasObject {
	var stacked []fyne.CanvasObject
	var table *askTable
	for _, row := range rows {
		if row.spec.Row == 0 {
			stacked, table = append(stacked, row.field), nil
			continue
		}
		if table == nil {
			table = newAskTable()
			stacked = append(stacked, table.all)
		}
		row.table = table
		table.add(row)
	}
	return NewSheet(stacked...)
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

// askTable is rows of cells beside each other under their labels, with one line below for what is to
// be said of a cell.
type askTable struct {
	all, grid *fyne.Container
	note      *status.Text
	about     string // the cell that the note is about
	heads     []*Heading
	cells     []*formRow
}

func newAskTable() *askTable {
	t := &askTable{note: status.NewText()}
	t.grid = container.New(t)
	t.all = container.New(layout.NewCustomPaddedVBoxLayout(theme.Padding()), t.grid, t.note)
	return t
}

// add puts a cell at the end of its row. The first row gives the labels.
func (t *askTable) add(row *formRow) {
	t.cells = append(t.cells, row)
	if row.spec.Row == t.cells[0].spec.Row {
		label := row.spec.Label
		if row.spec.Unit != "" {
			label += ", " + row.spec.Unit
		}
		t.heads = append(t.heads, NewHeading(label))
		t.grid.Add(t.heads[len(t.heads)-1])
	}
	t.grid.Add(row.entry)
}

// say shows a sentence about a cell; the first one that was found stays.
func (t *askTable) say(cell model.AskField, state model.State, text string) {
	switch {
	case text == "" && t.about == cell.ID:
		t.about = ""
		t.note.Say(model.Plain, "")
	case text != "" && (t.about == "" || t.about == cell.ID):
		t.about = cell.ID
		t.note.Say(state, strconv.Itoa(cell.Row)+". "+cell.Label+": "+text)
	}
}

// sizes are the widths of the columns and the heights of labels and cells.
func (t *askTable) sizes() (widths []float32, head, cell float32) {
	digit := fyne.MeasureText("0", theme.TextSize(), fyne.TextStyle{}).Width
	for i, h := range t.heads {
		chars := t.cells[i].spec.Chars
		widths = append(widths, max(float32(chars)*digit+2*theme.InnerPadding(), h.MinSize().Width+theme.InnerPadding()))
		head, cell = max(head, h.MinSize().Height), max(cell, t.cells[i].entry.MinSize().Height)
	}
	return widths, head, cell
}

// MinSize is that of labels and rows.
func (t *askTable) MinSize([]fyne.CanvasObject) fyne.Size {
	widths, head, cell := t.sizes()
	size := fyne.NewSize(0, head)
	for _, w := range widths {
		size.Width += w + theme.InnerPadding()
	}
	if len(widths) > 0 {
		size.Height += float32(len(t.cells)/len(widths)) * (cell + theme.Padding())
	}
	return size
}

// Layout sets the labels over their columns, and the cells row by row.
func (t *askTable) Layout([]fyne.CanvasObject, fyne.Size) {
	widths, head, cell := t.sizes()
	x := float32(0)
	for at, w := range widths {
		t.heads[at].Move(fyne.NewPos(x, 0))
		t.heads[at].Resize(fyne.NewSize(w, head))
		for i := at; i < len(t.cells); i += len(widths) {
			t.cells[i].entry.Move(fyne.NewPos(x, head+float32(i/len(widths))*(cell+theme.Padding())))
			t.cells[i].entry.Resize(fyne.NewSize(w, cell))
		}
		x += w + theme.InnerPadding()
	}
}
