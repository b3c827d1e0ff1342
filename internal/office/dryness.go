package office

import (
	"context"

	"tenthpoint/internal/dryness"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/settle/trial"
)

// DryEnough says whether a load as tested is dry enough, for what, and what its grower can do.
// Found is false where the elevator has no limit for the commodity.
func DryEnough(ctx context.Context, d Desk, l *load.Load) (advice dryness.Advice, found bool, err error) {
	band, err := Band(ctx, d, l)
	if err != nil {
		return advice, false, err
	}
	rules, found, err := DryRules(ctx, d, l)
	if err != nil || !found {
		return advice, false, err
	}
	tolerance := quantity.Amount{}
	if band.Stated() {
		tolerance = band.High.Sub(band.Reading).In(quantity.Point)
	}
	if advice, err = rules.Judge(band.Reading, tolerance, doubts(l)); err != nil {
		return advice, true, err
	}
	advice.Options = append(advice.Options, OverDryOptions(d, l)...)
	return advice, true, nil
}

// usualLoads are a truck's weight in each unit, large enough that roundings do not tell.
var usualLoads = map[quantity.Unit]quantity.Amount{quantity.Lb: quantity.Int(56_000, quantity.Lb), quantity.Kg: quantity.Int(25_000, quantity.Kg)}

// PostedFor is what the rates in force take of a load's grain as it was tested, by the unit delivered;
// the zero value where no edition settles it.
func PostedFor(d Desk, l *load.Load) dryness.Posted {
	e, err := EditionFor(d, l)
	if err != nil || e == nil || l.Sample.Moisture == nil {
		return dryness.Posted{}
	}
	tables, err := d.TablesOn(l.Details.Day)
	if err != nil {
		return dryness.Posted{}
	}
	f := l.SettleFacts()
	f.Deal, f.Shares = settle.Deal{}, nil
	usual := usualLoads[e.Units.Weight]
	f.Drafts = []settle.Draft{{Gross: usual.Add(usual), Tare: usual}}
	tried := trial.Of(e.By(tables), f, []quantity.Amount{l.Sample.Moisture.Percent})
	row := tried.Rows[0]
	if row.Settlement == nil {
		return dryness.Posted{}
	}
	s, out := row.Settlement, dryness.Posted{Edition: e.ID, Taken: row.Each.Value().Neg()}
	out.Left = quantity.To("0.01", quantity.HalfUp).Apply(quantity.Int(100, quantity.Lb).Mul(s.Dry.Value()).Div(s.Net.Value()))
	if delivered, known := tried.Sheet.Step("row.1.delivered"); known && !s.Drying.Value().IsZero() && e.Drying.To.Given() {
		out.DriedTo = e.Drying.To.Amount
		out.Drying = quantity.To("0.001", quantity.HalfUp).Apply(s.Drying.Value().Div(delivered.Value()))
	}
	return out
}

// OverDryOptions returns the over-dry loss as advice to the grower; none for other grain.
func OverDryOptions(d Desk, l *load.Load) []dryness.Option {
	o, found := OverDry(d, l)
	if !found {
		return nil
	}
	return []dryness.Option{{Name: "over-dry", Text: overDryText(o)}}
}

// OverDry returns the loss on a load drier than its rates shrink to. For a load that cannot be
// settled yet it is per hundred units of weight.
func OverDry(d Desk, l *load.Load) (o *settle.OverDry, found bool) {
	if s, _ := Preview(d, l); s != nil {
		return s.OverDry()
	}
	e, err := EditionFor(d, l)
	if err != nil || e == nil || l.Sample.Moisture == nil {
		return nil, false
	}
	return settle.OverDryPerHundred(e, e.Rounding.Moisture.Apply(l.Sample.Moisture.Percent))
}

// overDryText describes the over-dry loss to a grower, and who pays for it.
func overDryText(o *settle.OverDry) message.Text {
	base, _ := o.Sheet.Step("overdry.base")
	weight, _ := o.Sheet.Step("overdry.weight")
	text := message.New("It is drier than %s: %s hold the dry matter of %s, so %s (%s) are given away, %s.",
		base.Printed(), weight.Printed(), o.Equal.Printed(), o.GivenAway.Printed(), o.Quantity.Printed(), o.GivenAway.Note())
	if o.Worth != nil {
		text = message.List(" ", text, message.New("They are worth %s.", o.Worth.Printed()))
	}
	return text
}

// doubts returns the flags recorded with a load's sample.
func doubts(l *load.Load) []moisture.Flag {
	var out []moisture.Flag
	for _, flag := range l.Sample.Flags {
		out = append(out, moisture.Flag{Code: moisture.Code(flag.Code), What: flag.Message()})
	}
	return out
}

// Band is a load's moisture as the rates record it, with the tolerance that the
// maker states for the meter it was read on.
func Band(ctx context.Context, d Desk, l *load.Load) (moisture.Band, error) {
	m := l.Sample.Moisture
	if m == nil {
		return moisture.Band{}, message.NotFound.Errorf("%s has no moisture yet. Test its sample first", LoadTitle(l))
	}
	recorded := moisture.MoistureRounding
	if e, err := EditionFor(d, l); err == nil && e != nil && !e.Rounding.Moisture.IsExact() {
		recorded = e.Rounding.Moisture
	}
	tolerance, err := meterTolerance(ctx, d, m)
	return moisture.BandOf(recorded.Apply(m.Percent), tolerance), err
}

// meterTolerance returns the maker's tolerance of the meter, as recorded with the tests; for a
// figure typed in, that of the elevator's meter of that name today; zero where no meter was used or
// none is known.
func meterTolerance(ctx context.Context, d Desk, m *load.Moisture) (quantity.Amount, error) {
	id, meters := m.Meter, []meter.Meter(nil)
	if m.Bench != nil {
		id, meters = usedMeter(m.Bench.Tests), m.Bench.Meters
	} else {
		var err error
		if meters, err = Meters(ctx, d); err != nil {
			return quantity.Amount{}, err
		}
	}
	for _, meter := range meters {
		if meter.ID == id {
			return meter.Tolerance, nil
		}
	}
	return quantity.Amount{}, nil
}

// usedMeter is the meter of the tests that count; the mean is of one.
func usedMeter(t moisture.Tests) string {
	dropped := map[int]bool{}
	for _, d := range t.Exclusions {
		dropped[d.Test] = true
	}
	for _, r := range t.Readings {
		if !dropped[r.Seq] {
			return r.Meter
		}
	}
	return ""
}
