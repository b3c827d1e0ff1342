package present

import (
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// charts are the charts in force for the crop on the meter, the one for the
// driest grain first.
func (s *SampleTest) charts() []*chart.Chart {
	m, ok := s.meter()
	if !ok || s.crop() == "" {
		return nil
	}
	return s.bench.equipment.Charts.For(s.crop(), m.Model, m.Calibration, s.bench.frame.Desk.Today())
}

func (s *SampleTest) chartOptions() []model.Option {
	out := []model.Option{}
	for _, c := range s.charts() {
		o := model.Option{Code: c.ID, Name: Say("%s of grain, %s", c.Mass, c.Moisture)}
		if c.Example {
			o.Detail = Say("example - not for trade")
		}
		out = append(out, o)
	}
	return out
}

// chooseChart takes the chart that was asked for, or else the one that goes
// with the sample mass. A mass that no chart is for takes the first one, and the
// mass is then in doubt.
func (s *SampleTest) chooseChart(r *moisture.Reading) {
	if s.method() != meter.ByDial {
		return
	}
	charts := s.charts()
	if _, offered := find(charts, func(c *chart.Chart) bool { return c.ID == s.typed["chart"] }); offered {
		r.Chart = s.typed["chart"]
	} else if len(charts) > 0 {
		r.Chart = forMass(charts, r.Mass).ID
	}
	s.sayChart(r, charts)
}

// forMass is the chart for the mass, or the first.
func forMass(charts []*chart.Chart, mass quantity.Amount) *chart.Chart {
	if c, ok := find(charts, func(c *chart.Chart) bool { return c.Mass.Equal(mass) }); ok {
		return c
	}
	return charts[0]
}

// sayChart says which chart is read, what mass it asks for, and how wet it
// goes.
func (s *SampleTest) sayChart(r *moisture.Reading, charts []*chart.Chart) {
	m, _ := s.meter()
	c, ok := find(charts, func(c *chart.Chart) bool { return c.ID == r.Chart })
	switch {
	case ok:
		s.next.readings["chart"] = Say("%s, %s", c.ID, c.Moisture)
		s.next.readings["mass"] = Say("the chart asks for %s", c.Mass)
		dials := c.Dials()
		s.next.readings["dial"] = Say("from %s to %s", dials[0].In(quantity.Plain), dials[len(dials)-1].In(quantity.Plain))
	case s.crop() != "" && m.ID != "":
		s.remark("chart", model.Stop, Say("There is no chart for %s on %s with calibration %s. Load the maker's chart, or test by oven.", grainName(s.crop()), m.Model, m.Calibration))
	}
}
