package present

import (
	"context"
	"reflect"
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
)

// LoadForm is one load's form. What is typed is read at every keystroke, and
// the slip, the figures and the sentences beside the fields follow at once;
// what can stand is written into the book whenever a field is left, so that a
// truck half done survives anything. What cannot stand is kept as a draft.
type LoadForm struct {
	frame *Frame
	id    string                  // empty while nothing has been written down
	book  *load.Load              // as it stands in the book; nil before that
	typed map[string]string       // texts that are not in the book, by field
	extra map[grain.FactorID]bool // factors asked for beyond the usual ones
	// reasons are why weights were typed though the scale can be read.
	reasons  map[string]string
	split    bool        // the trailer is weighed apart from its truck
	edited   string      // the field that somebody typed in last
	driverOn string      // whether the driver is on the truck for the next weights: "on", "off" or ""
	leaves   bool        // the truck takes grain away, while nothing is in the book
	search   search      // what somebody looks for just now
	kept     bool        // what is on the form outlives the program
	form     *entry.Form // of what is typed
	lines    []line
	now      standing
}

// newLoadForm makes the form of a load in the book, or with no load a blank
// one.
func newLoadForm(f *Frame, l *load.Load) *LoadForm {
	form := &LoadForm{frame: f, typed: map[string]string{}, extra: map[grain.FactorID]bool{}, reasons: map[string]string{}}
	if l != nil {
		form.id, form.book = l.ID, l
	}
	form.work()
	return form
}

// ID is the load's id in the book; empty while nothing has been written down.
func (f *LoadForm) ID() string { return f.id }

// IsBlank reports whether nothing has been typed or written down.
func (f *LoadForm) IsBlank() bool { return f.id == "" && len(f.typed) == 0 }

// Type takes the text that now stands in a field.
func (f *LoadForm) Type(id, text string) {
	if _, known := f.line(id); !known {
		return
	}
	was := f.Text(id)
	f.search, f.edited = search{}, id
	f.put(id, text)
	if text != was {
		f.offer(id)
	}
	f.work()
	f.jot()
}

// put keeps a text that differs from what is in the book.
func (f *LoadForm) put(id, text string) {
	if l, known := f.line(id); known && text == l.shown(f.inBook()) {
		delete(f.typed, id)
		return
	}
	f.typed[id] = text
}

// Text is what stands in a field.
func (f *LoadForm) Text(id string) string {
	if text, typed := f.typed[id]; typed {
		return text
	}
	if l, known := f.line(id); known {
		return l.shown(f.inBook())
	}
	return ""
}

// Restore puts back what the book has in a field, and reports whether that
// changed anything.
func (f *LoadForm) Restore(id string) bool {
	f.search = search{}
	_, typed := f.typed[id]
	if typed {
		delete(f.typed, id)
		f.work()
	}
	f.jot()
	return typed
}

// Fields are the fields in working order, as they now stand.
func (f *LoadForm) Fields() []model.Field {
	out := make([]model.Field, len(f.lines))
	for i, l := range f.lines {
		out[i] = f.field(l)
	}
	return out
}

func (f *LoadForm) field(l line) model.Field {
	out := model.Field{
		ID: l.id, Label: l.label, Unit: l.unit, Kind: l.kind, Part: parts[l.Field.Part], Chars: l.chars,
		Value: f.Text(l.id), Missing: f.now.missing[l.id],
	}
	if l.options != nil {
		out.Options = l.options()
	}
	if l.hint != nil {
		out.Reading = l.hint(f.now.load)
	}
	if reading := f.now.readings[l.id]; reading != "" {
		out.Reading = reading
	}
	if r := f.now.remarks[l.id]; r.Text != "" {
		out.State, out.Note = r.State, translate(r.Text)
	}
	return out
}

// FirstMissing is the first field the ticket still lacks, or the first one
// with something wrong in it; empty when the load is whole.
func (f *LoadForm) FirstMissing() string {
	for _, l := range f.lines {
		if f.now.missing[l.id] || f.now.remarks[l.id].State == model.Stop {
			return l.id
		}
	}
	return ""
}

// FirstToDo is where the work on a load goes on: its first field still to be
// filled, else the field edited last, else the first one. It is never the act
// that issues the load: somebody who comes back to a whole load comes to change
// something, and Enter would print the ticket with the mistake in it.
func (f *LoadForm) FirstToDo() string {
	if missing := f.FirstMissing(); missing != "" {
		return missing
	}
	if _, known := f.line(f.edited); known {
		return f.edited
	}
	return f.lines[0].id
}

// AfterTare is where the work goes on once the tare is there without having been
// typed: the first field still to be filled, else the next empty one.
func (f *LoadForm) AfterTare() string {
	if f.FirstMissing() == "" {
		for after := f.After(string(load.Tare)); after != ""; after = f.After(after) {
			if f.Text(after) == "" {
				return after
			}
		}
	}
	return f.FirstToDo()
}

// After is the field that follows another in working order; empty after the
// last.
func (f *LoadForm) After(id string) string {
	i := slices.IndexFunc(f.lines, func(l line) bool { return l.id == id })
	if i < 0 || i+1 >= len(f.lines) {
		return ""
	}
	return f.lines[i+1].id
}

func (f *LoadForm) line(id string) (line, bool) {
	return find(f.lines, func(l line) bool { return l.id == id })
}

// inBook is the load as the book has it, or one of which nothing is known.
func (f *LoadForm) inBook() *load.Load {
	if f.book == nil {
		return &load.Load{}
	}
	return f.book
}

// Commit writes into the book what was typed and can stand. What cannot stays
// in its field, with the reason beside it.
func (f *LoadForm) Commit() error {
	defer f.keep()
	facts := f.form.Facts()
	good, held := f.holdBack(&facts, f.form.Read())
	if len(held) > 0 {
		defer f.askReason(held)
	}
	if len(good) == 0 || facts.IsEmpty() {
		return nil
	}
	opened := f.id == ""
	id, err := f.write(facts, good...)
	if err != nil {
		return err
	}
	f.id = id
	for _, field := range good {
		delete(f.typed, field)
	}
	if err := f.Reload(); err != nil {
		return err
	}
	if opened {
		f.frame.Say(model.OK, Say("Load %s is on the yard.", f.id))
	}
	f.frame.window.Redraw()
	return nil
}

// Reload reads the load from the book again.
func (f *LoadForm) Reload() error {
	if f.id == "" {
		return nil
	}
	l, err := f.frame.Desk.Load(context.Background(), f.id)
	if err != nil {
		return err
	}
	f.book = l
	f.work()
	return nil
}

// rebase takes the load as the book now has it, when somebody wrote to it from
// elsewhere, as the bench does. What is typed stays.
func (f *LoadForm) rebase(l *load.Load) {
	if !reflect.DeepEqual(f.book, l) {
		f.book = l
		f.work()
	}
}

// IsTyped reports whether a field holds a text that is not in the book.
func (f *LoadForm) IsTyped(id string) bool {
	_, typed := f.typed[id]
	return typed
}
