package yard

import (
	"context"
	"reflect"
	"slices"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// LoadForm is one load's form. What is typed is read at every keystroke, and
// the slip, the figures and the sentences beside the fields follow at once;
// what can stand is written into the book whenever a field is left, so that a
// truck half done survives anything. What cannot stand is kept as a draft.
type LoadForm struct {
	session *session.Session
	id      string                  // empty while nothing has been written down
	Book    *load.Load              // as it stands in the book; nil before that
	Typed   map[string]string       // texts that are not in the book, by field
	Extra   map[grain.FactorID]bool // factors asked for beyond the usual ones
	// reasons are why weights were typed though the scale can be read.
	reasons  map[string]string
	split    bool        // the trailer is weighed apart from its truck
	edited   string      // the field that somebody typed in last
	driverOn string      // whether the driver is on the truck for the next weights: "on", "off" or ""
	leaves   bool        // the truck takes grain away, while nothing is in the book
	search   search      // what somebody looks for just now
	kept     bool        // what is on the form outlives the program
	form     *entry.Form // of what is typed
	Lines    []line
	Now      standing
}

// NewLoadForm makes the form of a load in the book, or with no load a blank
// one.
func NewLoadForm(f *session.Session, l *load.Load) *LoadForm {
	form := &LoadForm{session: f, Typed: map[string]string{}, Extra: map[grain.FactorID]bool{}, reasons: map[string]string{}}
	if l != nil {
		form.id, form.Book = l.ID, l
	}
	form.Work()
	return form
}

// ID is the load's id in the book; empty while nothing has been written down.
func (f *LoadForm) ID() string { return f.id }

// IsBlank reports whether nothing has been typed or written down.
func (f *LoadForm) IsBlank() bool { return f.id == "" && len(f.Typed) == 0 }

// Type takes the text that now stands in a field.
func (f *LoadForm) Type(id, text string) {
	if _, known := f.Line(id); !known {
		return
	}
	was := f.Text(id)
	f.search, f.edited = search{}, id
	f.Put(id, text)
	if text != was {
		f.offer(id)
	}
	f.Work()
	f.jot()
}

// Put keeps a text that differs from what is in the book.
func (f *LoadForm) Put(id, text string) {
	if l, known := f.Line(id); known && text == l.Shown(f.inBook()) {
		delete(f.Typed, id)
		return
	}
	f.Typed[id] = text
}

// Text is what stands in a field.
func (f *LoadForm) Text(id string) string {
	if text, typed := f.Typed[id]; typed {
		return text
	}
	if l, known := f.Line(id); known {
		return l.Shown(f.inBook())
	}
	return ""
}

// Restore puts back what the book has in a field, and reports whether that
// changed anything.
func (f *LoadForm) Restore(id string) bool {
	f.search = search{}
	_, typed := f.Typed[id]
	if typed {
		delete(f.Typed, id)
		f.Work()
	}
	f.jot()
	return typed
}

// Fields are the fields in working order, as they now stand.
func (f *LoadForm) Fields() []model.Field {
	out := make([]model.Field, len(f.Lines))
	for i, l := range f.Lines {
		out[i] = f.field(l)
	}
	return out
}

func (f *LoadForm) field(l line) model.Field {
	out := model.Field{
		ID: l.ID, Label: l.label, Unit: l.unit, Kind: l.kind, Part: l.Part, Chars: l.chars,
		Value: f.Text(l.ID), Missing: f.Now.missing[l.ID],
	}
	if l.options != nil {
		out.Options = l.options()
	}
	if l.hint != nil {
		out.Reading = l.hint(f.Now.Load)
	}
	if reading := f.Now.readings[l.ID]; reading != "" {
		out.Reading = reading
	}
	if r := f.Now.remarks[l.ID]; r.Text != "" {
		out.State, out.Note = r.State, session.Say(r.Text)
	}
	return out
}

// FirstMissing is the first field the ticket still lacks, or the first one
// with something wrong in it; empty when the load is whole.
func (f *LoadForm) FirstMissing() string {
	for _, l := range f.Lines {
		if f.Now.missing[l.ID] || f.Now.remarks[l.ID].State == model.Stop {
			return l.ID
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
	if _, known := f.Line(f.edited); known {
		return f.edited
	}
	return f.Lines[0].ID
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
	i := slices.IndexFunc(f.Lines, func(l line) bool { return l.ID == id })
	if i < 0 || i+1 >= len(f.Lines) {
		return ""
	}
	return f.Lines[i+1].ID
}

func (f *LoadForm) Line(id string) (line, bool) {
	return session.Find(f.Lines, func(l line) bool { return l.ID == id })
}

// inBook is the load as the book has it, or one of which nothing is known.
func (f *LoadForm) inBook() *load.Load {
	if f.Book == nil {
		return &load.Load{}
	}
	return f.Book
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
		delete(f.Typed, field)
	}
	if err := f.Reload(); err != nil {
		return err
	}
	if opened {
		f.session.Say(model.OK, session.Say("Load %s is on the yard.", f.id))
	}
	f.session.Window.Redraw()
	return nil
}

// Reload reads the load from the book again.
func (f *LoadForm) Reload() error {
	if f.id == "" {
		return nil
	}
	l, err := office.Load(context.Background(), f.session.Desk, f.id)
	if err != nil {
		return err
	}
	f.Book = l
	f.Work()
	return nil
}

// Rebase takes the load as the book now has it, when somebody wrote to it from
// elsewhere, as the bench does. What is typed stays.
func (f *LoadForm) Rebase(l *load.Load) {
	if !reflect.DeepEqual(f.Book, l) {
		f.Book = l
		f.Work()
	}
}

// IsTyped reports whether a field holds a text that is not in the book.
func (f *LoadForm) IsTyped(id string) bool {
	_, typed := f.Typed[id]
	return typed
}

// Sample is the sample with every result typed on the form taken in.
func (f *LoadForm) Sample() load.Sample { return f.form.Sample() }
