package main

import (
	"strings"

	"tenthpoint/internal/entry"
)

// sampleFlags are what the bench found.
type sampleFlags struct {
	Moisture string   `help:"Moisture, percent wet basis." placeholder:"PERCENT" group:"sample"`
	Meter    string   `help:"Meter it was read on." placeholder:"METER" group:"sample"`
	Why      string   `help:"Why the moisture is typed." placeholder:"WHY" group:"sample"`
	Factor   []string `sep:"none" help:"Another result; may be repeated." placeholder:"FACTOR=RESULT" group:"sample"`
	Sample   string   `help:"Number of the sample." placeholder:"NUMBER" group:"sample"`
	Probes   string   `help:"Where the load was probed." placeholder:"WORDS" group:"sample"`
	Tester   string   `help:"Who tested; without it, who acts." placeholder:"NAME" group:"sample"`
	Grade    string   `help:"Grade, where an inspector has given one." placeholder:"WORDS" group:"sample"`
	Kept     string   `help:"Where the retained sample is." placeholder:"PLACE" group:"sample"`
	Until    string   `help:"Day until which it is kept; without it, as long as the house keeps samples." placeholder:"YYYY-MM-DD" group:"sample"`
	Accept   []string `sep:"none" help:"Settle beyond a limit (a manager's act); may be repeated." placeholder:"LIMIT=REASON" group:"sample"`
}

func (f sampleFlags) tested() bool { return f.Moisture != "" || len(f.Factor) > 0 }

func (f sampleFlags) texts() (texts, error) {
	t := texts{}
	for field, text := range map[string]string{
		"moisture": f.Moisture, "meter": f.Meter, "why": f.Why, "number": f.Sample, "tester": f.Tester, "probes": f.Probes, "grade": f.Grade,
		"kept": f.Kept, "until": f.Until,
	} {
		t.put(field, text)
	}
	for _, text := range f.Factor {
		factor, result, err := resultOf(text)
		if err != nil {
			return nil, err
		}
		t[factor] = result
	}
	for _, text := range f.Accept {
		limit, reason, ok := strings.Cut(text, "=")
		if !ok {
			return nil, refusal("Write it like bcfm=\"fed at once\"", "%q is no limit and its reason", text)
		}
		t[entry.AcceptField(strings.TrimSpace(limit))] = reason
	}
	return t, nil
}
