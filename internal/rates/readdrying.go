package rates

import (
	"fmt"
	"slices"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

func (r *reader) drying() {
	t, _ := r.root.Table("drying", true)
	d := Drying{Row: t.Place(""), Rounding: lineRounding(t, r.e.Rounding.Money)}
	d.Method = DryingMethod(t.Choice("method", string(NoDrying), string(DryPerPoint), string(DryBandsEach), string(DryBandsWhole)))
	switch d.Method {
	case "":
		t.IgnoreRest()
	case NoDrying:
	default:
		r.readDrying(t, &d)
	}
	r.e.Drying = d
}

func (r *reader) readDrying(t *tomlfile.Table, d *Drying) {
	d.Basis = basis(t)
	d.Trigger, d.To = moistureCell(t, "trigger"), moistureCell(t, "to")
	if less(d.Trigger, d.To) {
		t.AddProblem("to", fmt.Sprintf("drying counts points down to %s, above its trigger %s", d.To.Amount.Written(), d.Trigger.Amount.Written()), "Bring it down to the trigger or below it.")
	}
	d.Step = step(t)
	d.Minimum = optionalCell(t, "minimum", quantity.Dollar)
	notNegative(t, "minimum", d.Minimum)
	if d.Method == DryPerPoint {
		d.Rate = r.dryingRate(t, perPointUnits())
		return
	}
	d.Bands = r.dryingBands(t, d)
}

func (r *reader) dryingRate(t *tomlfile.Table, units []quantity.Unit) Cell {
	c := cell(t, "rate", units...)
	notNegative(t, "rate", c)
	r.needsBushel(t, "rate", c)
	return c
}

func (r *reader) dryingBands(t *tomlfile.Table, d *Drying) []Band {
	rows := t.Tables("band")
	units := perPointUnits()
	if d.Method == DryBandsWhole {
		units = append(units, perQuantityUnits()...)
	}
	bands := make([]Band, 0, len(rows))
	for i, row := range rows {
		row.SetTitle(fmt.Sprintf("drying band %d", i+1))
		b := band(row, quantity.Percent)
		b.Cell = r.dryingRate(row, units)
		bands = append(bands, b)
	}
	checkBands(t, "band", rows, bands)
	if d.Method == DryBandsEach {
		checkFirst(rows, bands, "the moisture that points are counted down to", d.To)
	} else {
		checkFirst(rows, bands, "the trigger", d.Trigger)
	}
	return bands
}

func perQuantityUnits() []quantity.Unit {
	return []quantity.Unit{quantity.DollarsPerBu, quantity.DollarsPerCwt, quantity.DollarsPerT}
}

func perPointUnits() []quantity.Unit {
	units := perQuantityUnits()
	for i := range units {
		units[i] = units[i].Per(quantity.Point)
	}
	return units
}

var perBushelUnits = []quantity.Unit{quantity.DollarsPerBu, quantity.DollarsPerBu.Per(quantity.Point)}

// needsBushel refuses a figure per bushel in an edition without bushels.
func (r *reader) needsBushel(t *tomlfile.Table, key string, c Cell) {
	if slices.Contains(perBushelUnits, c.Amount.Unit()) && r.noBushel && r.e.Units.Settle != quantity.Bushel {
		t.AddProblem(key, fmt.Sprintf("%s is per bushel, and the edition has no bushel weight", c.Amount.Written()), "Add units.bushel with its source, or write the figure per cwt or t.")
	}
}
