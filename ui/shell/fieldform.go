package shell

import (
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgets"

	"fyne.io/fyne/v2"
)

// fieldSource is a presenter with fields to fill.
type fieldSource interface {
	Fields() []model.Field
	// Type takes the text that now stands in a field.
	Type(id, text string)
	// Enter is Enter in a field. It answers the field to go to, empty for the one
	// that follows.
	Enter(id string) (next string)
	// Restore forgets what was typed, and reports whether that changed anything.
	Restore(id string) bool
}

// FieldForm shows the fields of a presenter in two columns and walks them in
// their order. Which fields there are may change with every keystroke.
type FieldForm struct {
	window  *Window
	source  fieldSource
	rows    map[string]*FormRow
	order   []string
	Ring    *widgets.FocusOrder
	Sheet   *FieldSheet
	last    []widgets.Keyed // stops after the fields
	lastIDs []string
	changed func()      // called after every change
	Grown   func()      // called when the rows need other room than before
	ToForm  func() bool // brings the form to the front, and reports whether it was not
}

func NewFieldForm(w *Window, source fieldSource, changed func()) *FieldForm {
	return &FieldForm{
		window: w, source: source, changed: changed, rows: map[string]*FormRow{}, Ring: widgets.NewFocusOrder(w.Stage),
		Sheet: NewFieldSheet(), Grown: func() {}, ToForm: func() bool { return false },
	}
}

// AddLast gives a widget a place on the ring after the fields.
func (v *FieldForm) AddLast(id string, stop widgets.Keyed) {
	v.last, v.lastIDs = append(v.last, stop), append(v.lastIDs, id)
}

// Show brings every row up to date. All sets the texts of all entries, also of
// the one that has the keyboard.
func (v *FieldForm) Show(all bool) {
	fields := v.source.Fields()
	v.arrange(fields)
	focused := v.Ring.Current()
	for _, f := range fields {
		row := v.rows[f.ID]
		row.Set(f)
		if all || f.ID != focused {
			SetText(row.Entry, f)
		}
	}
	if v.Sheet.Follow() {
		v.Grown()
	}
	v.changed()
}

// arrange makes the rows that are new and puts all in their columns, when the
// fields are others than before.
func (v *FieldForm) arrange(fields []model.Field) {
	if v.isArranged(fields) {
		return
	}
	had := v.Ring.Current()
	v.order = v.order[:0]
	v.Ring = widgets.NewFocusOrder(v.window.Stage)
	v.Ring.OnEscape = v.escape
	v.Ring.OnArrive = func(id string) { v.Sheet.Hold(v.rows[id]) }
	left, right := []fyne.CanvasObject{}, []fyne.CanvasObject{}
	for _, f := range fields {
		row := v.row(f)
		v.order = append(v.order, f.ID)
		v.Ring.Add(f.ID, row.Entry)
		if f.Part == model.SamplePart || f.Part == model.ClosePart {
			right = append(right, row)
		} else {
			left = append(left, row)
		}
	}
	for i, stop := range v.last {
		v.Ring.Add(v.lastIDs[i], stop)
	}
	v.Sheet.Set(left, right)
	if had != "" && v.Ring.Current() != had {
		v.Ring.Focus(had)
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

// row is the row of a field, made the first time it is asked for.
func (v *FieldForm) row(f model.Field) *FormRow {
	row := v.rows[f.ID]
	if row == nil {
		row = NewFormRow(f, v.entry(f), &FormColumns{})
		v.rows[f.ID] = row
		SetText(row.Entry, f)
	}
	row.Set(f)
	return row
}

// entry makes the place to type of a field and wires it.
func (v *FieldForm) entry(f model.Field) widgets.Keyed {
	switch f.Kind {
	case model.FindField, model.OpenField:
		return v.pick(f)
	case model.TickField:
		tick := widgets.NewCheckbox("")
		tick.OnToggle = func(on bool) { v.Typed(f.ID, Ticked(on)) }
		return tick
	}
	e := widgets.NewFieldEntry()
	if f.Kind == model.FigureField {
		e = widgets.NewFigureEntry()
	}
	e.OnEdit = func(text string) { v.Typed(f.ID, text) }
	e.OnCommit = func(string) string { return v.enter(f.ID) }
	return e
}

func (v *FieldForm) pick(f model.Field) widgets.Keyed {
	p := widgets.NewAutocomplete(f.Options)
	p.FreeText = f.Kind == model.OpenField
	p.OnPick = func(o model.Option) { v.Typed(f.ID, o.Code) }
	p.OnUnpick = func() { v.Typed(f.ID, "") }
	p.OnNoFit = func(text string) { v.Typed(f.ID, text) }
	p.OnCommit = func(string) string { return v.enter(f.ID) }
	p.OnEdit = func(text string) {
		if p.FreeText || text == "" {
			v.Typed(f.ID, text)
		}
	}
	return p
}

// Typed hands a text to the presenter and shows what follows from it.
func (v *FieldForm) Typed(id, text string) {
	v.source.Type(id, text)
	v.Show(false)
	v.sayWrong(id)
}

// sayWrong repeats on the status line what is wrong with a field: beside it
// there may be no room for the whole sentence.
func (v *FieldForm) sayWrong(id string) {
	row := v.rows[id]
	switch {
	case row != nil && row.Field.State == model.Stop && row.Field.Note != "":
		v.window.Say(model.Stop, row.Field.Note)
	case v.window.Status.State() == model.Stop:
		v.window.Say(model.Plain, "")
	}
}

// enter hands Enter to the presenter, which says where the keyboard goes.
func (v *FieldForm) enter(id string) (next string) {
	next = v.source.Enter(id)
	v.Show(true)
	return next
}

// escape goes back to the form, or forgets what was typed, if anything was.
func (v *FieldForm) escape() bool {
	if v.ToForm() {
		v.Focus(v.order[0])
		return true
	}
	if !v.source.Restore(v.Ring.Current()) {
		return false
	}
	v.Show(true)
	return true
}

// Focus puts the keyboard on a field and marks what stands in it.
func (v *FieldForm) Focus(id string) {
	v.ToForm()
	v.Ring.Focus(id)
	if row := v.rows[id]; row != nil {
		if e, ok := row.Entry.(interface{ SelectAll() }); ok {
			e.SelectAll()
		}
	}
}

func Ticked(on bool) string {
	if on {
		return model.TickOn
	}
	return ""
}

// SetText writes a field's value into its entry.
func SetText(entry widgets.Keyed, f model.Field) {
	switch e := entry.(type) {
	case *widgets.Autocomplete:
		e.SetOptions(f.Options)
		e.SetChosen(f.Value)
	case *widgets.FieldEntry:
		e.SetText(f.Value)
	case *widgets.Checkbox:
		e.SetOn(f.Value == model.TickOn)
	}
}
