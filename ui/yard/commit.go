package yard

import (
	"context"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/session"
)

// write puts facts into the book as one act; with it the texts of the fields that
// were entered are typed no more.
func (f *LoadForm) write(facts entry.Facts, entered ...string) (id string, err error) {
	var stays map[session.DraftAt]map[string]string
	ctx := context.Background()
	err = f.session.Desk.Batch(ctx, func(w *scalehouse.Batch) (err error) {
		if id, err = scalehouse.Enter(ctx, w, f.id, facts); err == nil {
			stays, err = f.keepWith(ctx, w, id, entered)
		}
		return err
	})
	if err != nil {
		return f.id, err
	}
	for at, texts := range stays {
		f.session.Drafts().Take(at, texts, true)
	}
	return id, nil
}

// writeDown writes texts down beside what is typed on the form, and shows what
// follows.
func (f *LoadForm) writeDown(texts map[string]string) error {
	form := f.over(texts)
	if _, err := form.FirstRefused(); err != nil {
		return err
	}
	facts := form.Facts()
	if facts.IsEmpty() {
		return nil
	}
	id, err := f.write(facts)
	if err != nil {
		return err
	}
	f.id = id
	return f.Reload()
}
