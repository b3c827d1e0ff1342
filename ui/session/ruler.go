package session

import (
	"strings"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

var markKinds = map[moisture.RulerMarkKind]model.MarkKind{
	moisture.TenthMark: model.TenthMark, moisture.PointMark: model.PointMark, moisture.LimitMark: model.LimitMark, moisture.ReadingMark: model.ReadingMark,
}

// RulerOf is the bench's ruler in words of this desk.
func RulerOf(from moisture.Ruler) model.Ruler {
	var r model.Ruler
	for _, m := range from.Marks {
		mark := model.Mark{At: markPlace(from, m), Label: m.Label, Kind: markKinds[m.Kind]}
		if m.Kind == moisture.LimitMark {
			mark.Label = limitText(m.Limits)
		}
		r.Marks = append(r.Marks, mark)
	}
	if f := from.Free; f != nil {
		r.Lay(model.Band{From: rulerPlace(from, f.From), To: rulerPlace(from, f.To), Label: Say("nothing taken")})
	}
	if b := from.Band; b != nil {
		r.Lay(model.Band{From: rulerPlace(from, b.From), To: rulerPlace(from, b.To), Label: Say("the meter's tolerance"), Around: true})
	}
	return r
}

// rulerPlace is the place of a moisture in thousandths of the ruler's length.
func rulerPlace(r moisture.Ruler, at quantity.Amount) int { return WholeThousandths(r.Part(at), ToOne) }

// markPlace is the place of a mark. Graduations are rounded down: they are
// spaced evenly from the low end.
func markPlace(r moisture.Ruler, m moisture.RulerMark) int {
	if m.Kind == moisture.PointMark || m.Kind == moisture.TenthMark {
		return WholeThousandths(r.Part(m.At), downToOne)
	}
	return rulerPlace(r, m.At)
}

var downToOne = quantity.To("1", quantity.Down)

// WholeThousandths is a part of a whole in whole thousandths.
func WholeThousandths(part quantity.Amount, r quantity.Rounding) int {
	d, _ := r.Apply(part.Mul(quantity.Int(1000, quantity.Plain))).Decimal()
	return int(d.IntPart())
}

// MarkReading says how the reading stands.
func MarkReading(r *model.Ruler, state model.State) {
	for i := range r.Marks {
		if r.Marks[i].Kind == model.ReadingMark {
			r.Marks[i].State = state
		}
	}
}

// changes are what changes at a moisture, by the limits that fall on it.
var changes = map[string]string{
	"shrink-to":                                 "shrink to %s",
	"shrink trigger":                            "shrink above %s",
	"drying trigger":                            "drying above %s",
	"shrink-to, shrink trigger":                 "shrink above and to %s",
	"shrink-to, drying trigger":                 "shrink to and drying above %s",
	"shrink trigger, drying trigger":            "shrink and drying above %s",
	"shrink-to, shrink trigger, drying trigger": "shrink and drying above and to %s",
}

// limitText says what changes where a mark stands: "shrink above and to 15.0".
// The edge of a class has its own name.
func limitText(limits []moisture.Limit) string {
	var names []string
	text, at := "", Bare(limits[0].At)
	for _, l := range limits {
		if _, known := changes[l.Name]; known {
			names = append(names, l.Name)
			continue
		}
		text = Join(", ", text, Say(l.Name)+" "+at)
	}
	if len(names) == 0 {
		return text
	}
	return Join(", ", Say(changes[strings.Join(names, ", ")], at), text)
}

// ToOne shows a quantity over a bar, where there is no room for decimals.
var ToOne = quantity.To("1", quantity.HalfUp)
