package yard

import (
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// sampleLines are the results asked for: moisture and test weight, then what
// the rates look at, then dockage, then whatever else the load already has.
func (f *LoadForm) sampleLines(commodity string) []line {
	c, err := grain.ByID(commodity)
	if err != nil {
		return f.linesOfAnyGrain()
	}
	var lines []line
	e := f.editionFor(c.ID)
	for _, id := range f.factorsAsked(c) {
		factor, _ := c.Factor(id)
		if e != nil {
			factor, _ = e.Factor(id)
		}
		if id == grain.Moisture {
			lines = append(lines, f.moistureLine(factor))
		} else {
			lines = append(lines, f.factorLine(factor))
		}
	}
	return lines
}

// factorsAsked lists the factors on the form in working order.
func (f *LoadForm) factorsAsked(c grain.Commodity) []grain.FactorID {
	asked := []grain.FactorID{grain.Moisture, grain.TestWeight}
	if e := f.editionFor(c.ID); e != nil {
		for _, d := range e.Discounts {
			asked = append(asked, d.Factor.ID)
		}
	}
	asked = append(asked, grain.Dockage)
	for _, found := range f.inBook().Sample.Findings {
		asked = append(asked, found.Factor)
	}
	for id := range f.Extra {
		asked = append(asked, id)
	}
	return inOrder(c, asked)
}

// inOrder keeps each factor once and only those of the commodity, with what is
// present or not after what is measured, and dockage last.
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

// editionFor is the edition of a commodity on the load's day.
func (f *LoadForm) editionFor(commodity string) *rates.Edition {
	l := session.CopyOf(f.inBook())
	l.Details.Commodity, l.Details.Direction = commodity, f.direction()
	if l.Details.Day.IsZero() {
		l.Details.Day = f.session.Desk.Today()
	}
	return session.EditionOf(f.session, l)
}

// linesOfAnyGrain are what is tested of every grain, for a load whose commodity
// is still to be named.
func (f *LoadForm) linesOfAnyGrain() []line {
	any := grain.All()[0]
	moisture, _ := any.Factor(grain.Moisture)
	weight, _ := any.Factor(grain.TestWeight)
	return []line{f.moistureLine(moisture), f.factorLine(weight)}
}

func (f *LoadForm) moistureLine(factor grain.Factor) line {
	return sampled(line{
		ID: "moisture", label: session.Say("Moisture"), unit: "%", kind: model.FigureField, Part: model.SamplePart, chars: 6,
		Shown: func(l *load.Load) string {
			if l.Sample.Moisture == nil {
				return ""
			}
			return l.Sample.Moisture.Percent.Fixed(factor.Record.Places())
		},
		hint: f.moistureHint,
	}, func(text string, to *load.Sample) (string, error) {
		if text == "" {
			to.Moisture = nil
			return "", nil
		}
		a, err := factor.Field().Parse(text)
		if err != nil {
			return "", err
		}
		f.testedBy(to)
		reading := recordedAs(factor, a)
		if was := to.Moisture; was != nil && was.Bench != nil {
			reading = session.Join(", ", reading, session.Say("in place of %s from the bench", was.Percent))
		}
		to.Moisture = &load.Moisture{Percent: a, Method: typedAtDesk}
		to.Flags, to.Stops = nil, nil
		return reading, nil
	})
}

// moistureHint says how the moisture was come by, when the bench worked it.
func (f *LoadForm) moistureHint(l *load.Load) string {
	m := l.Sample.Moisture
	switch {
	case m == nil:
		return ""
	case m.Meter != "":
		return session.Say("meter %s", m.Meter)
	}
	return session.Say(m.Method)
}

func (f *LoadForm) factorLine(factor grain.Factor) line {
	l := line{
		ID: string(factor.ID), label: session.Say(session.ShortName(factor)), unit: factor.Unit.String(),
		kind: model.FigureField, Part: model.SamplePart, chars: 6,
		Shown: func(l *load.Load) string { return findingText(l.Sample, factor) },
	}
	if factor.YesNo {
		l.kind, l.unit = model.WordsField, session.Say("y/n")
	}
	return sampled(l, func(text string, to *load.Sample) (string, error) {
		if text == "" {
			to.Findings = without(to.Findings, factor.ID)
			return "", nil
		}
		a, err := session.ReadFactor(factor, text)
		if err != nil {
			return "", err
		}
		found := load.Finding{Factor: factor.ID}
		reading := ""
		if factor.YesNo {
			found.Present = a.Sign() > 0
			reading = presence(found.Present)
		} else {
			found.Amount, reading = &a, recordedAs(factor, a)
		}
		f.testedBy(to)
		to.Findings = append(without(to.Findings, factor.ID), found)
		return reading, nil
	})
}

// testedBy puts the person at the desk down as the tester, unless the bench
// has put one down.
func (f *LoadForm) testedBy(to *load.Sample) {
	if to.Tester == "" {
		to.Tester = f.session.Desk.Who().Name
	}
}

func findingText(s load.Sample, factor grain.Factor) string {
	i := slices.IndexFunc(s.Findings, func(found load.Finding) bool { return found.Factor == factor.ID })
	switch {
	case i < 0:
		return ""
	case factor.YesNo:
		return session.YesOrNo(s.Findings[i].Present)
	case s.Findings[i].Amount == nil:
		return ""
	case s.Findings[i].Amount.Unit() != factor.Unit: // typed before the rates were known
		return s.Findings[i].Amount.Written()
	}
	return s.Findings[i].Amount.Fixed(factor.Record.Places())
}

func without(all []load.Finding, id grain.FactorID) []load.Finding {
	return slices.DeleteFunc(slices.Clone(all), func(found load.Finding) bool { return found.Factor == id })
}

func presence(present bool) string {
	if present {
		return session.Say("present")
	}
	return session.Say("not present")
}

// recordedAs says to what a figure will be recorded, when that is another
// figure.
func recordedAs(factor grain.Factor, measured quantity.Amount) string {
	recorded := factor.Recorded(measured)
	if recorded.Equal(measured) {
		return ""
	}
	return session.Say("recorded as %s", recorded.FixedString(factor.Record.Places()))
}
