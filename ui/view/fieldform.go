package view

import (
	"fyne.io/fyne/v2"
	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
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

// fieldForm shows the fields of a presenter in two columns and walks them in
// their order. Which fields there are may change with every keystroke.
type fieldForm struct {
	window  *Window
	source  fieldSource
	rows    map[string]*formRow
	order   []string
	ring    *kit.Ring
	sheet   *fieldSheet
	last    []kit.Keyed // stops after the fields
	lastIDs []string
	changed func()      // called after every change
	grown   func()      // called when the rows need other room than before
	toForm  func() bool // brings the form to the front, and reports whether it was not
}

func newFieldForm(w *Window, source fieldSource, changed func()) *fieldForm {
	return &fieldForm{
		window: w, source: source, changed: changed, rows: map[string]*formRow{}, ring: kit.NewRing(w.stage),
		sheet: newFieldSheet(), grown: func() {}, toForm: func() bool { return false },
	}
}

// addLast gives a widget a place on the ring after the fields.
func (v *fieldForm) addLast(id string, stop kit.Keyed) {
	v.last, v.lastIDs = append(v.last, stop), append(v.lastIDs, id)
}

// show brings every row up to date. All sets the texts of all entries, also of
// the one that has the keyboard.
func (v *fieldForm) show(all bool) {
	fields := v.source.Fields()
	v.arrange(fields)
	focused := v.ring.Current()
	for _, f := range fields {
		row := v.rows[f.ID]
		row.set(f)
		if all || f.ID != focused {
			setText(row.entry, f)
		}
	}
	if v.sheet.follow() {
		v.grown()
	}
	v.changed()
}

// arrange makes the rows that are new and puts all in their columns, when the
// fields are others than before.
func (v *fieldForm) arrange(fields []model.Field) {
	if v.isArranged(fields) {
		return
	}
	had := v.ring.Current()
	v.order = v.order[:0]
	v.ring = kit.NewRing(v.window.stage)
	v.ring.OnEscape = v.escape
	v.ring.OnArrive = func(id string) { v.sheet.hold(v.rows[id]) }
	left, right := []fyne.CanvasObject{}, []fyne.CanvasObject{}
	for _, f := range fields {
		row := v.row(f)
		v.order = append(v.order, f.ID)
		v.ring.Add(f.ID, row.entry)
		if f.Part == model.SamplePart || f.Part == model.ClosePart {
			right = append(right, row)
		} else {
			left = append(left, row)
		}
	}
	for i, stop := range v.last {
		v.ring.Add(v.lastIDs[i], stop)
	}
	v.sheet.set(left, right)
	if had != "" && v.ring.Current() != had {
		v.ring.Focus(had)
	}
}

func (v *fieldForm) isArranged(fields []model.Field) bool {
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
func (v *fieldForm) row(f model.Field) *formRow {
	row := v.rows[f.ID]
	if row == nil {
		row = newFormRow(f, v.entry(f), &formColumns{})
		v.rows[f.ID] = row
		setText(row.entry, f)
	}
	row.set(f)
	return row
}

// entry makes the place to type of a field and wires it.
func (v *fieldForm) entry(f model.Field) kit.Keyed {
	switch f.Kind {
	case model.FindField, model.OpenField:
		return v.pick(f)
	case model.TickField:
		tick := kit.NewTick("")
		tick.OnToggle = func(on bool) { v.typed(f.ID, ticked(on)) }
		return tick
	}
	e := kit.NewFieldEntry()
	if f.Kind == model.FigureField {
		e = kit.NewFigureEntry()
	}
	e.OnEdit = func(text string) { v.typed(f.ID, text) }
	e.OnCommit = func(string) string { return v.enter(f.ID) }
	return e
}

func (v *fieldForm) pick(f model.Field) kit.Keyed {
	p := kit.NewPickEntry(f.Options)
	p.FreeText = f.Kind == model.OpenField
	p.OnPick = func(o model.Option) { v.typed(f.ID, o.Code) }
	p.OnUnpick = func() { v.typed(f.ID, "") }
	p.OnNoFit = func(text string) { v.typed(f.ID, text) }
	p.OnCommit = func(string) string { return v.enter(f.ID) }
	p.OnEdit = func(text string) {
		if p.FreeText || text == "" {
			v.typed(f.ID, text)
		}
	}
	return p
}

// typed hands a text to the presenter and shows what follows from it.
func (v *fieldForm) typed(id, text string) {
	v.source.Type(id, text)
	v.show(false)
	v.sayWrong(id)
}

// sayWrong repeats on the status line what is wrong with a field: beside it
// there may be no room for the whole sentence.
func (v *fieldForm) sayWrong(id string) {
	row := v.rows[id]
	switch {
	case row != nil && row.field.State == model.Stop && row.field.Note != "":
		v.window.Say(model.Stop, row.field.Note)
	case v.window.status.State() == model.Stop:
		v.window.Say(model.Plain, "")
	}
}

// enter hands Enter to the presenter, which says where the keyboard goes.
func (v *fieldForm) enter(id string) (next string) {
	next = v.source.Enter(id)
	v.show(true)
	return next
}

// escape goes back to the form, or forgets what was typed, if anything was.
func (v *fieldForm) escape() bool {
	if v.toForm() {
		v.focus(v.order[0])
		return true
	}
	if !v.source.Restore(v.ring.Current()) {
		return false
	}
	v.show(true)
	return true
}

// focus puts the keyboard on a field and marks what stands in it.
func (v *fieldForm) focus(id string) {
	v.toForm()
	v.ring.Focus(id)
	if row := v.rows[id]; row != nil {
		if e, ok := row.entry.(interface{ SelectAll() }); ok {
			e.SelectAll()
		}
	}
}

func ticked(on bool) string {
	if on {
		return model.TickOn
	}
	return ""
}

// setText writes a field's value into its entry.
func setText(entry kit.Keyed, f model.Field) {
	switch e := entry.(type) {
	case *kit.PickEntry:
		e.SetOptions(f.Options)
		e.SetChosen(f.Value)
	case *kit.FieldEntry:
		e.SetText(f.Value)
	case *kit.Tick:
		e.SetOn(f.Value == model.TickOn)
	}
}
