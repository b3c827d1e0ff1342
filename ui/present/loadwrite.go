package present

import (
	"context"

	"tenthpoint/internal/desk"
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
			f.now.remark(l.id, Stop, sentence(err))
			continue
		}
		good = append(good, l.id)
	}
	return d, good
}

// write puts a draft into the book as one act.
func (f *LoadForm) write(d *draft) (id string, err error) {
	id = f.id
	err = f.frame.Desk.Together(context.Background(), func(w *desk.Work) error {
		switch {
		case id == "":
			if id, err = w.OpenLoad(d.details); err != nil {
				return err
			}
		case d.amended:
			if err := w.Amend(id, d.details); err != nil {
				return err
			}
		}
		for _, weighing := range d.weighed {
			if err := w.Weigh(id, weighing); err != nil {
				return err
			}
		}
		if d.sampled {
			return w.Sample(id, d.sample)
		}
		return nil
	})
	return id, err
}
