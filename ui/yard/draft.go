package yard

import (
	"context"

	"tenthpoint/internal/load"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/session"
)

// draftKeeper saves what is typed on load forms, so that it survives a restart. Without a session
// it saves nothing.
type draftKeeper struct{ session *session.Session }

// draftAt is the place of the draft of a load; without an id that of the blank
// form.
func draftAt(id string) session.DraftAt {
	return session.DraftAt{Place: scalehouse.DraftOfLoad, ID: id}
}

// save keeps texts at every keystroke.
func (k draftKeeper) save(id string, texts map[string]string) {
	if k.session != nil {
		k.session.Drafts().Save(draftAt(id), texts)
	}
}

// sync keeps texts on the disk.
func (k draftKeeper) sync(id string, texts map[string]string) {
	if k.session != nil {
		k.session.Drafts().SaveSync(draftAt(id), texts)
	}
}

// move saves, together with an act, the texts that stay typed after it. The draft of a blank form
// becomes that of the load it opens. It returns the drafts now in the book; call took once the act
// is done.
func (k draftKeeper) move(ctx context.Context, w *scalehouse.Batch, from, to string, stays map[string]string) (map[session.DraftAt]map[string]string, error) {
	if k.session == nil {
		return nil, nil
	}
	now := map[session.DraftAt]map[string]string{draftAt(from): nil}
	now[draftAt(to)] = stays
	for at, texts := range now {
		if err := k.session.Drafts().SaveWith(ctx, w, at, texts); err != nil {
			return nil, err
		}
	}
	return now, nil
}

// took notes the drafts in the book after a move.
func (k draftKeeper) took(now map[session.DraftAt]map[string]string) {
	for at, texts := range now {
		k.session.Drafts().Take(at, texts, true)
	}
}

// newKeptForm makes a form whose texts survive a restart, with what was typed on it before the
// program stopped.
func newKeptForm(f *session.Session, l *load.Load) *LoadForm {
	form := NewLoadForm(f, l)
	form.draft = draftKeeper{f}
	if texts := f.Drafts().TypedBefore(draftAt(form.id)); texts != nil {
		form.restoreDraft(texts)
	}
	return form
}

// restoreDraft sets the texts of a draft on the form. Texts whose field no longer exists, and those
// now in the book, are left out.
func (f *LoadForm) restoreDraft(texts map[string]string) {
	f.typed.restore(f.session.Language, texts)
	f.read()
	for id, text := range f.typed.texts {
		f.typed.forget(id)
		if _, known := f.Now.Line(id); known {
			f.put(id, text)
		}
	}
	f.read()
	if len(f.typed.draft(f.Book)) > 0 {
		f.session.Drafts().StandsAgain(f.Now.Called())
	}
}

// saveDraft saves what is typed on the form, at every keystroke.
func (f *LoadForm) saveDraft() { f.draft.save(f.id, f.typed.draft(f.Book)) }
