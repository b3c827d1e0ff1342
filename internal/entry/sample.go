package entry

import (
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
)

// sampleFields returns the fields of the sample: the results asked for, then the other results of
// the grain, then the data of the sample itself.
func (f *Form) sampleFields(d *draft) []Field {
	out := []Field{}
	for _, factor := range f.factors(d) {
		out = append(out, resultField(factor))
	}
	return append(out,
		moistureWord("meter", "Meter"), moistureWord("why", "Why typed"),
		sampleWord("number", "Sample number", func(s *load.Sample) *string { return &s.Number }),
		noneSeenField(),
		sampleWord("probes", "Probed", func(s *load.Sample) *string { return &s.Probes }),
		sampleWord("tester", "Tester", func(s *load.Sample) *string { return &s.Tester }),
		sampleWord("grade", "Grade", func(s *load.Sample) *string { return &s.Grade }),
		markField(),
		untilField(), keptField(),
	)
}

// factors are the results on the form in working order, each as the load's rates
// measure it. Without a commodity they are those of every grain.
func (f *Form) factors(d *draft) []grain.Factor {
	c, err := grain.ByID(d.details.Commodity)
	if err != nil {
		return []grain.Factor{grain.CommonFactor(grain.Moisture), grain.CommonFactor(grain.TestWeight)}
	}
	e, _ := d.rates()
	if d.details.Direction == load.Outbound {
		e = nil
	}
	var out []grain.Factor
	if e != nil {
		c = e.Commodity // with the factors that the rates declare
	}
	for _, id := range inOrder(c, f.factorsAsked(e)) {
		factor, _ := c.Factor(id)
		if e != nil {
			factor, _ = e.Factor(id)
		}
		out = append(out, factor)
	}
	return out
}

// factorsAsked returns the factors to show: moisture and test weight, those of the rates, dockage,
// those the sample has already, and any others asked for or typed.
func (f *Form) factorsAsked(e *rates.Edition) []grain.FactorID {
	asked := []grain.FactorID{grain.Moisture, grain.TestWeight}
	if e != nil {
		for _, d := range e.Discounts {
			asked = append(asked, d.Factor.ID)
		}
	}
	asked = append(asked, grain.Dockage)
	for _, one := range f.book().Sample.Findings {
		asked = append(asked, one.Factor)
	}
	asked = append(asked, f.start.Factors...)
	for _, id := range f.order {
		asked = append(asked, grain.FactorID(id))
	}
	return asked
}

// inOrder removes duplicates and factors of other commodities, and sorts yes-no factors after
// measured ones, and dockage last.
func inOrder(c grain.Commodity, asked []grain.FactorID) []grain.FactorID {
	var measured, noticed, last []grain.FactorID
	seen := map[grain.FactorID]bool{}
	for _, id := range asked {
		factor, known := c.Factor(id)
		if !known || seen[id] {
			continue
		}
		seen[id] = true
		switch {
		case id == grain.Dockage:
			last = append(last, id)
		case factor.YesNo:
			noticed = append(noticed, id)
		default:
			measured = append(measured, id)
		}
	}
	return slices.Concat(measured, noticed, last)
}

func resultField(factor grain.Factor) Field {
	f := Field{ID: string(factor.ID), Label: factor.Name, Unit: factor.Unit, Kind: Figure, Factor: factor}
	if factor.ID == grain.Moisture {
		return moistureField(f)
	}
	if factor.YesNo {
		f.Kind = YesNo
	}
	f.shown = func(l *load.Load) string { return findingText(l.Sample, factor) }
	return found(f, func(d *draft, text string) error { return d.find(factor, text) })
}

// moistureField is a moisture typed as a figure. It replaces the bench's result, its tests and
// their warnings.
func moistureField(f Field) Field {
	factor := f.Factor
	f.shown = func(l *load.Load) string {
		if l.Sample.Moisture == nil {
			return ""
		}
		return l.Sample.Moisture.Percent.Fixed(factor.Record.Places())
	}
	return found(f, func(d *draft, text string) error {
		if text == "" {
			d.sample.Moisture, d.sample.Flags, d.sample.Stops = nil, nil, nil
			return nil
		}
		a, err := factor.Field().Parse(text)
		if err != nil {
			return err
		}
		d.sample.Moisture = &load.Moisture{Percent: a, Method: d.origin.Moisture}
		d.sample.Flags, d.sample.Stops = nil, nil
		d.sample.Tester = d.who
		return nil
	})
}

// find replaces a result with the typed one.
func (d *draft) find(factor grain.Factor, text string) error {
	if text == "" {
		d.sample.Findings = without(d.sample.Findings, factor.ID)
		return nil
	}
	one, err := ParseFinding(factor, text)
	if err != nil {
		return err
	}
	if d.sample.Tester == "" {
		d.sample.Tester = d.who
	}
	d.sample.Findings = append(without(d.sample.Findings, factor.ID), one)
	return nil
}

