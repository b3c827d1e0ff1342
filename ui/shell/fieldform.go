package shell

import (
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgets"

	"fyne.io/fyne/v2"
)

// FieldSource is a presenter with fields to fill.
type FieldSource interface {
	Fields() []model.Field
	// Type takes the text of a field.
	Type(id, text string)
	// Enter is Enter in a field. It answers the field to go to, empty for the one
	// that follows.
	Enter(id string) (next string)
	// Restore discards the text typed, and reports whether that changed anything.
	Restore(id string) bool
}

// FieldForm shows the fields of a presenter in two columns, in tab order. The set of fields may
// change with every keystroke.
type FieldForm struct {
	window     *Window
	source     FieldSource
	Rows       map[string]*FormRow
	held       map[string]string // what each field held when it was last shown
	typing     string            // the field whose text is being passed on
	order      []string
	FocusOrder *widgets.FocusOrder
	Sheet      *FieldSheet
	last       []widgets.Keyed // stops after the fields
	lastIDs    []string
	changed    func()      // called after every change
	Grown      func()      // called when the rows need other room than before
	ToForm     func() bool // brings the form to the front, and reports whether it was not
	FormHooks
}

// FormHooks customize a form; each may be nil.
type FormHooks struct {
	// Columns sets the rows of the fields into two columns. By default the sample and the closing
	// of a load are on the right.
	Columns func(fields []model.Field, rows map[string]*FormRow) (left, right []fyne.CanvasObject)
	// Arrived is called when a field gains the focus.
	Arrived func(id string)
	// Commit is Enter in a field, in place of handing it to the presenter.
	Commit func(id string) (next string)
	// Leave is called with the text when a field loses focus. unfound means that nothing on its
	// list matches the text.
	Leave func(id, text string, unfound bool)
	// Search is called with the letters typed to find something, while nothing is chosen.
	Search func(id, text string)
	// Wrong shows a field's error on the status line, or clears it.
	Wrong func(row *FormRow)
	// Home returns the field to focus first. The default is the first field.
	Home func() string
}

func NewFieldForm(w *Window, source FieldSource, changed func()) *FieldForm {
	return &FieldForm{
		window: w, source: source, changed: changed, Rows: map[string]*FormRow{}, held: map[string]string{}, FocusOrder: widgets.NewFocusOrder(w.UI),
		Sheet: NewFieldSheet(), Grown: func() {}, ToForm: func() bool { return false },
	}
}

// AddLast appends a widget to the focus order after the fields.
func (v *FieldForm) AddLast(id string, stop widgets.Keyed) {
	v.last, v.lastIDs = append(v.last, stop), append(v.lastIDs, id)
}

// Show updates every row. All sets the texts of all entries. Otherwise the focused entry keeps what
// the person types, unless its field has become another.
func (v *FieldForm) Show(all bool) {
	fields := v.source.Fields()
	v.arrange(fields)
	focused := v.FocusOrder.Current()
	for _, f := range fields {
		row := v.Rows[f.ID]
		row.Set(f)
		other := f.Value != v.held[f.ID] && f.ID != v.typing
		if all || f.ID != focused || other {
			widgets.SetInput(row.Entry, f)
		}
		v.held[f.ID] = f.Value
	}
	if v.Sheet.Follow() {
		v.Grown()
	}
	v.changed()
}

// arrange makes new rows and sets the columns, when the fields have changed.
func (v *FieldForm) arrange(fields []model.Field) {
	if v.isArranged(fields) {
		return
	}
	had := v.FocusOrder.Current()
	v.order = v.order[:0]
	v.FocusOrder = widgets.NewFocusOrder(v.window.UI)
	v.FocusOrder.OnEscape = v.escape
	v.FocusOrder.OnArrive = v.arrived
	for _, f := range fields {
		v.order = append(v.order, f.ID)
		v.FocusOrder.Add(f.ID, v.row(f).Entry)
		v.FocusOrder.Name(f.ID, f.Label)
	}
	for i, stop := range v.last {
		v.FocusOrder.Add(v.lastIDs[i], stop)
	}
	v.Sheet.Set(v.inColumns(fields))
	if had != "" && v.FocusOrder.Current() != had {
		v.FocusOrder.Focus(had)
	}
}

