package yard

import (
	"context"

	"tenthpoint/internal/desk"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Read reads every typed text onto one draft, and lists the fields that could
// be read.
func (f *LoadForm) Read() (*draft, []string) {
	book := f.inBook()
	d := &draft{details: book.Details, Sample: book.Sample}
	if f.Book == nil {
		d.details.Direction = f.direction()
	}
	f.Now.readings = map[string]string{}
	var good []string
	for _, l := range f.Lines {
		text, typed := f.Typed[l.ID]
		if !typed {
			continue
		}
		reading, err := l.read(text, d)
		f.Now.readings[l.ID] = reading
		if err != nil {
			f.Now.remark(l.ID, model.Stop, session.Sentence(err))
			continue
		}
		good = append(good, l.ID)
	}
	return d, good
}

// write puts a draft into the book as one act; with it the texts of the fields
// that were entered are typed no more.
func (f *LoadForm) write(d *draft, entered ...string) (id string, err error) {
	var stays map[session.DraftAt]map[string]string
	err = f.session.Desk.Together(context.Background(), func(w *desk.Work) (err error) {
		if id, err = f.enter(w, d); err == nil {
			stays, err = f.keepWith(w, id, entered)
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

// enter enters what a draft changes of the load, or opens it.
func (f *LoadForm) enter(w *desk.Work, d *draft) (id string, err error) {
	switch id = f.id; {
	case id == "":
		if id, err = w.OpenLoad(d.details); err != nil {
			return "", err
		}
	case d.amended:
		if err := w.Amend(id, d.details); err != nil {
			return "", err
		}
	}
	for _, weighing := range d.weighed {
		if err := w.Weigh(id, weighing); err != nil {
			return "", err
		}
	}
	if d.sampled {
		return id, w.Sample(id, d.Sample)
	}
	return id, nil
}
