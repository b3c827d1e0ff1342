package office

import (
	"context"
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
)

// Grading is the result of the published standards for a sample. It is advice: an official grade is
// given only by a licensed inspector.
type Grading struct {
	Commodity grain.Commodity
	// US is the grade of the United States tables; nil for a grain without one.
	US *grain.GradeResult
	// Canada are the Canadian moisture classes, one for each name under which
	// the order lists the grain; none without a moisture.
	Canada []grain.MoistureClass
	// By are the files of law it was graded by.
	By []*law.File
}

// Grade grades the sample of a load, as far as it has been tested. The error joins one for every
// result that does not belong to the grain. A load with a ticket is always graded by the tables of
// its own day.
func Grade(ctx context.Context, d Desk, l *load.Load) (Grading, error) {
	tables, err := TablesFor(ctx, d, l)
	if err != nil {
		return Grading{}, err
	}
	class := l.Details.Class
	if e, err := EditionFor(d, l); err == nil && class == "" {
		class = canadaGrain(d, l, e)
	}
	return GradeSample(tables, l.Details.Commodity, l.Sample, class)
}

// GradeSample is [Grade] for a sample of a grain. A class that the Canadian
// order lists the grain under leaves out its other names.
func GradeSample(tables *grain.Tables, commodity string, s load.Sample, class string) (Grading, error) {
	c, err := tables.ByID(commodity)
	if err != nil {
		return Grading{}, err
	}
	out := Grading{Commodity: c}
	if s.NoneSeen {
		s.Findings = append(slices.Clone(s.Findings), NoneSeen(c, s)...)
	}
	observed, err := c.Record(observations(s))
	if err != nil {
		return out, err
	}
	if c.Grades != nil {
		graded, err := c.Grade(observations(s))
		if err != nil {
			return out, err
		}
		out.US = &graded
		out.by(tables, "us", grain.KindGrades, commodity)
	}
	moisture, tested := observed[grain.Moisture]
	if !tested {
		return out, nil
	}
	for _, name := range canadaNames(c, class) {
		one, err := tables.Class(name, moisture)
		if err != nil {
			return out, err
		}
		out.Canada = append(out.Canada, one)
	}
	if len(out.Canada) > 0 {
		out.by(tables, "canada", grain.KindClasses, "")
	}
	return out, nil
}

// by notes a file of law that the grading used.
func (g *Grading) by(tables *grain.Tables, jurisdiction, kind, subject string) {
	if f, ok := tables.Law().Find(jurisdiction, kind, subject); ok {
		g.By = append(g.By, f)
	}
}

func canadaNames(c grain.Commodity, class string) []string {
	names := c.MoistureGrains()
	for _, name := range names {
		if name == class {
			return []string{name}
		}
	}
	return names
}

// observations are a sample's results by factor.
func observations(s load.Sample) grain.Observations {
	out := grain.Observations{}
	if s.Moisture != nil {
		out[grain.Moisture] = s.Moisture.Percent
	}
	for _, f := range s.Findings {
		switch {
		case f.Amount != nil:
			out[f.Factor] = *f.Amount
		case f.Present:
			out[f.Factor] = grain.Yes
		default:
			out[f.Factor] = grain.No
		}
	}
	return out
}

// NoneSeen returns the results of a sample, assuming that every observation not recorded was looked
// for and not found: no counts, no faults. Measurements stay untested.
func NoneSeen(c grain.Commodity, s load.Sample) []load.Finding {
	var out []load.Finding
	seen := observations(s)
	for _, f := range c.LookedFor() {
		if _, given := seen[f.ID]; given {
			continue
		}
		one := load.Finding{Factor: f.ID}
		if !f.YesNo {
			none := quantity.Zero(f.Unit)
			one.Amount = &none
		}
		out = append(out, one)
	}
	return out
}
