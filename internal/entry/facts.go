package entry

import (
	"slices"

	"tenthpoint/internal/load"
)

// Facts are the facts a form would write: only what its texts change.
type Facts struct {
	Details  *load.Details // amended, or of a load that is opened; nil leaves them
	Weighed  []load.Weighing
	Sample   *load.Sample // nil leaves it
	Accepted []load.Accepted
	Answered []Answer
}

// Answer is the reason given for something a guard of the elevator asks about.
type Answer struct{ Guard, Reason string }

// IsEmpty reports whether nothing is to be written.
func (f Facts) IsEmpty() bool {
	return f.Details == nil && f.Sample == nil && len(f.Weighed) == 0 && len(f.Accepted) == 0 && len(f.Answered) == 0
}

// Facts returns the facts of the texts. A refused text changes nothing; see [Form.Refused].
func (f *Form) Facts() Facts {
	d := f.read()
	out := Facts{Weighed: slices.Clone(d.weighed), Accepted: slices.Clone(d.accepted), Answered: slices.Clone(d.answered)}
	if d.sampled {
		sample := d.sample
		out.Sample = &sample
	}
	if d.amended || f.start.Book == nil && !out.IsEmpty() {
		details := d.details
		out.Details = &details
	}
	return out
}

// Opening are the facts of a load that is opened, also when nothing is known of it.
func (f *Form) Opening() Facts {
	out := f.Facts()
	if out.Details == nil {
		details := f.Details()
		out.Details = &details
	}
	return out
}

// Read are the fields whose text could be read, in the order they were.
func (f *Form) Read() []string { return f.read().good }

// Refused returns the errors of invalid texts, by field.
func (f *Form) Refused() map[string]error { return f.read().refused }

// FirstRefused returns the first invalid text, in the order they were set.
func (f *Form) FirstRefused() (field string, err error) {
	refused := f.Refused()
	for _, id := range f.order {
		if err := refused[id]; err != nil {
			return id, err
		}
	}
	return "", nil
}

// Details returns the details with every text applied, whether or not one of them changes any.
func (f *Form) Details() load.Details { return f.read().details }

// Sample is the sample likewise.
func (f *Form) Sample() load.Sample { return f.read().sample }
