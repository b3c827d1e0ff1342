package session

import (
	"strings"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
)

// RulerOf is a moisture ruler in the words of this desk.
func RulerOf(in Language, from moisture.Ruler) model.Ruler {
	var r model.Ruler
	for _, m := range from.Marks {
		mark := model.Mark{At: from.MarkPlace(m), Label: in.Text(m.Label), Kind: m.Kind}
		if m.Kind == moisture.LimitMark {
			mark.Label = limitText(in, m.Limits)
		}
		r.Marks = append(r.Marks, mark)
	}
	if f := from.Free; f != nil {
		r.Lay(model.Band{From: from.Place(f.From), To: from.Place(f.To), Label: in.Text(f.Label)})
	}
	if b := from.Band; b != nil {
		r.Lay(model.Band{From: from.Place(b.From), To: from.Place(b.To), Label: in.Text(b.Label), Around: true})
	}
	return r
}

// MarkReading sets the state of the reading.
func MarkReading(r *model.Ruler, state model.State) {
	for i := range r.Marks {
		if r.Marks[i].Kind == model.ReadingMark {
			r.Marks[i].State = state
		}
	}
}

// changes describe what changes at a moisture, by the limits at it.
var changes = map[string]string{
	"shrink-to":                                 "shrink to %s",
	"shrink trigger":                            "shrink above %s",
	"drying trigger":                            "drying above %s",
	"shrink-to, shrink trigger":                 "shrink above and to %s",
	"shrink-to, drying trigger":                 "shrink to and drying above %s",
	"shrink trigger, drying trigger":            "shrink and drying above %s",
	"shrink-to, shrink trigger, drying trigger": "shrink and drying above and to %s",
}

// limitText describes the limits at a mark: "shrink above and to 15.0". The edge of a class has its
// own name.
func limitText(in Language, limits []moisture.Limit) string {
	var names []string
	text, at := "", Bare(limits[0].At)
	for _, l := range limits {
		if _, known := changes[l.Name.Key()]; known {
			names = append(names, l.Name.Key())
			continue
		}
		text = Join(", ", text, in.Text(l.Name)+" "+at)
	}
	if len(names) == 0 {
		return text
	}
	return Join(", ", in.Say(changes[strings.Join(names, ", ")], at), text)
}

// ToOne shows a quantity over a bar, where there is no room for decimals.
var ToOne = quantity.To("1", quantity.HalfUp)

// PictureOf is the picture of a paper in the words of this desk.
func PictureOf(in Language, p report.Picture) model.Picture {
	out := model.Picture{
		Title: in.Text(p.Title), Says: in.Text(p.Says), Empty: in.Text(p.Empty), Stroke: in.Text(p.Stroke),
		Edge: model.PictureEdge{At: p.Edge.At, Label: in.Text(p.Edge.Label)}, Base: p.Base,
	}
	for _, s := range p.Stacks {
		out.Stacks = append(out.Stacks, stackOf(in, s))
	}
	for _, l := range p.Legend {
		out.Legend = append(out.Legend, model.Legend{Name: in.Text(l.Name), Look: l.Look})
	}
	for _, g := range p.Guides {
		guide := model.Guide{At: g.At, Label: in.Text(g.Label)}
		if g.Limit {
			guide.State = model.Stop
		}
		out.Guides = append(out.Guides, guide)
	}
	return out
}

func stackOf(in Language, s report.Stack) model.Stack {
	out := model.Stack{
		Label: in.Text(s.Label), Value: in.Text(s.Value), Said: in.Text(s.Said),
		Stroke: s.Stroke, HasStroke: s.HasStroke, Opens: s.Opens, Now: s.Now,
	}
	for _, part := range s.Parts {
		out.Parts = append(out.Parts, model.StackPart(part))
	}
	return out
}
