package present

import (
	"tenthpoint/internal/house"
	"tenthpoint/ui/model"
)

// Gear is what stands in the scale house: scales, where papers go, the people,
// pits and bins, and the book itself.
type Gear struct {
	frame  *Frame
	onDeck bool // a truck stands on the simulated scale
}

// NewGear makes the sheet.
func NewGear(f *Frame) *Gear { return &Gear{frame: f} }

// Scales are the scales: name, division, capacity, link, and what it shows.
func (g *Gear) Scales() []model.Row {
	scales := g.frame.Desk.Profile().Scales
	out := make([]model.Row, len(scales))
	for i, s := range scales {
		stands := g.scaleStands(s)
		out[i] = model.Row{Key: s.ID, State: stands.State, Cells: []string{s.ID, s.Division.String(), s.Capacity.String(), linkWords(s.Link), stands.Text}}
	}
	return out
}

func linkWords(link string) string {
	switch link {
	case "":
		return Say("none: typed")
	case house.SimulatedLink:
		return Say("simulated")
	}
	return link
}

// scaleStands is what a scale shows now. Only the one this desk weighs on is
// listened to.
func (g *Gear) scaleStands(s house.Scale) model.Remark {
	here, _ := g.frame.Scale()
	switch {
	case s.ID != here.ID:
		return model.Remark{State: model.Plain, Text: Say("not weighed on here")}
	case s.Link == "":
		return model.Remark{State: model.Plain, Text: Say("weights are typed")}
	case g.frame.Indicator == nil:
		return model.Remark{State: model.Stop, Text: Say("no link")}
	}
	weight, atRest, err := g.frame.Indicator.Latest()
	switch {
	case err != nil:
		return model.Remark{State: model.Stop, Text: Say("no reading")}
	case atRest:
		return model.Remark{State: model.OK, Text: Say("%s, at rest", weight)}
	}
	return model.Remark{State: model.Wait, Text: Say("%s, moving", weight)}
}

// ScaleSaid is what is to be known of the link, in a sentence.
func (g *Gear) ScaleSaid() model.Remark {
	s, known := g.frame.Scale()
	isDemo := g.frame.Desk.Profile().Demo
	switch {
	case !known:
		return model.Remark{State: model.Stop, Text: Say("No scale is set up. Ctrl+H adds one; its division and capacity are on its plate.")}
	case s.Link == "" && isDemo:
		return model.Remark{State: model.Plain, Text: Say("Weights are typed. Ctrl+Shift+O lets a simulated scale stand in on this invented elevator.")}
	case s.Link == "":
		return model.Remark{State: model.Plain, Text: Say("Weights are typed and print MANUAL WT. Give the scale a link (Ctrl+E) to read its indicator.")}
	case g.frame.Indicator == nil:
		return model.Remark{State: model.Stop, Text: Say("The link %s could not be opened. Check it with Ctrl+E.", s.Link)}
	}
	if _, _, err := g.frame.Indicator.Latest(); err != nil {
		return model.Remark{State: model.Stop, Text: sentence(err)}
	}
	if g.frame.Deck != nil {
		return model.Remark{State: model.Warn, Text: Say("A simulated scale: example - not for trade. Ctrl+O rolls a truck on or off, F10 on a load takes its weight.")}
	}
	return model.Remark{State: model.OK, Text: Say("The indicator is read. F10 on a load takes the weight.")}
}

// People are those who work at the desk: name and role.
func (g *Gear) People() []model.Row {
	var out []model.Row
	for _, p := range g.frame.Desk.People() {
		out = append(out, model.Row{Key: p.Name, Cells: []string{p.Name, RoleWord(p.Role)}})
	}
	return out
}

// Bins are the pits and bins: code, name and grain.
func (g *Gear) Bins() []model.Row {
	var out []model.Row
	for _, b := range g.frame.known().bins {
		out = append(out, model.Row{Key: b.ID, Cells: []string{b.ID, b.Name, orElse(grainName(b.Commodity), Say("any"))}})
	}
	return out
}

// IsListening reports whether a scale is read, so that what it shows changes by
// itself.
func (g *Gear) IsListening() bool { return g.frame.Indicator != nil }
