package scaleticket

import (
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/settle"
)

// qualitySection has the test results, the instrument, the tester, and the place of the retained
// sample.
func qualitySection(t *facts) Section {
	p := newPart(t, "quality", t.w.Quality, Facts)
	moistureLine(p)
	for _, id := range statedFactors(t) {
		factorLine(p, id)
	}
	if t.l.Sample.NoneSeen {
		p.given(t.w.say(message.New("Looked for, not found")), t.w.say(message.New("all else")))
	}
	p.fact(t.w.Grade, Joined(", ", t.l.Sample.Grade, t.w.word(string(t.l.Sample.Mark))), t.w.NotGraded)
	instruments(p)
	doubts(p)
	return p.Section
}

// moistureLine is as the settlement recorded it, else as the grain's own rule
// records it.
func moistureLine(p *part) {
	m := p.l.Sample.Moisture
	line := Line{Field: string(grain.Moisture), Label: p.w.Moisture, Emphasis: true}
	if m == nil {
		line.Value, line.Missing = p.w.NotTested, !p.isWeighedOnly()
		p.put(line)
		return
	}
	line.Value = moistureFigure(p.facts)
	line.Notes = some(p.w.named(p.w.word(m.Method), p.w.word(m.Reason)))
	p.put(line)
}

func moistureFigure(t *facts) string {
	if t.s != nil {
		return t.w.printed(t.s.Moisture)
	}
	measured := t.l.Sample.Moisture.Percent
	if known, ok := knownGrain(t); ok {
		if f, ok := known.Factor(grain.Moisture); ok {
			return f.Recorded(measured).FixedString(f.Record.Places())
		}
	}
	return measured.Written()
}

// statedFactors returns the factors to list, in the order of the grain's sample: those with
// results, those the rates require, and those on every ticket of the grain.
func statedFactors(t *facts) []grain.FactorID {
	known, _ := knownGrain(t)
	var ids []grain.FactorID
	for _, f := range known.Factors {
		stated := f.ID == grain.TestWeight || f.ID == grain.Dockage
		if f.ID != grain.Moisture && (stated || findingOf(t, f.ID) != nil || mustTest(t, f.ID)) {
			ids = append(ids, f.ID)
		}
	}
	for _, found := range t.l.Sample.Findings {
		if found.Factor != grain.Moisture && !slices.Contains(ids, found.Factor) {
			ids = append(ids, found.Factor)
		}
	}
	return ids
}

func findingOf(t *facts, id grain.FactorID) *load.Finding {
	for i, f := range t.l.Sample.Findings {
		if f.Factor == id {
			return &t.l.Sample.Findings[i]
		}
	}
	return nil
}

// mustTest reports whether the rates settle no load without the factor.
func mustTest(t *facts, id grain.FactorID) bool {
	if id == grain.Dockage {
		return t.Edition != nil && t.Edition.Dockage.MustTest
	}
	return t.Edition != nil && slices.ContainsFunc(t.Edition.Discounts, func(d discount.Rule) bool {
		return d.Factor.ID == id && d.MustTest
	})
}

func factorLine(p *part, id grain.FactorID) {
	known, _ := knownGrain(p.facts)
	f, ok := known.Factor(id)
	if !ok {
		f = grain.Factor{ID: id, Name: string(id)}
	}
	line := Line{Field: string(id), Label: p.w.word(f.Name), Value: p.w.NotTested, Missing: mustTest(p.facts, id)}
	if found := findingOf(p.facts, id); found != nil {
		line.Value, line.Missing = resultWords(p.facts, f, *found), false
	}
	p.put(line)
}

func resultWords(t *facts, f grain.Factor, found load.Finding) string {
	switch {
	case f.YesNo && found.Present:
		return t.w.Present
	case f.YesNo:
		return t.w.NotPresent
	case found.Amount == nil:
		return t.w.NotTested
	}
	figure := resultFigure(t, f, *found.Amount)
	f.NamesBushel = f.ID == grain.TestWeight && namesBushel(t)
	if remark, has := f.Remark(*found.Amount); has {
		figure += " (" + t.w.say(remark) + ")"
	}
	return figure
}

// namesBushel reports whether a test weight in lb/bu says which bushel: in Canada
// that may be Avery's, of 36.37 L, beside Winchester's, of 35.24 L. Tickets of the
// first law print as they did.
func namesBushel(t *facts) bool {
	old := t.l.Number > 0 && t.l.Settled != nil && t.l.Settled.Law == ""
	return t.House.Rules == "canada" && !old
}

// resultFigure is a result as the settlement recorded it, else as the grain's own
// rule records it.
func resultFigure(t *facts, f grain.Factor, measured quantity.Amount) string {
	if t.s != nil {
		if step, ok := t.s.Sheet.Step(settle.FactorLine(f.ID)); ok {
			return t.w.printed(step)
		}
	}
	if measured.Unit() != f.Unit {
		return t.w.figure(measured.Written())
	}
	return t.w.figure(f.Recorded(measured).FixedString(f.Record.Places()))
}

// instruments says how, by whom and when the sample was tested, and where the retained part is.
func instruments(p *part) {
	s := p.l.Sample
	if m := s.Moisture; m != nil {
		calibration := ""
		if m.Calibration != "" {
			calibration = p.w.Calibration + " " + m.Calibration
		}
		p.fact(p.w.Meter, Joined(", ", m.Meter, calibration), p.w.NoMeter)
	}
	p.fact(p.w.Tester, s.Tester, p.w.NotNamed)
	if p.l.Sampled.At != "" {
		p.given(p.w.TestedAt, p.hour(p.l.Sampled.At))
	}
	p.given(p.w.Probes, s.Probes)
	p.fact(p.w.Sample, s.Number, p.w.NotNumbered)
	p.fact(p.w.Retained, keptWords(p.facts), p.w.NotKept)
}

func keptWords(t *facts) string {
	until := ""
	if s := t.l.Sample; !s.Until.IsZero() {
		until = t.w.RetainedUntil + " " + t.date(s.Until)
	}
	return Joined(", ", t.l.Sample.Kept, until)
}

// doubts are the warnings about a result, and the limits that were accepted.
func doubts(p *part) {
	p.warn(p.w.say(p.MeterNote))
	for _, flag := range p.l.Sample.Flags {
		p.warn(p.w.named(p.w.Flag, p.w.say(flag)))
	}
	for _, a := range p.l.Accepted {
		p.warn(p.w.named(p.w.named(p.w.LimitAccepted, limitName(p.facts, a.Limit)), Joined(", ", a.Accepted.Reason, a.Who)))
	}
	for _, a := range p.l.Answers {
		p.warn(Joined(" ", p.w.named(p.w.Asked, p.w.say(a.Asked)), p.w.named(p.w.Answered, Joined(", ", p.w.word(a.Answered.Reason), a.Who))))
	}
}

// limitName is the label of the rule whose limit was set aside.
func limitName(t *facts, id string) string {
	if t.Edition != nil {
		for _, d := range t.Edition.Discounts {
			if d.ID == id {
				return t.w.say(d.Label)
			}
		}
	}
	return id
}
