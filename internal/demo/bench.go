package demo

import (
	"context"
	"fmt"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/scalehouse"
)

// meterID is the demo elevator's moisture meter.
const meterID = "M1"

// test is the tester's act.
func (v *visit) test(ctx context.Context, w *scalehouse.Batch) error {
	if v.gone {
		return nil
	}
	v.season.put(v)
	return scalehouse.RecordSample(ctx, w, v.id, v.sample)
}

// bench generates the results of the bench.
func (s *season) bench(v *visit) load.Sample {
	c := s.chance
	s.numbers++
	day := s.first.AddDays(v.day)
	out := load.Sample{
		Number: fmt.Sprintf("%02d%02d-%d", day.Month(), day.Day(), s.numbers), Tester: Tester,
		Probes: fmt.Sprint(c.between(3, 5)),
		Moisture: &load.Moisture{
			Percent: figure(v.crop.wetness(c, int64(v.day), int64(s.days)), quantity.Percent),
			Method:  "direct", Meter: meterID, Calibration: "example 2026",
		},
		Kept: fmt.Sprintf("Shelf %s%d", pick(c, []string{"A", "B", "C"}), c.between(1, 6)), Until: day.AddDays(3),
	}
	for _, h := range v.crop.factors {
		if c.in1000(h.tested) {
			a := figure(c.about(h.span.low, h.span.high), h.unit)
			out.Findings = append(out.Findings, load.Finding{Factor: h.factor, Amount: &a})
		}
	}
	if c.in1000(12) {
		out.Findings = append(out.Findings, load.Finding{Factor: grain.Musty, Present: true})
	}
	if v.odd.beyond {
		out.Findings = v.beyond(out.Findings)
	}
	return out
}

// beyond puts one result over the first limit the rates have.
func (v *visit) beyond(findings []load.Finding) []load.Finding {
	rule, ok := firstLimit(v.crop.edition)
	if !ok {
		return findings
	}
	over := rule.RefuseOver.Amount.Add(figure(v.season.chance.between(1, 30)*10, quantity.Percent))
	for i, f := range findings {
		if f.Factor == rule.Factor.ID {
			findings[i].Amount = &over
			return findings
		}
	}
	return append(findings, load.Finding{Factor: rule.Factor.ID, Amount: &over})
}

// firstLimit is the first percent over which the rates turn a load away.
func firstLimit(e *rates.Edition) (discount.Rule, bool) {
	for _, d := range e.Discounts {
		if d.RefuseOver.Given() && d.RefuseOver.Amount.Unit() == quantity.Percent && d.Factor.ID != grain.Moisture {
			return d, true
		}
	}
	return discount.Rule{}, false
}
