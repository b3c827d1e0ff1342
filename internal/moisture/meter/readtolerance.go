package meter

import (
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// ReadTolerances reads a file of rules about meters. The error names every
// mistake in it.
func ReadTolerances(f *law.File) (out []CheckTolerance, err error) {
	err = f.Read(func(body *tomlfile.Table) {
		for i, t := range body.Tables("rule") {
			t.SetTitle(message.New("place|rule %d", i+1))
			out = append(out, readTolerance(t, f.How))
		}
	})
	return out, err
}

func readTolerance(t *tomlfile.Table, how law.How) CheckTolerance {
	a := CheckTolerance{ID: t.Text("id"), Name: t.Text("name"), Source: t.Text("citation"), OfMean: t.Bool("of_mean")}
	a.Confirmed = law.HowOf(t, how) == law.Read
	if t.Has("every_days") {
		a.EveryDays = law.Days(t, "every_days")
	}
	low, hasLow := t.OptionalAmount("sample_from", quantity.Celsius)
	high, hasHigh := t.OptionalAmount("sample_upto", quantity.Celsius)
	switch {
	case hasLow != hasHigh:
		t.AddProblem("", message.New("%s has one end of the sample's temperature", t.Name("")), message.New("Give both, sample_from and sample_upto, or neither."))
	case hasLow:
		a.Sample = quantity.Span{Low: low, High: high}
	}
	for i, row := range t.Tables("limit") {
		row.SetTitle(message.New("place|%s limit %d", t.Name(""), i+1))
		a.Limits = append(a.Limits, readLimit(row))
	}
	if len(a.Limits) == 0 {
		t.AddProblem("", message.New("%s has no limit", t.Name("")), message.New("Add [[rule.limit]] with fixed = \"0.2 pt\", or share and at_least."))
	}
	return a
}

// readLimit reads a limit in points, or a share of the reference moisture.
func readLimit(t *tomlfile.Table) ErrorLimit {
	l := ErrorLimit{Crops: t.Texts("crops")}
	if t.Has("fixed") {
		l.Fixed = t.Amount("fixed", quantity.Point)
		return l
	}
	l.Share = t.Amount("share", quantity.Percent).In(quantity.Plain).Mul(hundredth)
	l.AtLeast = t.Amount("at_least", quantity.Point)
	return l
}

var hundredth = quantity.Of("0.01", quantity.Plain)
