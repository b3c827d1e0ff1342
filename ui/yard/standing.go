package yard

import (
	"slices"
	"strings"
	"tenthpoint/internal/desk"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// standing is a load as it would stand with everything typed taken in.
type standing struct {
	Load       *load.Load
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

// Work reads all that is typed, settles the load as it would stand, and says
// beside each field what is wrong.
func (f *LoadForm) Work() {
	f.Now = standing{remarks: map[string]model.Remark{}, missing: map[string]bool{}, Load: f.inBook()}
	f.Lines = f.makeLines(f.commodityID())
	d, _ := f.Read()
	f.Now.Load = f.wouldBe(d)
	f.Now.edition = session.EditionOf(f.session, f.Now.Load)
	for _, m := range f.Now.Load.Missing() {
		f.Now.missing[m.Field] = true
	}
	f.missWeights()
	if len(f.Now.missing) == 0 {
		f.Now.settlement, f.Now.problems = f.session.Desk.Preview(f.Now.Load)
	} else if f.Now.edition != nil {
		f.Now.problems = f.known(settle.Check(f.Now.Load.SettleFacts(), f.Now.edition))
	}
	for _, p := range f.Now.problems {
		f.Now.remark(f.besideWhich(p.Field), model.Stop, p.Sentence)
	}
	f.warn()
}

// known leaves out problems that only say again what is missing.
func (f *LoadForm) known(all settle.Problems) settle.Problems {
	unweighed := f.Now.missing["gross"] || f.Now.missing["tare"]
	return slices.DeleteFunc(all, func(p settle.Problem) bool {
		weight := p.Field == "gross" || p.Field == "tare"
		return f.Now.missing[p.Field] || unweighed && weight
	})
}

// wholeLoad is where a remark goes that belongs to no field of the form.
const wholeLoad = ""

// besideWhich is the field of the form that a problem is said beside.
func (f *LoadForm) besideWhich(field string) string {
	if _, known := f.Line(field); known {
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
	l := session.CopyOf(f.inBook())
	stamp := load.Stamp{At: f.session.Desk.Now(), Who: f.session.Desk.Who().Name}
	happen := func(fact load.Fact) {
		if err := l.Apply(load.Stamped{Fact: fact, Stamp: stamp}); err != nil {
			f.Now.remark(wholeLoad, model.Stop, session.Sentence(err))
		}
	}
	if f.Book == nil {
		if d.details.Day.IsZero() {
			d.details.Day = f.session.Desk.Today()
		}
		happen(load.Opened{Details: d.details})
	} else if d.amended {
		happen(load.Amended{Details: d.details})
	}
	for _, w := range d.weighed {
		happen(load.Weighed{Weighing: w})
	}
	if d.sampled {
		happen(load.Sampled{Sample: d.Sample})
	}
	return l
}

// warn says what does not stop a ticket and should be looked at twice.
func (f *LoadForm) warn() {
	if s, ok := f.session.Scale(); ok {
		if net, known := desk.Net(f.Now.Load); known && net.Sign() > 0 {
			if light := s.LightNet(net); light != "" {
				f.Now.remark("tare", model.Warn, light)
			}
		}
	}
	for _, stop := range f.Now.Load.Sample.Stops {
		f.Now.remark("moisture", model.Warn, stop.Sentence)
	}
	for _, flag := range f.Now.Load.Sample.Flags {
		f.Now.remark("moisture", model.Warn, flagWords(flag))
	}
	f.warnNearLimit()
}

// flagWords is a doubt about a reading without the code it begins with.
func flagWords(flag string) string {
	if _, words, coded := strings.Cut(flag, ": "); coded {
		return words
	}
	return flag
}

// nearLimit is how close to a class limit a moisture is tested three times
// (Canadian grading guide, chapter 2).
var nearLimit = quantity.Of("0.5", quantity.Percent)

// warnNearLimit asks for three tests where the moisture lies near the limit of
// a class, in houses under the Canadian rules.
func (f *LoadForm) warnNearLimit() {
	m := f.Now.Load.Sample.Moisture
	if m == nil {
		return
	}
	for _, class := range f.session.Desk.MoistureClasses(f.Now.Load) {
		if class.HasUpTo && within(m.Percent, class.UpTo, nearLimit) {
			f.Now.remark("moisture", model.Warn, session.Say("Within %s of the limit of %s, %s: test three times and take the mean.", nearLimit, class.Name, class.UpTo.FixedString(1)))
		}
	}
}

func within(a, limit, distance quantity.Amount) bool {
	return !a.Less(limit.Sub(distance)) && !a.More(limit.Add(distance))
}
