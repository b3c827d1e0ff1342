package equipment

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/truckscale"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Equipment is the presenter of scales, printer, people, pits and bins, and the book itself.
type Equipment struct {
	session *session.Session
	onDeck  bool // a truck is on the simulated scale
	Logs    *ScaleLogs
}

// NewEquipment makes the sheet.
func NewEquipment(f *session.Session) *Equipment {
	return &Equipment{session: f, Logs: NewScaleLogs(f)}
}

// scaleColumns are the columns of the scales.
func (g *Equipment) scaleColumns() model.Columns[elevator.Scale] {
	return model.Columns[elevator.Scale]{
		model.Words(g.session.Say("Scale"), 4, func(s elevator.Scale) string { return s.ID }),
		model.Figures(g.session.Say("Division"), 5, func(s elevator.Scale) string { return s.Division.String() }).Dropped(2),
		model.Figures(g.session.Say("Capacity"), 9, func(s elevator.Scale) string { return s.Capacity.String() }).Dropped(1),
		model.Words(g.session.Say("Link"), 8, func(s elevator.Scale) string { return linkWords(g.session.Language, s.Link) }).Growing().Dropped(3),
		model.Words(g.session.Say("Shows"), 14, func(s elevator.Scale) string { return g.scaleStands(s).Text }).Stated(),
	}
}

// Scales are the scales of the elevator.
func (g *Equipment) Scales() []model.Row {
	columns := g.scaleColumns()
	var out []model.Row
	for _, s := range g.session.Desk.Profile().Scales {
		out = append(out, model.Row{Key: s.ID, State: g.scaleStands(s).State, Cells: columns.Cells(s)})
	}
	return out
}

func linkWords(in session.Language, link string) string {
	switch link {
	case "":
		return in.Say("none: typed")
	case elevator.SimulatedLink:
		return in.Say("simulated")
	}
	return link
}

// scaleStands returns the reading of a scale. Only this desk's own scale is connected.
func (g *Equipment) scaleStands(s elevator.Scale) model.Status {
	here, _ := g.session.Scale()
	if g.Logs.status(s).State == truckscale.Out {
		return model.Status{State: model.Stop, Text: g.session.Say("out of service")}
	}
	switch {
	case s.ID != here.ID:
		return model.Status{State: model.Plain, Text: g.session.Say("not weighed on here")}
	case s.Link == "":
		return model.Status{State: model.Plain, Text: g.session.Say("weights are typed")}
	case g.session.Indicator == nil:
		return model.Status{State: model.Stop, Text: g.session.Say("no link")}
	}
	display, err := g.session.Indicator.Latest()
	if err != nil {
		return model.Status{State: model.Stop, Text: g.session.Say("no reading")}
	}
	return display.Says(g.session.Language)
}

// ScaleSaid returns the status of the link, in a sentence.
func (g *Equipment) ScaleSaid() model.Status {
	s, known := g.session.Scale()
	isDemo := g.session.Desk.Profile().Demo
	switch {
	case !known:
		return model.Status{State: model.Stop, Text: g.session.Say("No scale is set up. Ctrl+H adds one; its division and capacity are on its plate.")}
	case s.Link == "" && isDemo:
		return model.Status{State: model.Plain, Text: g.session.Say("Weights are typed. Ctrl+Shift+O lets a simulated scale stand in on this invented elevator.")}
	case s.Link == "":
		return model.Status{State: model.Plain, Text: g.session.Say("Weights are typed and print MANUAL WT. Give the scale a link (Ctrl+E) to read its indicator.")}
	case g.session.Indicator == nil:
		return model.Status{State: model.Stop, Text: g.session.Say("The link %s could not be opened. Check it with Ctrl+E.", s.Link)}
	}
	display, err := g.session.Indicator.Latest()
	switch {
	case err != nil:
		return model.Status{State: model.Stop, Text: g.session.Sentence(err)}
	case !display.IsAtRest() && display.Condition != session.Moving:
		return model.Status{State: model.Stop, Text: g.session.Say("The indicator says %s: nothing is weighed so. See the deck clear, zero the indicator, show the gross.", display.Says(g.session.Language).Text)}
	}
	if g.session.Deck != nil {
		return model.Status{State: model.Warn, Text: g.session.Say("A simulated scale: example - not for trade. Ctrl+O rolls a truck on or off, F10 on a load takes its weight.")}
	}
	return model.Status{State: model.OK, Text: g.session.Say("The indicator is read. F10 on a load takes the weight.")}
}

// personColumns are the columns of the people.
func personColumns(in session.Language) model.Columns[elevator.Person] {
	return model.Columns[elevator.Person]{
		model.Words(in.Say("At the desk"), 14, func(p elevator.Person) string { return p.Name }).Growing(),
		model.Words(in.Say("Role"), 8, func(p elevator.Person) string { return in.RoleWord(p.Role) }),
	}
}

// People are those who work at the desk.
func (g *Equipment) People() []model.Row {
	var out []model.Row
	for _, p := range g.session.Desk.People() {
		out = append(out, model.Row{Key: p.Name, Cells: personColumns(g.session.Language).Cells(p)})
	}
	return out
}

// binColumns are the columns of the pits and bins.
func binColumns(in session.Language) model.Columns[elevator.Bin] {
	return model.Columns[elevator.Bin]{
		model.Words(in.Say("Code"), 5, func(b elevator.Bin) string { return b.ID }),
		model.Words(in.Say("Pit or bin"), 12, func(b elevator.Bin) string { return b.Name }).Growing(),
		model.Words(in.Say("Grain"), 14, func(b elevator.Bin) string {
			return session.OrElse(in.GrainName(b.Commodity), in.Say("any"))
		}).Dropped(1),
	}
}

// Bins are the pits and bins.
func (g *Equipment) Bins() []model.Row {
	var out []model.Row
	for _, b := range g.session.Known().Bins {
		out = append(out, model.Row{Key: b.ID, Cells: binColumns(g.session.Language).Cells(b)})
	}
	return out
}

// IsListening reports whether a scale is connected, so that the reading changes without an act.
func (g *Equipment) IsListening() bool { return g.session.Indicator != nil }
