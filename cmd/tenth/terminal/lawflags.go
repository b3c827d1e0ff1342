package terminal

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/rates"
)

// RuleSetFlags say whose law results are recorded by where no book does.
type RuleSetFlags struct {
	Rules string `help:"The rule set that results are recorded by: us or canada." enum:"us,canada" default:"us"`
}

// ReadLaws returns the published rules of that rule set, with the elevator's own from the folder of
// its rates, if there is one.
func (f RuleSetFlags) ReadLaws(folder string) (*Laws, error) {
	set, err := ratefiles.ReadLaws(folder)
	if err != nil {
		return nil, err
	}
	return &Laws{set: set.For(f.Rules), read: map[string]*grain.Tables{}, under: map[editionUnder]*rates.Edition{}}, nil
}

// Laws returns the law of a day for loads that are in no book. It caches the law for the days it is
// in force.
type Laws struct {
	set   *law.Set
	read  map[string]*grain.Tables // by hash
	under map[editionUnder]*rates.Edition
}

// By is an edition with its results recorded by the law of a day.
func (l *Laws) By(e *rates.Edition, day quantity.Date) (*rates.Edition, error) {
	t, err := l.On(day)
	key := editionUnder{e, t}
	by, known := l.under[key]
	if !known {
		by = e.By(t)
		l.under[key] = by
	}
	return by, err
}

// editionUnder is an edition and the tables its results are recorded by: of a long list the same
// for every row.
type editionUnder struct {
	edition *rates.Edition
	tables  *grain.Tables
}

// On are the tables in force on a day.
func (l *Laws) On(day quantity.Date) (*grain.Tables, error) {
	inForce := l.set.On(day)
	if t, ok := l.read[inForce.Hash()]; ok {
		return t, nil
	}
	t, err := grain.TablesOf(inForce)
	if err == nil {
		l.read[inForce.Hash()] = t
	}
	return t, err
}
