package yard

import (
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"

	"fyne.io/fyne/v2"
)

// loadView is the form of the load in hand. The same rows serve every load:
// what a truck's form holds is the presenter's, and only the texts change.
type loadView struct {
	window  *shell.Window
	yard    *Yard
	Rows    map[string]*shell.FormRow
	held    map[string]string // what each field held when it was last shown
	order   []string
	Ring    *widgets.FocusOrder
	Sheet   *shell.FieldSheet
	last    []widgets.Keyed // stops after the fields
	lastIDs []string
	warned  bool            // the status line repeats what is wrong with a field
	arrived func(id string) // called with the field that the keyboard came to
	changed func()          // called after every change, for slip, figures and ruler
	grown   func()          // called when the rows need other room than before
	toForm  func() bool     // brings the form to the front, and reports whether it was not
}

func newLoadView(w *shell.Window, yard *Yard, changed func(), arrived func(string)) *loadView {
	return &loadView{
		window: w, yard: yard, changed: changed, arrived: arrived, Rows: map[string]*shell.FormRow{}, held: map[string]string{},
		Sheet: shell.NewFieldSheet(), grown: func() {}, toForm: func() bool { return false },
	}
}

// addLast gives a widget a place on the ring after the fields.
func (v *loadView) addLast(id string, stop widgets.Keyed) {
	v.last, v.lastIDs = append(v.last, stop), append(v.lastIDs, id)
}

func (v *loadView) form() *LoadForm { return v.yard.Form() }

// Show brings every row up to date. All sets the texts of all entries: another
// load came in hand. Otherwise the entry that has the keyboard keeps what the
// person types, unless its field has come to hold something else.
func (v *loadView) Show(all bool) {
	fields := v.form().Fields()
	v.arrange(fields)
	focused := v.Ring.Current()
	for _, f := range fields {
		row := v.Rows[f.ID]
		row.Set(f)
		if all || f.ID != focused || f.Value != v.held[f.ID] {
			shell.SetText(row.Entry, f)
		}
		v.held[f.ID] = f.Value
	}
	if v.Sheet.Follow() {
		v.grown()
	}
	v.changed()
}

// entry makes the place to type of a field and wires it to the form in hand.
func (v *loadView) entry(f model.Field) widgets.Keyed {
	switch f.Kind {
	case model.FindField, model.OpenField:
		return v.pick(f)
	}
	e := widgets.NewFieldEntry()
	if f.Kind == model.FigureField {
		e = widgets.NewFigureEntry()
	}
	e.OnEdit = func(text string) { v.typed(f.ID, text) }
	e.OnCommit = func(string) string { return v.commit(f.ID) }
	e.OnLeave = func(string) { v.leave() }
	return e
}

func (v *loadView) pick(f model.Field) widgets.Keyed {
	p := widgets.NewAutocomplete(f.Options)
	p.FreeText = f.Kind == model.OpenField
	p.OnPick = func(o model.Option) { v.typed(f.ID, o.Code) }
	p.OnUnpick = func() { v.typed(f.ID, "") }
	p.OnEdit = func(text string) {
		if p.FreeText || text == "" {
			v.typed(f.ID, text)
		} else {
			v.form().Search(f.ID, text)
		}
	}
	p.OnNoFit = func(text string) { v.typed(f.ID, text); v.sayWrong(f.ID) }
	p.OnCommit = func(string) string { return v.commit(f.ID) }
	p.OnLeave = func(text string) {
		if _, chosen := p.Chosen(); !chosen && !p.FreeText && text != v.form().Text(f.ID) {
			v.typed(f.ID, text)
		}
		v.leave()
	}
	return p
}

// typed hands a text to the form and shows what follows from it.
func (v *loadView) typed(id, text string) {
	v.form().Type(id, text)
	v.held[id] = v.form().Text(id)
	v.Show(false)
	v.sayWrong(id)
}

// sayWrong repeats on the status line what is wrong with a field: beside it
// there may be no room for the whole sentence.
func (v *loadView) sayWrong(id string) {
	row := v.Rows[id]
	switch {
	case row != nil && row.Field.State == model.Stop && row.Field.Note != "":
		v.window.Say(model.Warn, row.Field.Note)
		v.warned = true
	case v.warned:
		v.window.Say(model.Plain, "")
		v.warned = false
	}
}

