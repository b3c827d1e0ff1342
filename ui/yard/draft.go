package yard

import (
	"context"
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// The names of a load form's texts in its draft.
const (
	fieldText  = "field."  // what stands in a field and is not in the book
	reasonText = "reason." // why the weight in a field was typed
	FactorText = "factor." // a result asked for beyond the usual ones
	splitText  = "split"
	driverText = "driver"
	leavesText = "leaves"
)

// newKeptForm makes a form whose texts outlive the program, with what was typed
// on it before the stop.
func newKeptForm(f *session.Session, l *load.Load) *LoadForm {
	form := NewLoadForm(f, l)
	form.kept = true
	if texts := f.Drafts().TypedBefore(form.draftAt()); texts != nil {
		form.takeBack(texts)
	}
	return form
}

func (f *LoadForm) draftAt() session.DraftAt {
	return session.DraftAt{Place: scalehouse.DraftOfLoad, ID: f.id}
}

// texts are all that is on the form and not in the book.
func (f *LoadForm) texts() map[string]string {
	out := map[string]string{}
	for id, text := range f.Typed {
		out[fieldText+id] = text
		if reason := f.reasons[id]; reason != "" {
			out[reasonText+id] = reason
		}
	}
	if f.search.text != "" {
		out[fieldText+f.search.field] = f.search.text
	}
	for id := range f.Extra {
		if !HasFinding(f.inBook().Sample, id) {
			out[FactorText+string(id)] = model.TickOn
		}
	}
	if f.split && len(f.inBook().Drafts()) < 2 {
		out[splitText] = model.TickOn
	}
	if f.driverOn != "" {
		out[driverText] = f.driverOn
	}
	if f.leaves && f.Book == nil {
		out[leavesText] = model.TickOn
	}
	return out
}

func HasFinding(s load.Sample, id grain.FactorID) bool {
	_, found := session.Find(s.Findings, func(found load.Finding) bool { return found.Factor == id })
	return found
}

// takeBack puts the texts of a draft on the form. What no longer has a field,
// and what the book has by now, is left out.
func (f *LoadForm) takeBack(texts map[string]string) {
	f.leaves, f.split = texts[leavesText] != "", texts[splitText] != ""
	if isOneOf(driverOptions(), texts[driverText]) {
		f.driverOn = texts[driverText]
	}
	for id := range session.CutAll(texts, FactorText) {
		f.Extra[grain.FactorID(id)] = true
	}
	for id, reason := range session.CutAll(texts, reasonText) {
		f.reasons[id] = reason
	}
	f.Typed = session.CutAll(texts, fieldText)
	f.Work()
	for id, text := range f.Typed {
		delete(f.Typed, id)
		if _, known := f.Line(id); known {
			f.Put(id, text)
		}
	}
	f.Work()
	if len(f.texts()) > 0 {
		f.session.Drafts().StandsAgain(f.Called())
	}
}

func isOneOf(options []model.Option, code string) bool {
	return slices.ContainsFunc(options, func(o model.Option) bool { return o.Code == code })
}

// Called is what the form's truck is called.
func (f *LoadForm) Called() string {
	if truck := session.TruckText(f.Now.Load.Details.Truck); truck != "" {
		return session.Say("truck %s", truck)
	}
	if f.id == "" {
		return session.Say("a new truck")
	}
	return session.Say("load %s", f.id)
}

// Search notes the letters by which somebody looks for what a field is to hold.
// They are not typed into it yet, but would be missed.
func (f *LoadForm) Search(field, letters string) {
	f.search = search{field, letters}
	f.jot()
}

// search is what is looked for in a list, and for which field.
type search struct{ field, text string }

// jot keeps the form as it stands, at every keystroke.
func (f *LoadForm) jot() {
	if f.kept {
		f.session.Drafts().Jot(f.draftAt(), f.texts())
	}
}

// keep keeps the form as it stands, on the disk.
func (f *LoadForm) keep() {
	if f.kept {
		f.session.Drafts().Keep(f.draftAt(), f.texts())
	}
}

// keepWith keeps, together with an act, what stays typed after it. A blank form
// becomes that of the load it opens. It answers what the book then has.
func (f *LoadForm) keepWith(ctx context.Context, w *scalehouse.Batch, id string, entered []string) (map[session.DraftAt]map[string]string, error) {
	if !f.kept {
		return nil, nil
	}
	stays := f.texts()
	delete(stays, leavesText)
	for _, field := range entered {
		delete(stays, fieldText+field)
		delete(stays, reasonText+field)
	}
	now := map[session.DraftAt]map[string]string{f.draftAt(): nil}
	now[session.DraftAt{Place: scalehouse.DraftOfLoad, ID: id}] = stays
	for at, texts := range now {
		if err := f.session.Drafts().KeepWith(ctx, w, at, texts); err != nil {
			return nil, err
		}
	}
	return now, nil
}
