package office

import (
	"context"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/settle"
)

// Tenth is a tenth of a point.
var Tenth = quantity.Of("0.1", quantity.Point)

// Worth is the value of a step of moisture for a load, and of the meter's tolerance.
type Worth struct {
	settle.Worth
	// Band is the moisture with the meter's tolerance to either side, and
	// Tolerance the load settled at both its ends; nil while no tolerance is
	// entered for the meter.
	Band      moisture.Band
	Tolerance *settle.Worth
	Ruler     moisture.Ruler
}

// WorthOf settles a load a step of moisture drier and wetter, and over its meter's tolerance. A
// load with a ticket is settled by the engine and under the edition kept with it. The error is a
// [settle.Problems] while the load cannot be settled.
func WorthOf(ctx context.Context, d Desk, l *load.Load, step quantity.Amount) (Worth, error) {
	e, err := settledUnder(ctx, d, l)
	if err != nil {
		return Worth{}, err
	}
	var w Worth
	if w.Worth, err = EngineOf(d, l).WorthOf(l.SettleFacts(), e, step); err != nil {
		return Worth{}, err
	}
	if w.Band, err = Band(ctx, d, l); err != nil {
		return Worth{}, err
	}
	w.Ruler = rulerFor(d, l, e, w.Band)
	if !w.Band.Stated() {
		return w, nil
	}
	over, err := EngineOf(d, l).WorthOf(l.SettleFacts(), e, w.Band.High.Sub(w.Band.Reading).In(quantity.Point))
	w.Tolerance = &over
	return w, err
}

// settledUnder is the edition a load was settled under, or would be now.
func settledUnder(ctx context.Context, d Desk, l *load.Load) (*rates.Edition, error) {
	find := func() (*rates.Edition, error) { return d.Kept(ctx, l.Settled.EditionHash) }
	if l.Settled == nil {
		if _, problems := Preview(d, l); len(problems) > 0 {
			return nil, problems
		}
		find = func() (*rates.Edition, error) { return EditionFor(d, l) }
	}
	e, err := find()
	if err != nil {
		return nil, err
	}
	tables, err := TablesFor(ctx, d, l)
	return e.By(tables), err
}

// Ruler returns the moisture ruler of a load under an edition, which may be nil: the trigger and the
// shrink-to moisture of the rates, the edges of its classes, and its reading if it has been tested.
func Ruler(ctx context.Context, d Desk, l *load.Load, e *rates.Edition) (moisture.Ruler, error) {
	var band moisture.Band
	if l.Sample.Moisture != nil {
		var err error
		if band, err = Band(ctx, d, l); err != nil {
			return moisture.Ruler{}, err
		}
	}
	return rulerFor(d, l, e, band), nil
}

func rulerFor(d Desk, l *load.Load, e *rates.Edition, band moisture.Band) moisture.Ruler {
	var limits []moisture.Limit
	if e != nil {
		limits = appendMark(limits, message.New("shrink-to"), e, e.Shrink.To)
		limits = appendMark(limits, message.New("shrink trigger"), e, e.Shrink.Trigger)
		limits = appendMark(limits, message.New("drying trigger"), e, e.Drying.Trigger)
	}
	limits = append(limits, near(classLimits(d, l, e), band, limits)...)
	r := moisture.NewRuler(band, limits)
	if e != nil && e.Shrink.Trigger.Given() {
		r.MarkFree(e.Shrink.Trigger.Amount, message.New("nothing taken"))
	}
	return r
}

func appendMark(out []moisture.Limit, name message.Text, e *rates.Edition, c rule.Cell) []moisture.Limit {
	if !c.Given() {
		return out
	}
	return append(out, moisture.Limit{Name: name, At: c.Amount, Source: c.Source})
}

// nearPoints is the greatest distance of a marked class limit from the reading; farther ones would
// only make the ruler long.
var nearPoints = quantity.Int(4, quantity.Percent)

// near keeps the class limits worth showing: those about the reading, or about
// the rates' own limits while nothing has been read.
func near(classes []moisture.Limit, band moisture.Band, limits []moisture.Limit) []moisture.Limit {
	about := []quantity.Amount{}
	if band.Reading.Unit() == quantity.Percent {
		about = append(about, band.Reading)
	} else {
		for _, l := range limits {
			about = append(about, l.At)
		}
	}
	var out []moisture.Limit
	for i, c := range classes {
		keep := i == 0 && len(about) == 0
		for _, a := range about {
			apart := quantity.Max(c.At.Sub(a), a.Sub(c.At))
			keep = keep || !apart.More(nearPoints)
		}
		if keep {
			out = append(out, c)
		}
	}
	return out
}
