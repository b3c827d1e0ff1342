package yard

import (
	"maps"
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/yard/loadfields"
)

// LoadForm is the form of one load. What is typed is parsed at every keystroke, and the slip, the
// figures and the messages beside the fields follow at once. Whenever a field is left, valid texts
// are recorded in the book, so that a half entered truck survives anything. Invalid ones are saved
// as a draft.
type LoadForm struct {
	session *session.Session
	id      string      // empty while nothing has been recorded
	Book    *load.Load  // as it is in the book; nil before that
	last    *lastTicket // issued just before this form was begun
	typed   typed
	before  *replaced       // the ticket that the load is to replace
	edited  string          // the field that somebody typed in last
	offered map[string]bool // fields that the form filled in itself, until somebody types there
	asksWhy bool            // a box asks why a weight was typed
	draft   draftKeeper
	Now     *formState // with everything typed taken in
}

// NewLoadForm makes the form of a load in the book, or without a load a blank one.
// What is typed on it ends with the program.
func NewLoadForm(f *session.Session, l *load.Load) *LoadForm {
	form := &LoadForm{session: f, typed: newTyped(), offered: map[string]bool{}}
	if l != nil {
		form.id, form.Book = l.ID, l
	}
	form.read()
	return form
}

// ID returns the load's id in the book; empty while nothing has been recorded.
func (f *LoadForm) ID() string { return f.id }

// IsBlank reports whether nothing has been typed or recorded.
func (f *LoadForm) IsBlank() bool { return f.id == "" && len(f.typed.texts) == 0 }

// IsTyped reports whether a field holds a text that is not in the book.
func (f *LoadForm) IsTyped(id string) bool { return f.typed.has(id) }

// Type sets the text of a field, and the defaults that follow from it.
func (f *LoadForm) Type(id, text string) {
	if _, known := f.Now.Line(id); !known {
		return
	}
	was := f.Text(id)
	f.typed.look("", "")
	f.edited = id
	f.put(id, text)
	delete(f.offered, id)
	if text != was {
		for field, follows := range offersAfter(id, f.session, f.Text) {
			f.put(field, follows)
			f.offered[field] = true
		}
	}
	f.read()
	f.saveDraft()
}

// put keeps a text that differs from the book.
func (f *LoadForm) put(id, text string) {
	if l, known := f.Now.Line(id); known && text == l.Shown(f.session.Language, f.inBook()) {
		f.typed.forget(id)
		return
	}
	f.typed.texts[id] = text
}

// Text is the text in a field: typed, or else from the book.
func (f *LoadForm) Text(id string) string {
	if text, typed := f.typed.texts[id]; typed {
		return text
	}
	if l, known := f.Now.Line(id); known {
		return l.Shown(f.session.Language, f.inBook())
	}
	return ""
}

// Restore restores the book's value of a field, and reports whether that changed anything.
func (f *LoadForm) Restore(id string) bool {
	f.typed.look("", "")
	typed := f.typed.has(id)
	if typed {
		f.typed.forget(id)
		f.read()
	}
	f.saveDraft()
	return typed
}

// Search notes the letters of a search. They are not in the field yet, but should survive a
// restart.
func (f *LoadForm) Search(field, letters string) {
	f.typed.look(field, letters)
	f.saveDraft()
}

// Split adds the weights of a trailer to those of its truck.
func (f *LoadForm) Split() {
	f.typed.split = true
	f.read()
	f.saveDraft()
}

// TurnRound switches a truck between delivering and taking away grain.
func (f *LoadForm) TurnRound() error {
	if f.Book == nil {
		f.typed.outbound = !f.typed.outbound
		f.read()
		f.saveDraft()
	} else if err := f.turnInBook(); err != nil {
		return err
	}
	said := f.session.Say("the truck brings grain.")
	if f.Now.Leaves() {
		said = f.session.Say("the truck takes grain away: say who receives it. It is only weighed.")
	}
	f.session.Notify(model.OK, said)
	f.session.Window.Redraw()
	return nil
}

// turnInBook records what is typed, then the other direction.
func (f *LoadForm) turnInBook() error {
	if err := f.Commit(); err != nil {
		return err
	}
	way := load.Outbound
	if f.Now.Leaves() {
		way = load.Inbound
	}
	return f.writeDown(map[string]string{"direction": string(way)})
}

// Fields are the fields in working order, as they now are.
func (f *LoadForm) Fields() []model.Field {
	out := make([]model.Field, len(f.Now.lines))
	for i, l := range f.Now.lines {
		out[i] = f.Now.field(l, f.Text(l.ID))
	}
	return out
}

// FirstToDo returns the field to focus on a load: the one edited last while its text is not in the
// book, else the first still to be filled, else the one edited last, else the first. It is never
// the act that issues the load: somebody who comes back to a complete load wants to change
// something, and Enter would print the ticket with the mistake in it.
func (f *LoadForm) FirstToDo() string {
	_, known := f.Now.Line(f.edited)
	if missing := f.Now.FirstMissing(); missing != "" && !(known && f.typed.has(f.edited)) {
		return missing
	}
	if known {
		return f.edited
	}
	return f.Now.lines[0].ID
}

// Following is the field that Enter goes to from another: the next one, past those that the form has
// filled in itself. It is empty after the last.
func (f *LoadForm) Following(id string) string {
	next := f.Now.After(id)
	for f.offered[next] && f.Text(next) != "" {
		next = f.Now.After(next)
	}
	return next
}

// AfterTare returns the field to focus after a tare that was not typed: the first still to be
// filled, else the next empty one.
func (f *LoadForm) AfterTare() string {
	if f.Now.FirstMissing() == "" {
		for after := f.Now.After(string(load.Tare)); after != ""; after = f.Now.After(after) {
			if f.Text(after) == "" {
				return after
			}
		}
	}
	return f.FirstToDo()
}

// workBeside is the next field to fill while the weight of another is waited for.
func (f *LoadForm) workBeside(weighed string) string {
	for _, l := range f.Now.lines {
		if l.ID != weighed && f.Now.missing[l.ID] {
			return l.ID
		}
	}
	return f.FirstToDo()
}

// inBook returns the load as in the book, or a blank one.
func (f *LoadForm) inBook() *load.Load {
	if f.Book == nil {
		return &load.Load{}
	}
	return f.Book
}

// Rebase updates the load from the book, when somebody else wrote to it, as the bench does. What is
// typed stays.
func (f *LoadForm) Rebase(l *load.Load) {
	if !f.Book.SameFacts(l) {
		f.Book = l
		f.read()
	}
}

// read applies everything typed to a copy of the load.
func (f *LoadForm) read() {
	f.Now = formStateOf(f.session, f.entering(f.typed.texts), f.Book, f.typed.texts)
	if f.before == nil {
		f.before = replacedBy(f.session, f.Book)
	}
	f.Now.before = f.before
}

// entering is a form of package entry with texts over the load as the book has it.
func (f *LoadForm) entering(texts map[string]string) *entry.Form {
	start := f.typed.start(f.Book)
	scale, _ := f.session.Scale()
	start.Scale, start.Reason = scale.ID, manualWeights{f}.reason
	form := entry.New(session.House(f.session), start)
	for _, id := range slices.Sorted(maps.Keys(texts)) {
		form.Set(id, loadfields.TypedAs(f.session.Language, id, texts[id]))
	}
	return form
}
