package truckscale

import (
	"strconv"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Tolerance is the allowed error of a scale in service at a load.
type Tolerance struct {
	At     quantity.Amount
	Source string
	// Confirmed is false where the rule was not read in its source: it then only hints.
	Confirmed bool
}

// Ladder is a published tolerance in divisions of the scale: one up to a load, and one more for each
// further step or part of it, up to a most.
type Ladder struct {
	OneUpTo, Step quantity.Amount // in divisions
	Most          quantity.Amount // zero where there is none
	Source        string
	Confirmed     bool
}

// KindTolerances is the kind of file with these rules.
const KindTolerances = "scale-tolerances"

// ReadLadder reads a file of that kind. The error names every mistake in it.
func ReadLadder(f *law.File) (Ladder, error) {
	l := Ladder{Confirmed: f.How == law.Read}
	err := f.Read(func(body *tomlfile.Table) {
		t, _ := body.Table("scale", true)
		l.OneUpTo, l.Step, l.Most = divisions(t, "one_upto"), divisions(t, "step"), quantity.Zero(quantity.Plain)
		if t.Has("most") {
			l.Most = divisions(t, "most")
		}
		l.Source = t.Text("words")
	})
	return l, err
}

// divisions reads a required whole number of divisions.
func divisions(t *tomlfile.Table, key string) quantity.Amount {
	text := t.Text(key)
	n, err := strconv.ParseInt(text, 10, 64)
	if text != "" && (err != nil || n < 1 || n > mostDivisions) {
		t.AddProblem(key, message.New("%s is %q", t.Name(key), text), message.New("Write a whole number of divisions in quotes, from 1 to 100000."))
	}
	return quantity.Int(n, quantity.Plain)
}

// mostDivisions is more than any vehicle scale has.
const mostDivisions = 100_000

var wholeUp = quantity.To("1", quantity.Up)

// At is the tolerance at a load, in the unit of the scale's division; false where the division is
// not one of the load's unit.
func (l Ladder) At(load, division quantity.Amount) (Tolerance, bool) {
	if division.Sign() <= 0 || load.Unit() != division.Unit() {
		return Tolerance{}, false
	}
	allowed := quantity.Int(1, quantity.Plain)
	if beyond := load.Div(division).Sub(l.OneUpTo); beyond.Sign() > 0 {
		allowed = allowed.Add(wholeUp.Apply(beyond.Div(l.Step)))
	}
	if l.Most.Sign() > 0 && allowed.More(l.Most) {
		allowed = l.Most
	}
	return Tolerance{At: division.Mul(allowed), Source: l.Source, Confirmed: l.Confirmed}, true
}

// Allowed is the tolerance of the scale at a load on a day, by the law of that day; false where the
// elevator's rule set has none.
func (l Log) Allowed(day quantity.Date, load quantity.Amount) (Tolerance, bool) {
	f, known := l.Laws.On(day).Find(l.Rules, KindTolerances, "")
	if !known {
		return Tolerance{}, false
	}
	ladder, err := ReadLadder(f)
	if err != nil {
		return Tolerance{}, false // mistakes were reported when it was loaded
	}
	return ladder.At(load, l.Scale.Division)
}
