package rates

import (
	"fmt"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

var percentPerPoint = quantity.Percent.Per(quantity.Point)

// dockage reads what the edition adds to the grain's own rule. A grain of which
// no dockage is determined has no such table.
func (r *reader) dockage() {
	_, has := r.e.Commodity.Dockage()
	if !has && !r.root.Has(dockagePlace) {
		return
	}
	t, _ := r.root.Table(dockagePlace, has)
	if !has {
		if r.e.Commodity.ID != "" {
			t.AddProblem("", fmt.Sprintf("no dockage is determined of %s", r.e.Commodity.Name), "Take the table out.")
		}
		t.IgnoreRest()
		return
	}
	r.e.Dockage = DockageRule{
		MustTest: t.Choice("untested", "refuse", "none") == "refuse",
		Rounding: lineRounding(t, r.e.Rounding.Weight), Row: t.Place(""),
	}
}

func (r *reader) shrink() {
	t, _ := r.root.Table("shrink", true)
	s := Shrink{Row: t.Place(""), Credit: "none", Rounding: lineRounding(t, r.e.Rounding.Weight)}
	s.Method = ShrinkMethod(t.Choice("method", string(Water), string(PerPoint), string(ShrinkTable), string(NoShrink)))
	switch s.Method {
	case "":
		t.IgnoreRest()
	case NoShrink:
	default:
		readShrink(t, &s)
	}
	r.e.Shrink = s
}

func readShrink(t *tomlfile.Table, s *Shrink) {
	s.Basis = basis(t)
	s.Trigger, s.To = moistureCell(t, "trigger"), moistureCell(t, "to")
	if less(s.Trigger, s.To) {
		t.AddProblem("to", fmt.Sprintf("shrink-to %s is above the trigger %s: grain between the two would gain weight by being wet", s.To.Amount.Written(), s.Trigger.Amount.Written()), "Bring shrink-to down to the trigger or below it.")
	}
	readFloor(t, s)
	credit(t, s)
	switch s.Method {
	case PerPoint:
		s.Rate = cell(t, "rate", percentPerPoint)
		notNegative(t, "rate", s.Rate)
		s.Step = step(t)
		s.Percent = t.OptionalRounding("round_percent", quantity.Unrounded)
	case ShrinkTable:
		s.Table = shrinkTable(t, s.Trigger)
	}
}

// readFloor reads the lowest shrink-to allowed. Where the edition names a grain
// of the Canadian moisture classes the floor is held against it: shrink-to may
// not be below the lowest tough moisture less 0.1 (SOR/2018-176).
func readFloor(t *tomlfile.Table, s *Shrink) {
	s.Floor, s.FloorGrain = optionalCell(t, "floor", quantity.Percent), t.OptionalText("floor_grain")
	if less(s.To, s.Floor) {
		t.AddProblem("to", fmt.Sprintf("shrink-to %s is below the floor %s", s.To.Amount.Written(), s.Floor.Amount.Written()), "Raise shrink-to to the floor or above it.")
	}
	if s.FloorGrain == "" {
		return
	}
	lowest, found, err := grain.ShrinkFloor(s.FloorGrain)
	switch {
	case err != nil:
		t.AddProblem("floor_grain", "shrink.floor_grain: "+err.Error(), "Write one of those names.")
	case !found:
		t.AddProblem("floor_grain", fmt.Sprintf("%s has no tough class, so no floor follows from it", s.FloorGrain), "Take the line out, or name the grain that is meant.")
	case !s.Floor.Given() && !t.Has("floor"):
		t.AddProblem("floor_grain", fmt.Sprintf("shrink.floor_grain names %s, but there is no floor", s.FloorGrain), fmt.Sprintf("Add floor = %q.", lowest.FixedString(1)))
	case s.Floor.Given() && s.Floor.Amount.Less(lowest):
		t.AddProblem("floor", fmt.Sprintf("the floor %s is below %s, the lowest tough moisture of %s less 0.1", s.Floor.Amount.Written(), lowest.FixedString(1), s.FloorGrain), fmt.Sprintf("Write %s or more.", lowest.FixedString(1)))
	}
}

func credit(t *tomlfile.Table, s *Shrink) {
	s.Credit = t.Choice("over_dry", "none", "dry-matter")
	switch s.Credit {
	case "dry-matter":
		s.CreditFloor = moistureCell(t, "over_dry_floor")
		if less(s.To, s.CreditFloor) {
			t.AddProblem("over_dry_floor", fmt.Sprintf("the driest moisture credited, %s, is above the shrink-to, %s", s.CreditFloor.Amount.Written(), s.To.Amount.Written()), "Write a moisture below the shrink-to.")
		}
	case "":
		t.OptionalText("over_dry_floor")
	}
}

func shrinkTable(t *tomlfile.Table, trigger Cell) []Band {
	rows := t.Tables("row")
	bands := make([]Band, 0, len(rows))
	for i, row := range rows {
		row.SetTitle(fmt.Sprintf("shrink row %d", i+1))
		b := band(row, quantity.Percent)
		b.Cell = percentCell(row, "shrink")
		if i > 0 && less(b.Cell, bands[i-1].Cell) {
			row.AddProblem("shrink", fmt.Sprintf("shrink falls from %s to %s while the moisture rises", bands[i-1].Cell.Amount.Written(), b.Cell.Amount.Written()), "Wetter grain has no less water in it: mend one of the two rows.")
		}
		bands = append(bands, b)
	}
	checkBands(t, "row", rows, bands)
	checkFirst(rows, bands, "the trigger", trigger)
	return bands
}

func (r *reader) handling() {
	t, _ := r.root.Table("handling", true)
	h := Handling{Row: t.Place(""), Rounding: lineRounding(t, r.e.Rounding.Weight)}
	h.Method = HandlingMethod(t.Choice("method", string(NoHandling), string(OfWet), string(OfDried)))
	switch h.Method {
	case "":
		t.IgnoreRest()
	case NoHandling:
	default:
		h.Rate = percentCell(t, "rate")
		h.Always = t.Bool("always")
		if r.e.Shrink.Method == NoShrink && !h.Always && t.Has("always") {
			t.AddProblem("always", "handling is taken only when water is shrunk, and this edition shrinks nothing", "Write always = true, or method = \"none\".")
		}
	}
	r.e.Handling = h
}
