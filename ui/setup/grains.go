package setup

import (
	"slices"

	"tenthpoint/internal/rates"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// grainChoice is a commodity that there are rates for, and the schedules it can
// be settled under.
type grainChoice struct {
	id        string // of its field
	commodity string
	schedules []*rates.Edition // the newest edition of each
}

// grainRow asks under which schedule a commodity is settled; empty is a
// commodity that is not taken.
func (s *SetUp) grainRow(g grainChoice) model.Field {
	f := model.Field{ID: g.id, Label: s.session.GrainName(g.commodity), Kind: model.FindField, Part: model.ClosePart, Chars: 12, Reading: s.session.Say("not taken here")}
	for _, e := range g.schedules {
		f.Options = append(f.Options, model.Option{Code: e.Schedule, Detail: provenance(s.session.Language, e)})
		if e.Schedule == s.values[g.id] {
			f.Reading = provenance(s.session.Language, e)
		}
	}
	return f
}

// addSchedule offers the schedule of an edition for its commodity. A later
// edition takes the place of an earlier one.
func (s *SetUp) addSchedule(e *rates.Edition) {
	i := slices.IndexFunc(s.grains, func(g grainChoice) bool { return g.commodity == e.Commodity.ID })
	if i < 0 {
		i = len(s.grains)
		s.grains = append(s.grains, grainChoice{id: grainField(e.Commodity.ID), commodity: e.Commodity.ID})
	}
	g := &s.grains[i]
	if last := len(g.schedules) - 1; last >= 0 && g.schedules[last].Schedule == e.Schedule {
		g.schedules[last] = e
		return
	}
	g.schedules = append(g.schedules, e)
}

func grainField(commodity string) string { return "grain." + commodity }

// provenance describes the origin of rates, so that nobody trades on invented ones.
func provenance(in session.Language, e *rates.Edition) string {
	switch e.Status {
	case rates.Example:
		return in.Say("%s: example rates - not for trade", e.ID)
	case rates.Statute:
		return in.Say("%s: a published rule", e.ID)
	}
	return in.Say("%s: your own rates", e.ID)
}

func (g grainChoice) has(schedule string) bool {
	return slices.ContainsFunc(g.schedules, func(e *rates.Edition) bool { return e.Schedule == schedule })
}

// example is the schedule of the example rates of a grain; empty where there are none.
func (g grainChoice) example() string {
	e, _ := session.Find(g.schedules, func(e *rates.Edition) bool { return e.Status == rates.Example })
	if e == nil {
		return ""
	}
	return e.Schedule
}

// takeExamples chooses the example rates of every grain that has none yet: to look around with, not
// for trade.
func takeExamples(s *SetUp) {
	for _, g := range s.grains {
		if example := g.example(); example != "" && s.values[g.id] == "" {
			s.Type(g.id, example)
		}
	}
	s.session.Window.Redraw()
	s.session.Notify(model.OK, s.session.Say("every grain has example rates now: to look around with, not for trade."))
}

// canTakeExamples reports whether a grain without rates could have example rates.
func canTakeExamples(s *SetUp) bool {
	return slices.ContainsFunc(s.grains, func(g grainChoice) bool { return g.example() != "" && s.values[g.id] == "" })
}
