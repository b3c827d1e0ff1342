package present

import (
	"context"

	"tenthpoint/internal/desk"
	"tenthpoint/ui/model"
)

// read reads every typed text onto one draft, and lists the fields that could
// be read.
func (f *LoadForm) read() (*draft, []string) {
	book := f.inBook()
	d := &draft{details: book.Details, sample: book.Sample}
	if f.book == nil {
		d.details.Direction = f.direction()
	}
	f.now.readings = map[string]string{}
	var good []string
	for _, l := range f.lines {
		text, typed := f.typed[l.id]
		if !typed {
			continue
		}
		reading, err := l.read(text, d)
		f.now.readings[l.id] = reading
		if err != nil {
			f.now.remark(l.id, model.Stop, sentence(err))
			continue
		}
		good = append(good, l.id)
	}
	return d, good
}

// write puts a draft into the book as one act; with it the texts of the fields
// that were entered are typed no more.
func (f *LoadForm) write(d *draft, entered ...string) (id string, err error) {
	var stays map[draftAt]map[string]string
	err = f.frame.Desk.Together(context.Background(), func(w *desk.Work) (err error) {
		if id, err = f.enter(w, d); err == nil {
			stays, err = f.keepWith(w, id, entered)
		}
		return err
	})
	if err != nil {
		return f.id, err
	}
	for at, texts := range stays {
		f.frame.Drafts().take(at, texts, true)
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
		return id, w.Sample(id, d.sample)
	}
	return id, nil
}