// ParseFinding reads a typed result of a factor.
func ParseFinding(factor grain.Factor, text string) (load.Finding, error) {
	a, err := factor.Parse(text)
	if err != nil {
		return load.Finding{}, err
	}
	if factor.YesNo {
		return load.Finding{Factor: factor.ID, Present: a.Sign() > 0}, nil
	}
	return load.Finding{Factor: factor.ID, Amount: &a}, nil
}

func without(all []load.Finding, id grain.FactorID) []load.Finding {
	return slices.DeleteFunc(slices.Clone(all), func(one load.Finding) bool { return one.Factor == id })
}

func findingText(s load.Sample, factor grain.Factor) string {
	i := slices.IndexFunc(s.Findings, func(one load.Finding) bool { return one.Factor == factor.ID })
	switch {
	case i < 0:
		return ""
	case factor.YesNo && s.Findings[i].Present:
		return "yes"
	case factor.YesNo:
		return "no"
	case s.Findings[i].Amount == nil:
		return ""
	case s.Findings[i].Amount.Unit() != factor.Unit: // typed before the rates were known
		return s.Findings[i].Amount.Written()
	}
	return s.Findings[i].Amount.Fixed(factor.Record.Places())
}

// moistureWord is a further detail of a typed moisture.
func moistureWord(id, label string) Field {
	f := Field{ID: id, Label: label, Kind: Words, Seldom: true}
	return found(f, func(d *draft, text string) error {
		m := d.sample.Moisture
		if m == nil || m.Bench != nil {
			if text == "" {
				return nil
			}
			return message.Invalid.Errorf("%s %q goes with a moisture that is typed. Type the moisture too", label, text)
		}
		with := *m
		switch id {
		case "meter":
			with.Meter = text
		case "why":
			with.Reason = text
		}
		d.sample.Moisture = &with
		return nil
	})
}

func untilField() Field {
	f := Field{ID: "until", Label: "Kept until", Kind: Day, Seldom: true, shown: func(l *load.Load) string { return l.Sample.Until.String() }}
	return found(f, func(d *draft, text string) error {
		day, err := ParseDay(f.Label, text, d.house.Today())
		if err == nil {
			d.sample.Until = day
		}
		return err
	})
}

// NoneSeen is the field that answers for all that a tester looks for and does not find.
const NoneSeen = "none-seen"

// noneSeenField takes whether whatever is counted or noticed and not typed was looked for and not
// found.
func noneSeenField() Field {
	answers := map[bool]string{true: "yes"}
	f := Field{ID: NoneSeen, Label: "Looked for, not found", Kind: YesNo, Seldom: true, shown: func(l *load.Load) string { return answers[l.Sample.NoneSeen] }}
	return found(f, func(d *draft, text string) error {
		switch strings.ToLower(text) {
		case "yes":
			d.sample.NoneSeen = true
		case "", "no":
			d.sample.NoneSeen = false
		default:
			return message.Invalid.Errorf("%q is not yes or no; type yes where everything was looked for", text)
		}
		return nil
	})
}

// keptField says where the retained part of the sample is. It is kept as long as the elevator keeps
// samples, unless a day is named.
func keptField() Field {
	f := sampleWord("kept", "Sample kept", func(s *load.Sample) *string { return &s.Kept })
	read := f.read
	f.read = func(d *draft, text string) error {
		err := read(d, text)
		if text != "" && d.sample.Until.IsZero() {
			d.sample.Until = d.day().AddDays(d.house.RetainDays())
		}
		return err
	}
	return f
}

// NotTested is a result that does not belong to a grain. Known are those that do.
type NotTested struct {
	Commodity, Factor string
	Known             []string
}

// Error names the results of the grain.
func (e NotTested) Error() string { return e.Message().String() }

// Unwrap gives its kind.
func (e NotTested) Unwrap() error { return message.Invalid }

// Message names the results of the grain.
func (e NotTested) Message() message.Text {
	return message.New("%s is not tested for %q. Factors of %s: %s", e.Commodity, e.Factor, e.Commodity, message.Names(", ", e.Known))
}

// FactorOf finds a factor other than the moisture, by its id, its name or the short
// name a tester writes, as measured by a grain or by an
// edition, which may take a test weight in kg/hL.
func FactorOf(c grain.Commodity, by interface {
	Factor(grain.FactorID) (grain.Factor, bool)
}, id string) (grain.Factor, error) {
	called, _ := c.FactorCalled(id)
	factor, ok := by.Factor(called.ID)
	if ok && factor.ID != grain.Moisture {
		return factor, nil
	}
	e := NotTested{Commodity: c.Name, Factor: id}
	for _, f := range c.Factors {
		if f.ID != grain.Moisture {
			e.Known = append(e.Known, string(f.ID))
		}
	}
	return factor, e
}
