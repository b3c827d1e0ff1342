package present

import (
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
)

// line is how one field of a load form is shown and read.
type line struct {
	id, label, unit string
	kind            model.FieldKind
	part            model.Part
	chars           int
	options         func() []model.Option
	// shown is the field's text for a load in the book.
	shown func(*load.Load) string
	// hint is what is said beside the field while nothing is wrong.
	hint func(*load.Load) string
	// read puts what was typed on the draft and says how it was understood,
	// or says in words what is wrong with it.
	read func(text string, d *draft) (reading string, err error)
}

// draft gathers what typed texts change of a load.
type draft struct {
	details          load.Details
	sample           load.Sample
	weighed          []load.Weighing
	amended, sampled bool
}

// isEmpty reports whether the draft changes nothing.
func (d *draft) isEmpty() bool { return !d.amended && !d.sampled && len(d.weighed) == 0 }

// detail is a line about the load itself: its text changes the details.
func detail(l line, set func(text string, to *load.Details) (string, error)) line {
	l.read = func(text string, d *draft) (string, error) {
		reading, err := set(text, &d.details)
		d.amended = d.amended || err == nil
		return reading, err
	}
	return l
}

// finding is a line about the sample.
func sampled(l line, set func(text string, to *load.Sample) (string, error)) line {
	l.read = func(text string, d *draft) (string, error) {
		reading, err := set(text, &d.sample)
		d.sampled = d.sampled || err == nil
		return reading, err
	}
	return l
}
