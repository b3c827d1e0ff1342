package rates

import (
	"fmt"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

var percentPerPoint = quantity.Percent.Per(quantity.Point)

func (r *reader) shrink() {
	t, _ := r.root.Table("shrink", true)
	s := Shrink{Row: t.Place(""), Credit: "none", Rounding: t.OptionalRounding("round", r.e.Rounding.Weight)}
	s.Method = ShrinkMethod(t.Choice("method", string(Water), string(PerPoint), string(ShrinkTable), string(NoShrink)))
	if s.Method == NoShrink {
		r.e.Shrink = s
		return
	}
	s.Basis = basis(t)
	s.Trigger, s.To = moistureCell(t, "trigger"), moistureCell(t, "to")
	s.Floor = optionalCell(t, "floor", quantity.Percent)
	s.Percent = t.OptionalRounding("round_percent", quantity.Unrounded)
	switch s.Method {
	case PerPoint:
		s.Rate = cell(t, "rate", percentPerPoint)
		s.Step = step(t)
		notNegative(t, "rate", s.Rate)
	case ShrinkTable:
		s.Table = shrinkTable(t)
	}
	r.credit(t, &s)
	checkShrink(t, s)
	r.e.Shrink = s
}

func (r *reader) credit(t *tomlfile.Table, s *Shrink) {
	s.Credit = t.Choice("over_dry", "none", "dry-matter")
	if s.Credit == "dry-matter" {
		s.CreditFloor = moistureCell(t, "over_dry_floor")
		if s.CreditFloor.Amount.More(s.To.Amount) {
			t.Wrong("over_dry_floor", fmt.Sprintf("the driest moisture credited, %s, is above the shrink-to, %s", s.CreditFloor.Amount, s.To.Amount), "Write a moisture below the shrink-to.")
		}
	}
}

func checkShrink(t *tomlfile.Table, s Shrink) {
	if s.To.Amount.More(s.Trigger.Amount) {
		t.Wrong("to", fmt.Sprintf("shrink-to %s is above the trigger %s: grain between the two would gain weight by being wet", s.To.Amount, s.Trigger.Amount), "Bring shrink-to down to the trigger or below it.")
	}
	if s.Floor.Given() && s.To.Amount.Less(s.Floor.Amount) {
		t.Wrong("to", fmt.Sprintf("shrink-to %s is below the floor %s", s.To.Amount, s.Floor.Amount), "Raise shrink-to to the floor or above it.")
	}
}

func shrinkTable(t *tomlfile.Table) []Band {
	rows := t.Tables("row")
	bands := make([]Band, 0, len(rows))
	for _, row := range rows {
		b := band(row, quantity.Percent)
		b.Cell = percentCell(row, "shrink")
		bands = append(bands, b)
	}
	checkBands(t, rows, bands)
	return bands
}

func (r *reader) handling() {
	t, _ := r.root.Table("handling", true)
	h := Handling{Row: t.Place(""), Rounding: t.OptionalRounding("round", r.e.Rounding.Weight)}
	h.Method = HandlingMethod(t.Choice("method", string(NoHandling), string(OfWet), string(OfDried)))
	if h.Method != NoHandling && h.Method != "" {
		h.Rate = percentCell(t, "rate")
		h.Always = t.Bool("always")
	}
	r.e.Handling = h
}

func (r *reader) drying() {
	t, _ := r.root.Table("drying", true)
	d := Drying{Row: t.Place(""), Rounding: t.OptionalRounding("round", r.e.Rounding.Money)}
	d.Method = DryingMethod(t.Choice("method", string(NoDrying), string(DryPerPoint), string(DryBandsEach), string(DryBandsWhole)))
	if d.Method == NoDrying || d.Method == "" {
		r.e.Drying = d
		return
	}
	d.Basis = basis(t)
	d.Trigger, d.To = moistureCell(t, "trigger"), moistureCell(t, "to")
	if d.To.Amount.More(d.Trigger.Amount) {
		t.Wrong("to", fmt.Sprintf("drying counts points down to %s, above its trigger %s", d.To.Amount, d.Trigger.Amount), "Bring it down to the trigger or below it.")
	}
	d.Step = step(t)
	d.Minimum = optionalCell(t, "minimum", quantity.Dollar)
	if d.Method == DryPerPoint {
		d.Rate = cell(t, "rate", perPointUnits()...)
		notNegative(t, "rate", d.Rate)
		r.needsBushel(t, "rate", d.Rate)
	} else {
		d.Bands = r.dryingBands(t, d.Method)
	}
	r.e.Drying = d
}

func (r *reader) dryingBands(t *tomlfile.Table, method DryingMethod) []Band {
	rows := t.Tables("band")
	units := perPointUnits()
	if method == DryBandsWhole {
		units = append(units, perQuantityUnits()...)
	}
	bands := make([]Band, 0, len(rows))
	for _, row := range rows {
		b := band(row, quantity.Percent)
		b.Cell = cell(row, "rate", units...)
		notNegative(row, "rate", b.Cell)
		r.needsBushel(row, "rate", b.Cell)
		bands = append(bands, b)
	}
	checkBands(t, rows, bands)
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

func notNegative(t *tomlfile.Table, key string, c Cell) {
	if c.Amount.Sign() < 0 {
		t.Wrong(key, fmt.Sprintf("%s.%s is %s, below nought", t.Path(), key, c.Amount), "Write the size alone; a premium is said by its own word.")
	}
}

// needsBushel refuses a figure per bushel in an edition without bushels.
func (r *reader) needsBushel(t *tomlfile.Table, key string, c Cell) {
	unit := c.Amount.Unit()
	perBushel := unit == quantity.DollarsPerBu || unit == quantity.DollarsPerBu.Per(quantity.Point)
	if perBushel && !r.e.Units.HasBushels() {
		t.Wrong(key, fmt.Sprintf("%s is per bushel, and the edition has no bushel weight", c.Amount), "Add units.bushel with its source, or write the figure per cwt or t.")
	}
}
