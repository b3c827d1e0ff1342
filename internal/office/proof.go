package office

import (
	"context"
	"slices"

	"tenthpoint/internal/dispute"
	"tenthpoint/internal/explanation"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
)

// ProofOptions are the what-ifs a grower asks for beyond those that are always shown: a tenth drier
// and wetter, and the pure water formula.
type ProofOptions struct {
	Moisture *quantity.Amount // in percent
	// Edition is the id of another edition. Empty takes the one before in the
	// same schedule, or failing that the one after.
	Edition string
}

// Proof is the proof sheet of a ticket.
func Proof(ctx context.Context, d Desk, number int64, o ProofOptions) (report.Document, error) {
	f, err := ProofFacts(ctx, d, number, o)
	if err != nil {
		return report.Document{}, err
	}
	return explanation.Compose(f), nil
}

// ProofFacts collects the input of a ticket's proof.
func ProofFacts(ctx context.Context, d Desk, number int64, o ProofOptions) (explanation.Facts, error) {
	l, err := Ticket(ctx, d, number)
	if err != nil {
		return explanation.Facts{}, err
	}
	f := explanation.Facts{House: d.Profile(), Load: l, Clock: d.Local}
	if f.Settlement, err = Resettle(ctx, d, l); err != nil {
		return f, err
	}
	f.OverDry, _ = f.Settlement.OverDry()
	if f.Code, err = Code(ctx, d, l); err != nil {
		return f, err
	}
	if f.WhatIfs, err = whatIfs(ctx, d, l, f.Settlement, o); err != nil {
		return f, err
	}
	if f.Meters, err = metersThen(ctx, d, l); err != nil {
		return f, err
	}
	if l.InPlaceOf() > 0 {
		difference, err := Compare(ctx, d, l.InPlaceOf(), number)
		if err != nil {
			return f, err
		}
		f.Correction = difference.Comparison
	}
	if rule, due, err := provenDeadline(ctx, d, l); err == nil {
		f.Rule, f.Due = rule, due
	}
	f.Disputes, err = DisputesOf(ctx, d, number)
	return f, err
}

// provenDeadline is the last day to ask for another test as the proof of a ticket tells
// it. Tickets of the first two engines were given theirs by the rule set alone, from the
// day they were issued, and keep it.
func provenDeadline(ctx context.Context, d Desk, l *load.Load) (dispute.Rule, quantity.Date, error) {
	if l.Settled == nil || l.Settled.Engine.HasTitles() {
		rule, err := DisputeRule(ctx, d, l, false)
		return rule, rule.Until(l.Details.Day, l.IssuedDay), err
	}
	tables, err := TablesFor(ctx, d, l)
	if err != nil {
		return dispute.Rule{}, quantity.Date{}, err
	}
	rule, err := dispute.RuleFor(tables.Law(), d.Profile().Rules)
	return rule, rule.Due(l.IssuedDay), err
}

// whatIfs settles the load again with one thing different each time, by the ticket's engine so that
// nothing else differs. Grain that left was only weighed; there is nothing to change.
func whatIfs(ctx context.Context, d Desk, l *load.Load, s *settle.Settlement, o ProofOptions) ([]explanation.WhatIf, error) {
	if s.Edition == nil {
		return nil, nil
	}
	facts := l.SettleFacts()
	var out []explanation.WhatIf
	moistures, err := otherMoistures(ctx, d, l, s.Moisture.Value(), o.Moisture)
	if err != nil {
		return nil, err
	}
	for _, m := range moistures {
		other := facts
		other.Moisture = settle.Reading{Percent: m.percent, Source: message.New("what if")}
		again, err := s.Engine.Settle(other, s.Edition)
		out = append(out, whatIf(m.name, again, err))
	}
	edition, err := otherEdition(d, s.Edition, o.Edition, l.Details.Day)
	if err != nil {
		return nil, err
	}
	if edition != nil {
		tables, err := TablesFor(ctx, d, l)
		if err != nil {
			return nil, err
		}
		again, err := s.Engine.Settle(facts, edition.By(tables))
		out = append(out, whatIf(message.New("edition %v, in force %s", edition.ID, edition.Days()), again, err))
	}
	beyond, err := settle.TakenBeyondWater(s, facts)
	if err != nil {
		return append(out, whatIf(message.New("the pure water formula"), nil, err)), nil
	}
	return append(out, whatIf(message.New("the pure water formula"), beyond.Bare, nil)), nil
}

func whatIf(name message.Text, s *settle.Settlement, err error) explanation.WhatIf {
	if err != nil {
		return explanation.WhatIf{Name: name, Refused: inOneLine(err)}
	}
	return explanation.WhatIf{Name: name, Settlement: s}
}

// inOneLine is an error whose lines follow each other.
func inOneLine(err error) message.Text {
	return message.Texts(" ", message.Lines(err))
}

// named is a moisture to try, and why.
type named struct {
	name    message.Text
	percent quantity.Amount
}

var tenthPercent = quantity.Of("0.1", quantity.Percent)

// otherMoistures returns a tenth to either side, the ends of the meter's tolerance where one is
// stated, and the moisture asked for.
func otherMoistures(ctx context.Context, d Desk, l *load.Load, at quantity.Amount, asked *quantity.Amount) ([]named, error) {
	all := []named{{message.New("a tenth drier"), at.Sub(tenthPercent)}, {message.New("a tenth wetter"), at.Add(tenthPercent)}}
	band, err := Band(ctx, d, l)
	if err != nil {
		return nil, err
	}
	if band.Stated() {
		tolerance := band.High.Sub(band.Reading)
		all = append(all, named{message.New("the meter's tolerance drier"), at.Sub(tolerance)}, named{message.New("the meter's tolerance wetter"), at.Add(tolerance)})
	}
	if asked != nil {
		all = append(all, named{message.New("as asked"), *asked})
	}
	var out []named
	for _, m := range all {
		known := slices.ContainsFunc(out, func(o named) bool { return o.percent.Equal(m.percent) })
		if !known && !m.percent.Equal(at) {
			out = append(out, named{message.New("moisture %s, %s", message.Digits(m.percent.Written()), m.name), m.percent})
		}
	}
	return out, nil
}

// metersThen describes the status of the meters when the load was tested: from the bench's own
// record, or from the log up to the day.
func metersThen(ctx context.Context, d Desk, l *load.Load) ([]message.Text, error) {
	m := l.Sample.Moisture
	if m == nil {
		return nil, nil
	}
	if m.Bench != nil {
		var out []message.Text
		for _, r := range m.Bench.Tests.Readings {
			if s, ok := m.Bench.Standings[r.Meter]; ok && !slices.ContainsFunc(out, s.Sentence.Equal) {
				out = append(out, s.Sentence)
			}
		}
		return out, nil
	}
	meters, err := Meters(ctx, d)
	if err != nil {
		return nil, err
	}
	for _, one := range meters {
		if one.ID == m.Meter {
			s, err := MeterStatusOn(d, ReadNow(ctx, d), one, l.Details.Day)
			return []message.Text{s.Sentence}, err
		}
	}
	if m.Meter == "" {
		return nil, nil
	}
	return []message.Text{message.New("Meter %v keeps no check log in this book.", m.Meter)}, nil
}
