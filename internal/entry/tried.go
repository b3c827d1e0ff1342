package entry

import (
	"slices"

	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// Severity says how grave a message is.
type Severity int

// A warning needs a second look; a stop keeps the ticket from being issued.
const (
	Warn Severity = iota + 1
	Ask
	Stop
)

// FieldMessage is a message about a field.
type FieldMessage struct {
	Severity Severity
	Text     message.Text
	Err      error // the error of an invalid text
}

// WholeLoad is the field of a message about the load as a whole.
const WholeLoad = ""

// Tried is a preview: the load with every text applied.
type Tried struct {
	Load       *load.Load
	Edition    *rates.Edition          // it would be settled under; nil while there is none
	Settlement *settle.Settlement      // nil while it cannot be settled
	Problems   settle.Problems         // why not
	Messages   map[string]FieldMessage // by field
	Missing    map[string]bool         // fields the ticket cannot do without
	Lacking    []guard.Lacking         // what this elevator does not do without
	Found      []guard.Finding         // improbable things, answered ones among them
	Asked      guard.Asked             // those that wait for an answer
}

// AddMessage adds a message to a field; the first one stays, unless the later one is graver.
func (t *Tried) AddMessage(field string, r FieldMessage) {
	if old, taken := t.Messages[field]; taken && old.Severity >= r.Severity {
		return
	}
	t.Messages[field] = r
}

// Tried previews the form: it applies all texts to a copy of the load, settles it, and reports for
// each field what is wrong or doubtful.
func (f *Form) Tried() Tried {
	d := f.read()
	t := trying{Form: f, draft: d, Tried: Tried{Messages: map[string]FieldMessage{}, Missing: map[string]bool{}}}
	for id, err := range d.refused {
		t.AddMessage(id, FieldMessage{Stop, message.Stopped(message.Of(err)), err})
	}
	t.applyDraft()
	t.findEdition()
	t.miss()
	t.settle()
	t.guard()
	t.warn()
	t.farm()
	return t.Tried
}

// trying is the state of a preview on a copy of the load.
type trying struct {
	*Form
	draft *draft
	Tried
}

// applyDraft lets the draft applyDraft to a copy of the load.
func (t *trying) applyDraft() {
	d := t.draft
	t.Load = CopyOf(t.book())
	stamp := t.house.Stamp()
	apply := func(fact load.Fact) {
		if err := t.Load.Apply(load.Stamped{Fact: fact, Stamp: stamp}); err != nil {
			t.AddMessage(WholeLoad, FieldMessage{Stop, message.Stopped(message.Of(err)), err})
		}
	}
	details := d.details
	if t.start.Book == nil {
		details.Day = d.day()
		apply(load.Opened{Details: details})
	} else if d.amended {
		apply(load.Amended{Details: details})
	}
	for _, w := range d.weighed {
		apply(load.Weighed{Weighing: w})
	}
	if d.sampled {
		apply(load.Sampled{Sample: d.sample})
	}
	for _, one := range d.accepted {
		apply(one)
	}
}

// CopyOf is a load that facts may happen to without touching the first.
func CopyOf(l *load.Load) *load.Load {
	c := *l
	c.Weighings = slices.Clone(l.Weighings)
	c.Struck = slices.Clone(l.Struck)
	c.Accepted = slices.Clone(l.Accepted)
	c.Answers = slices.Clone(l.Answers)
	return &c
}

// findEdition finds the rates, or reports at the commodity why there are none. Grain that leaves is
// settled under none.
func (t *trying) findEdition() {
	if t.draft.details.Direction == load.Outbound {
		return
	}
	var err error
	if t.Edition, err = t.draft.rates(); err != nil {
		t.Edition = nil
		t.AddMessage("commodity", FieldMessage{Severity: Stop, Text: message.Stopped(message.Of(err)), Err: nil})
	}
}

// farm warns of a farm that is not on the card of a grower who has farms: its split is not taken.
func (t *trying) farm() {
	d := t.Load.Details
	if d.Grown.Farm == "" || t.start.Past {
		return
	}
	g, err := Grower(t.house, codeOf(d.Grower))
	if err != nil || len(g.Farms) == 0 {
		return
	}
	if _, known := g.FarmFor(d.Grown.Farm, d.Grown.Field, d.Commodity, d.CropYear); !known {
		t.AddMessage("farm", FieldMessage{Severity: Warn, Text: message.New("The card of %v has no farm %v with this field, grain and year: the grower's usual shares hold.", g.Name, d.Grown.Farm)})
	}
}

// miss marks the required fields that are empty, the weights draft by draft.
func (t *trying) miss() {
	for _, m := range t.Load.Missing() {
		t.Missing[m.Field] = true
	}
	for _, of := range t.Drafts() {
		for _, which := range []load.Which{load.Gross, load.Tare} {
			delete(t.Missing, WeightID(which, of))
			if _, weighed := t.Load.Weight(which, of); !weighed {
				t.Missing[WeightID(which, of)] = true
			}
		}
	}
}

// settle settles the load, or validates as much of it as there is.
func (t *trying) settle() {
	if len(t.Missing) == 0 {
		t.Settlement, t.Problems = t.house.Settle(t.Load)
	} else if t.Edition != nil {
		t.Problems = t.unsaid(settle.Check(t.Load.SettleFacts(), t.Edition))
	}
	for _, p := range t.Problems {
		t.AddMessage(t.beside(p.Field), FieldMessage{Severity: Stop, Text: p.Sentence})
	}
}

// unsaid leaves out problems that only repeat what is missing.
func (t *Tried) unsaid(all settle.Problems) settle.Problems {
	unweighed := t.Missing[string(load.Gross)] || t.Missing[string(load.Tare)]
	return slices.DeleteFunc(all, func(p settle.Problem) bool {
		weight := p.Field == string(load.Gross) || p.Field == string(load.Tare)
		return t.Missing[p.Field] || unweighed && weight
	})
}

// beside returns the field at which a problem of the settlement is shown.
func (t *trying) beside(problem string) string {
	switch problem {
	case "shares":
		return "grower"
	case "edition":
		return "commodity"
	}
	if _, known := t.Field(problem); known {
		return problem
	}
	return WholeLoad
}

// warn adds warnings that do not stop a ticket, and the flags of the bench.
func (t *trying) warn() {
	for _, stop := range t.Load.Sample.Stops {
		t.AddMessage("moisture", FieldMessage{Severity: Warn, Text: stop.Sentence.Message()})
	}
	for _, flag := range t.Load.Sample.Flags {
		t.AddMessage("moisture", FieldMessage{Severity: Warn, Text: flag.Message()})
	}
	t.warnNearLimit()
}

// nearLimit is the distance from a class limit within which a moisture is tested three times
// (Canadian grading guide, chapter 2).
var nearLimit = quantity.Of("0.5", quantity.Percent)

// warnNearLimit warns that three tests are needed where the moisture is near the limit of a class,
// in elevators under the Canadian rules.
func (t *trying) warnNearLimit() {
	m := t.Load.Sample.Moisture
	if m == nil {
		return
	}
	for _, class := range t.house.MoistureClasses(t.Load) {
		if class.HasUpTo && !m.Percent.Less(class.UpTo.Sub(nearLimit)) && !m.Percent.More(class.UpTo.Add(nearLimit)) {
			t.AddMessage("moisture", FieldMessage{Severity: Warn, Text: message.New("Within %s of the limit of %s, %s: test three times and take the mean.", nearLimit, class.Name, class.UpTo.FixedString(1))})
		}
	}
}
