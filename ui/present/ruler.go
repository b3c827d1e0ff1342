package present

import (
	"strings"

	"tenthpoint/internal/bench"
	"tenthpoint/ui/model"
)

var markKinds = map[bench.RulerMarkKind]model.MarkKind{
	bench.TenthMark: model.TenthMark, bench.PointMark: model.PointMark, bench.LimitMark: model.LimitMark, bench.ReadingMark: model.ReadingMark,
}

// rulerOf is the bench's ruler in words of this desk.
func rulerOf(from bench.Ruler) model.Ruler {
	var r model.Ruler
	for _, m := range from.Marks {
		mark := model.Mark{At: m.At, Label: m.Label, Kind: markKinds[m.Kind]}
		if m.Kind == bench.LimitMark {
			mark.Label = limitText(m.Limits)
		}
		r.Marks = append(r.Marks, mark)
	}
	if f := from.Free; f != nil && f.To > f.From {
		r.Bands = append(r.Bands, model.Band{From: f.From, To: f.To, Label: Say("nothing taken")})
	}
	if b := from.Band; b != nil && b.To > b.From {
		r.Bands = append(r.Bands, model.Band{From: b.From, To: b.To, Label: Say("the meter's tolerance"), Around: true})
	}
	return r
}

// markReading says how the reading stands.
func markReading(r *model.Ruler, state model.State) {
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
func limitText(limits []bench.Limit) string {
	var names []string
	text, at := "", bare(limits[0].At)
	for _, l := range limits {
		if _, known := changes[l.Name]; known {
			names = append(names, l.Name)
			continue
		}
		text = join(", ", text, Say(l.Name)+" "+at)
	}
	if len(names) == 0 {
		return text
	}
	return join(", ", Say(changes[strings.Join(names, ", ")], at), text)
}
