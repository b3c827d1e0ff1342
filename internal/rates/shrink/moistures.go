package shrink

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
)

// readMoistures reads the keys common to all methods that take water off: the base weight, the
// trigger and shrink-to moisture, and the credit for over-dry grain.
func readMoistures(t *tomlfile.Table, r *Rule) {
	r.Basis = rule.ReadBasis(t)
	r.Trigger, r.To = rule.ReadMoisture(t, "trigger"), rule.ReadMoisture(t, "to")
	if rule.Less(r.Trigger, r.To) {
		t.AddProblem("to", message.New("shrink-to %s is above the trigger %s: grain between the two would gain weight by being wet", r.To.Amount.Written(), r.Trigger.Amount.Written()), message.New("Bring shrink-to down to the trigger or below it."))
	}
	readFloor(t, r)
	readCredit(t, r)
}

// readFloor reads the lowest shrink-to allowed. Where the edition names a grain of the Canadian
// moisture classes the floor is checked: shrink-to may not be below the lowest tough moisture less
// 0.1 (SOR/2018-176).
func readFloor(t *tomlfile.Table, r *Rule) {
	r.Floor, r.FloorGrain = rule.ReadOptionalCell(t, "floor", quantity.Percent), t.OptionalText("floor_grain")
	if rule.Less(r.To, r.Floor) {
		t.AddProblem("to", message.New("shrink-to %s is below the floor %s", r.To.Amount.Written(), r.Floor.Amount.Written()), message.New("Raise shrink-to to the floor or above it."))
	}
	if r.FloorGrain == "" {
		return
	}
	lowest, found, err := grain.ShrinkFloor(r.FloorGrain)
	switch {
	case err != nil:
		t.AddProblem("floor_grain", message.New("shrink.floor_grain: %s", err), message.New("Write one of those names."))
	case !found:
		t.AddProblem("floor_grain", message.New("%s has no tough class, so no floor follows from it", r.FloorGrain), message.New("Take the line out, or name the grain that is meant."))
	case !r.Floor.Given() && !t.Has("floor"):
		t.AddProblem("floor_grain", message.New("shrink.floor_grain names %s, but there is no floor", r.FloorGrain), message.New("Add floor = %q.", lowest.FixedString(1)))
	case r.Floor.Given() && r.Floor.Amount.Less(lowest):
		t.AddProblem("floor", message.New("the floor %s is below %s, the lowest tough moisture of %s less 0.1", r.Floor.Amount.Written(), lowest.FixedString(1), r.FloorGrain), message.New("Write %s or more.", lowest.FixedString(1)))
	}
}

func readCredit(t *tomlfile.Table, r *Rule) {
	r.Credit = t.Choice("over_dry", "none", "dry-matter")
	switch r.Credit {
	case "dry-matter":
		r.CreditFloor = rule.ReadMoisture(t, "over_dry_floor")
		if rule.Less(r.To, r.CreditFloor) {
			t.AddProblem("over_dry_floor", message.New("the driest moisture credited, %s, is above the shrink-to, %s", r.CreditFloor.Amount.Written(), r.To.Amount.Written()), message.New("Write a moisture below the shrink-to."))
		}
	case "":
		t.OptionalText("over_dry_floor")
	}
}

func (r Rule) postCredit(w *rule.Lines) {
	if r.Credit == "none" {
		w.Text("over_dry", message.New("Over-dry grain"), message.New("no credit"))
		return
	}
	w.Text("over_dry", message.New("Over-dry grain"), message.New("credited with the water it lacks"))
	w.Cell("over_dry_floor", message.New("Driest moisture credited"), r.CreditFloor)
}
