package main

import (
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// sampleFlags are what the bench found.
type sampleFlags struct {
	Moisture string   `help:"Moisture, percent wet basis." placeholder:"PERCENT" group:"sample"`
	Meter    string   `help:"Meter it was read on." placeholder:"METER" group:"sample"`
	Why      string   `help:"Why the moisture is typed." placeholder:"WHY" group:"sample"`
	Factor   []string `sep:"none" help:"Another result; may be repeated." placeholder:"FACTOR=RESULT" group:"sample"`
	Sample   string   `help:"Number of the sample." placeholder:"NUMBER" group:"sample"`
	Tester   string   `help:"Who tested; without it, who acts." placeholder:"NAME" group:"sample"`
	Grade    string   `help:"Grade, where an inspector has given one." placeholder:"WORDS" group:"sample"`
	Kept     string   `help:"Where the retained sample is." placeholder:"PLACE" group:"sample"`
	Accept   []string `sep:"none" help:"Settle beyond a limit (a manager's act); may be repeated." placeholder:"LIMIT=REASON" group:"sample"`
}

func (f sampleFlags) tested() bool { return f.Moisture != "" || len(f.Factor) > 0 }

// apply puts what was typed in place of what the bench had found before.
func (f sampleFlags) apply(p *post, d load.Details, s load.Sample) (load.Sample, error) {
	c, err := grain.ByID(d.Commodity)
	if err != nil {
		return s, err
	}
	if f.Moisture != "" {
		m, err := moistureIn(f.Moisture)
		if err != nil {
			return s, err
		}
		s.Moisture = &load.Moisture{Percent: m, Method: "typed at the terminal", Meter: f.Meter, Reason: f.Why}
		s.Flags = nil
	}
	for _, text := range f.Factor {
		found, err := finding(c, p.measuredBy(c, d), text)
		if err != nil {
			return s, err
		}
		s.Findings = append(slices.DeleteFunc(slices.Clone(s.Findings), func(old load.Finding) bool { return old.Factor == found.Factor }), found)
	}
	s.Tester = orElse(f.Tester, p.Who().Name)
	s.Number, s.Kept, s.Grade = orElse(f.Sample, s.Number), orElse(f.Kept, s.Kept), orElse(f.Grade, s.Grade)
	if s.Kept != "" && s.Until.IsZero() {
		s.Until = p.keepUntil(d)
	}
	return s, nil
}

// measuredBy are the rates in force for a load, or where there are none the
// grain itself.
func (p *post) measuredBy(c grain.Commodity, d load.Details) measured {
	schedule, day := d.Schedule, d.Day
	if schedule == "" {
		schedule, _ = p.Profile().Schedule(c.ID)
	}
	if day.IsZero() {
		day = p.Today()
	}
	if e, err := p.Rates().On(schedule, c.ID, day); err == nil {
		return e
	}
	return c
}

// keepUntil is the last day a sample must be kept, by the house's rule.
func (p *post) keepUntil(d load.Details) quantity.Date {
	day := d.Day
	if day.IsZero() {
		day = p.Today()
	}
	days := p.Profile().RetainDays
	if keep, err := office.RetentionRule(p, p.Desk); err == nil {
		days = keep.Days
	}
	return day.AddDays(days)
}

func orElse(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

// accepted are the limits to settle beyond, with their reasons.
func (f sampleFlags) accepted() ([]load.Accepted, error) {
	var out []load.Accepted
	for _, text := range f.Accept {
		limit, reason, ok := strings.Cut(text, "=")
		if !ok {
			return nil, refusal("Write it like bcfm=\"fed at once\"", "%q is no limit and its reason", text)
		}
		out = append(out, load.Accepted{Limit: strings.TrimSpace(limit), Reason: reason})
	}
	return out, nil
}
