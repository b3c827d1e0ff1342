package present

import (
	"slices"

	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/model"
)

// standing is a load as it would stand with everything typed taken in.
type standing struct {
	load       *load.Load
	edition    *rates.Edition
	settlement *settle.Settlement // nil while it cannot be settled
	problems   settle.Problems

	readings map[string]string       // how each typed text was understood
	remarks  map[string]model.Remark // what is said beside each field
	missing  map[string]bool
}

// remark says something beside a field; the first remark stays, unless the
// later one is graver.
func (s *standing) remark(field string, state model.State, text string) {
	if old, taken := s.remarks[field]; taken && (old.State == model.Stop || state != model.Stop) {
		return
	}
	s.remarks[field] = model.Remark{State: state, Text: text}
}

// work reads all that is typed, settles the load as it would stand, and says
// beside each field what is wrong.
func (f *LoadForm) work() {
	f.now = standing{remarks: map[string]model.Remark{}, missing: map[string]bool{}, load: f.inBook()}
	f.lines = f.makeLines(f.commodityID())
	d, _ := f.read()
	f.now.load = f.wouldBe(d)
	f.now.edition = EditionOf(f.frame, f.now.load)
	for _, m := range f.now.load.Missing() {
		f.now.missing[m.Field] = true
	}
	f.missWeights()
	if len(f.now.missing) == 0 {
		f.now.settlement, f.now.problems = f.frame.Desk.Preview(f.now.load)
	} else if f.now.edition != nil {
		f.now.problems = f.known(settle.Check(f.now.load.SettleFacts(), f.now.edition))
	}
	for _, p := range f.now.problems {
		f.now.remark(f.besideWhich(p.Field), model.Stop, p.Sentence)
	}
	f.warn()
}

// known leaves out problems that only say again what is missing.
func (f *LoadForm) known(all settle.Problems) settle.Problems {
	unweighed := f.now.missing["gross"] || f.now.missing["tare"]
	return slices.DeleteFunc(all, func(p settle.Problem) bool {
		weight := p.Field == "gross" || p.Field == "tare"
		return f.now.missing[p.Field] || unweighed && weight
	})
}

// wholeLoad is where a remark goes that belongs to no field of the form.
const wholeLoad = ""

// besideWhich is the field of the form that a problem is said beside.
func (f *LoadForm) besideWhich(field string) string {
	if _, known := f.line(field); known {
		return field
	}
	switch field {
	case "shares":
		return "grower"
	case "edition":
		return "commodity"
	}
	return wholeLoad
}

// wouldBe lets the draft happen to a copy of the load.
func (f *LoadForm) wouldBe(d *draft) *load.Load {
	l := copyOf(f.inBook())
	stamp := load.Stamp{At: f.frame.Desk.Now(), Who: f.frame.Desk.Who().Name}
	happen := func(fact load.Fact) {
		if err := l.Apply(load.Stamped{Fact: fact, Stamp: stamp}); err != nil {
			f.now.remark(wholeLoad, model.Stop, sentence(err))
		}
	}
	if f.book == nil {
		if d.details.Day.IsZero() {
			d.details.Day = f.frame.Desk.Today()
		}
		happen(load.Opened{Details: d.details})
	} else if d.amended {
		happen(load.Amended{Details: d.details})
	}
	for _, w := range d.weighed {
		happen(load.Weighed{Weighing: w})
	}
	if d.sampled {
		happen(load.Sampled{Sample: d.sample})
	}
	return l
}
