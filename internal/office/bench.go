package office

import (
	"context"
	"errors"

	"tenthpoint/internal/dryness"
	"tenthpoint/internal/fault"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
)

// Bench holds the settings of moisture testing: one record, replaced whole.
type Bench struct {
	Policies  []moisture.Policy `json:"policies,omitempty"`
	Trust     moisture.Trust    `json:"trust"`
	Authority string            `json:"authority"` // id of the rule meters are checked by, or HouseRule
	EveryDays int               `json:"every_days,string"`
	WarnDays  int               `json:"warn_days,string"`
	Dry       []dryness.Rules   `json:"dry,omitempty"`
	Retention string            `json:"retention"` // id of the rule samples are kept by, or HouseRule
	// Hints are the ids of rules whose limits are shown but decide nothing.
	Hints []string `json:"hints,omitempty"`
	// Limit is the largest error of a meter, in points, under HouseRule.
	Limit quantity.Amount `json:"limit,omitzero"`
}

// HouseRule replaces a published rule: the elevator's own limit for meters, or its own days for
// samples (elevator.Profile.RetainDays).
const HouseRule = "house"

// Kind names the fact in the journal.
func (Bench) Kind() string { return "bench.setup" }

// usualLimit is the default limit of a reading's error in the United States: single errors of good
// meters have a standard deviation of 0.39 (Hurburgh 1985), so that one in a hundred is larger. The
// 0.15 of 7 CFR 801.6 is for official meters, on mid-range wheat: four references of corn miss it
// four days in ten.
var usualLimit = quantity.Int(1, quantity.Point)

// defaultBench returns the settings of a new elevator.
func defaultBench(rules string) Bench {
	b := Bench{
		Trust: moisture.DefaultTrust(), Authority: HouseRule, Limit: usualLimit, EveryDays: 14, WarnDays: 2, Retention: "us-inbound-truck",
		Hints: []string{"us-official", "handbook-44"},
	}
	if rules == "canada" {
		b.Authority, b.Retention, b.Hints, b.Limit = "canada", "canada", nil, quantity.Amount{}
	}
	return b
}

// authority is the rule meters are checked by.
func (b Bench) authority(l law.Law) (meter.CheckTolerance, error) {
	if b.Authority == HouseRule {
		return meter.CheckTolerance{
			ID: HouseRule, Name: "the house", OfHouse: true, Source: "set-up of the bench", Confirmed: true,
			Limits: []meter.ErrorLimit{{Fixed: b.Limit}},
		}, nil
	}
	a, ok := meter.CheckToleranceByID(l, b.Authority)
	if !ok {
		return a, message.NotFound.Errorf("%q is no rule for checking meters that is known here; choose another in the set-up of the bench", b.Authority)
	}
	return a, nil
}

// checkRule returns the rule by which a law judges the checks of meters.
func (b Bench) checkRule(l law.Law) (meter.CheckRule, error) {
	authority, err := b.authority(l)
	rule := meter.CheckRule{Authority: authority, EveryDays: b.EveryDays, WarnDays: b.WarnDays}
	for _, id := range b.Hints {
		if other, known := meter.CheckToleranceByID(l, id); known && id != b.Authority {
			rule.Hints = append(rule.Hints, other)
		}
	}
	return rule, err
}

// Faults returns everything wrong with the set-up under a law, or nil.
func (b Bench) Faults(l law.Law) error {
	var faults fault.List
	if _, err := b.authority(l); err != nil {
		faults = append(faults, err)
	}
	faults.Unless(b.Authority != HouseRule || b.Limit.Unit() == quantity.Point && b.Limit.Sign() > 0,
		"the house lets its meters be off by %s; write points above zero, such as 0.3 pt", b.Limit)
	_, known := moisture.RetentionByID(l, b.Retention)
	faults.Unless(known || b.Retention == HouseRule, "%q is no rule for keeping samples that is known here; choose another", b.Retention)
	faults.Unless(b.EveryDays >= 0 && b.WarnDays >= 0, "meters are checked every %d days with %d days of warning; write days from 0", b.EveryDays, b.WarnDays)
	faults = append(faults, b.Trust.Check()...)
	for _, p := range b.Policies {
		faults = append(faults, p.Check()...)
	}
	for _, r := range b.Dry {
		faults = append(faults, r.Check()...)
	}
	return errors.Join(faults...)
}

// BenchSetup returns the settings of moisture testing.
func BenchSetup(ctx context.Context, d Desk) (Bench, error) {
	all, err := RecordsOf[Bench](ctx, d.Reader())
	if err != nil || len(all) == 0 {
		return defaultBench(d.Profile().Rules), err
	}
	return all[0], nil
}

// BenchID names the one bench of an elevator.
const BenchID = "bench"

// RetentionRule returns the rule samples are kept by: the one of the set-up, or the elevator's own
// days where it keeps them longer.
func RetentionRule(ctx context.Context, d Desk) (moisture.Retention, error) {
	b, err := BenchSetup(ctx, d)
	if err != nil {
		return moisture.Retention{}, err
	}
	rule, _ := moisture.RetentionByID(d.Laws().On(d.Today()), b.Retention)
	if days := d.Profile().RetainDays; days > rule.Days {
		rule = moisture.Retention{ID: HouseRule, Name: "the house's own days", Days: days, Source: "set-up of the elevator"}
	}
	if rule.Days == 0 {
		return rule, message.Incomplete.Errorf("the house keeps samples by its own days, and none are set. Write the days in the set-up of the elevator")
	}
	return rule, nil
}

// Equipment returns today's bench equipment: charts, meters, and the status of each meter's checks.
func Equipment(ctx context.Context, d Desk) (moisture.Equipment, error) {
	e := moisture.Equipment{Charts: d.Charts(), Statuses: map[string]meter.Status{}}
	meters, err := Meters(ctx, d)
	if err != nil {
		return e, err
	}
	e.Meters = meters
	for _, m := range meters {
		if e.Statuses[m.ID], err = MeterStatus(ctx, d, m); err != nil {
			return e, err
		}
	}
	return e, nil
}