// commit is Enter: what can stand goes into the book and the keyboard moves on.
// It stays where what was typed cannot stand.
func (v *loadView) commit(id string) (next string) {
	if row := v.Rows[id]; row.Field.State == model.Stop && v.form().IsTyped(id) {
		v.sayWrong(id)
		return id
	}
	v.leave()
	if v.window.Stage.FrontDialog() != nil { // a question came of it
		return id
	}
	if v.form().After(id) == "" {
		v.sayFilled()
		return id
	}
	return ""
}

// sayFilled says what is left to do after the last field. Enter stays there: on
// the button that issues the ticket it would issue it.
func (v *loadView) sayFilled() {
	if v.form().CanIssue() {
		v.window.Say(model.OK, session.Say("All is filled in. F12 issues the ticket."))
		return
	}
	v.window.Say(model.Wait, v.form().WhyNotIssue())
}

// leave writes down what can stand. By then the keyboard is elsewhere, and the
// slip follows it.
func (v *loadView) leave() {
	if err := v.form().Commit(); err != nil {
		v.window.Session.Fail(err)
	}
	v.window.Runner.Later(func() { v.Show(false) })
}

// escape goes back to the form, or puts back what the book has, if something else
// was typed.
func (v *loadView) escape() bool {
	if v.toForm() {
		v.focus()
		return true
	}
	id := v.Ring.Current()
	if !v.form().Restore(id) {
		return false
	}
	v.Show(true)
	return true
}

// focus puts the keyboard where work goes on.
func (v *loadView) focus() {
	v.focusOn(v.form().FirstToDo())
}

// focusOn puts the keyboard on a field and marks what stands in it.
func (v *loadView) focusOn(id string) {
	v.toForm()
	v.Ring.Focus(id)
	if row := v.Rows[id]; row != nil {
		if e, ok := row.Entry.(interface{ SelectAll() }); ok {
			e.SelectAll()
		}
	}
}

// came follows the keyboard to a field.
func (v *loadView) came(id string) {
	v.Sheet.Hold(v.Rows[id])
	v.arrived(id)
}

// arrange makes the rows that are new and puts all in their columns, when the
// fields are others than before. The ring follows the working order, whatever
// column a row stands in.
func (v *loadView) arrange(fields []model.Field) {
	if v.sameFields(fields) {
		return
	}
	v.order = v.order[:0]
	v.Ring = widgets.NewFocusOrder(v.window.Stage)
	v.Ring.OnEscape, v.Ring.OnArrive = v.escape, v.came
	for _, f := range fields {
		v.order = append(v.order, f.ID)
		v.Ring.Add(f.ID, v.row(f).Entry)
	}
	for i, stop := range v.last {
		v.Ring.Add(v.lastIDs[i], stop)
	}
	v.Sheet.Set(v.inColumns(fields))
}

func (v *loadView) sameFields(fields []model.Field) bool {
	if len(fields) != len(v.order) {
		return false
	}
	for i, f := range fields {
		if v.order[i] != f.ID {
			return false
		}
	}
	return true
}

// rowsAtLeft is how many rows the left column has while the sample has room for
// the remark beneath it.
const rowsAtLeft = 8

// inColumns sets the sample at the right and everything else at the left. The
// columns keep their order whatever the grain, so that the hand finds a field
// where it was; only the remark goes where there is room.
func (v *loadView) inColumns(fields []model.Field) (left, right []fyne.CanvasObject) {
	for _, part := range []model.Part{model.WhoPart, model.WeightPart, model.ClosePart, model.SamplePart} {
		for _, f := range fields {
			switch {
			case f.Part != part || f.ID == "remark":
			case part == model.SamplePart:
				right = append(right, v.Rows[f.ID])
			default:
				left = append(left, v.Rows[f.ID])
			}
		}
	}
	if len(right) < rowsAtLeft {
		return left, append(right, v.Rows["remark"])
	}
	return append(left, v.Rows["remark"]), right
}

// row is the row of a field, made the first time it is asked for.
func (v *loadView) row(f model.Field) *shell.FormRow {
	row := v.Rows[f.ID]
	if row == nil {
		row = shell.NewFormRow(f, v.entry(f), &shell.FormColumns{})
		row.Mute = f.ID == "remark"
		v.Rows[f.ID] = row
		shell.SetText(row.Entry, f)
	}
	return row
}