// inColumns sets the rows into their columns.
func (v *FieldForm) inColumns(fields []model.Field) (left, right []fyne.CanvasObject) {
	if v.Columns != nil {
		return v.Columns(fields, v.Rows)
	}
	for _, f := range fields {
		if f.Part == model.SamplePart || f.Part == model.ClosePart {
			right = append(right, v.Rows[f.ID])
		} else {
			left = append(left, v.Rows[f.ID])
		}
	}
	return left, right
}

// arrived follows the focus to a field.
func (v *FieldForm) arrived(id string) {
	v.Sheet.Hold(v.Rows[id])
	if v.Arrived != nil {
		v.Arrived(id)
	}
}

func (v *FieldForm) isArranged(fields []model.Field) bool {
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

// row returns the row of a field, made on first use.
func (v *FieldForm) row(f model.Field) *FormRow {
	row := v.Rows[f.ID]
	if row == nil {
		row = NewFormRow(v.window.Session.Language, f, v.entry(f), &FormColumns{})
		v.Rows[f.ID] = row
	}
	row.Set(f)
	return row
}

// entry makes the place to type of a field.
func (v *FieldForm) entry(f model.Field) widgets.Keyed {
	in := widgets.Input{Edit: func(value string) { v.Typed(f.ID, value) }}
	if f.Kind != model.TickField { // Enter in a box walks on
		in.Enter = func() string { return v.enter(f.ID) }
	}
	if v.Leave != nil {
		in.Leave = func(text string, unfound bool) { v.Leave(f.ID, text, unfound) }
	}
	in.Search = func(text string) {
		if v.Search != nil {
			v.Search(f.ID, text)
		}
	}
	in.Refused = func(why string) {
		v.window.Say(model.Warn, v.window.Session.Say("%s: %s", v.Rows[f.ID].Field.Label, why))
	}
	return in.New(f)
}

// Typed passes a text to the presenter and shows the result.
func (v *FieldForm) Typed(id, text string) {
	v.typing = id
	v.source.Type(id, text)
	v.Show(false)
	v.typing = ""
	v.SayWrong(id)
}

// SayWrong repeats a field's error on the status line: beside the field there may be no room for
// the whole sentence.
func (v *FieldForm) SayWrong(id string) {
	row := v.Rows[id]
	switch {
	case v.Wrong != nil:
		v.Wrong(row)
	case row.IsWrong():
		v.window.Say(model.Stop, row.Field.Note)
	case v.window.Status.State() == model.Stop:
		v.window.Say(model.Plain, "")
	}
}

// enter passes Enter to the presenter, which returns the next focus.
func (v *FieldForm) enter(id string) (next string) {
	if v.Commit != nil {
		return v.Commit(id)
	}
	next = v.source.Enter(id)
	v.Show(true)
	if next == id { // refused: the next key replaces the text
		v.Select(id)
	}
	return next
}

// escape returns to the form, or discards what was typed, if anything was.
func (v *FieldForm) escape() bool {
	if v.ToForm() {
		v.Focus(v.home())
		return true
	}
	if !v.source.Restore(v.FocusOrder.Current()) {
		return false
	}
	v.Show(true)
	return true
}

func (v *FieldForm) home() string {
	if v.Home != nil {
		return v.Home()
	}
	return v.order[0]
}

// Focus moves the focus to a field and selects its text.
func (v *FieldForm) Focus(id string) {
	v.ToForm()
	v.FocusOrder.Focus(id)
	v.Select(id)
}

// Select selects the text of a field, so that the next key replaces it.
func (v *FieldForm) Select(id string) {
	if row := v.Rows[id]; row != nil {
		if e, ok := row.Entry.(interface{ SelectAll() }); ok {
			e.SelectAll()
		}
	}
}
