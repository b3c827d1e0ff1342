package present

import (
	"tenthpoint/internal/bench"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
)

// CheckChart is a meter's log as a picture: its error from check to check
// between the limits. Places are thousandths from the left and from the bottom.
type CheckChart struct {
	Points []model.ChartPoint
	Limits []model.Guide
	Scale  []model.Guide // values at the left
	Days   []model.Guide // days beneath
	Empty  string
}

// Chart is the log of the meter in hand as a picture.
func (m *Meters) Chart() CheckChart {
	from := m.log.Chart
	out := CheckChart{Empty: Say("No check yet.")}
	if len(from.Points) == 0 {
		return out
	}
	for _, p := range from.Points {
		point := model.ChartPoint{X: p.X, Y: p.Y}
		if p.Outside {
			point.State, point.Label = model.Stop, withSign(p.Check.Error(), bare(p.Check.Error()))
		}
		out.Points = append(out.Points, point)
	}
	out.Scale = m.scale(from)
	out.Limits = limitLines(from)
	first, last := from.Points[0].Check.Day, from.Points[len(from.Points)-1].Check.Day
	out.Days = []model.Guide{{At: 40, Label: m.frame.Date(first)}}
	if last != first {
		out.Days = append(out.Days, model.Guide{At: 950, Label: m.frame.Date(last)})
	}
	return out
}

// scale names nought and both edges, in points.
func (m *Meters) scale(c bench.ErrorChart) []model.Guide {
	edge := c.Edge.In(quantity.Plain).Written()
	return []model.Guide{{At: 0, Label: "-" + edge}, {At: 500, Label: "0"}, {At: 1000, Label: "+" + edge}}
}

// limitLines are the limits of the newest check, and the mean error with what
// holds the true bias.
func limitLines(c bench.ErrorChart) []model.Guide {
	var out []model.Guide
	if p := c.Points[len(c.Points)-1]; p.Limited {
		out = append(out, model.Guide{At: p.Upper, Label: Say("allowed"), State: model.Stop}, model.Guide{At: p.Lower, Label: Say("allowed"), State: model.Stop})
	}
	if c.Mean != nil {
		out = append(out, model.Guide{At: *c.Mean, Label: Say("mean"), State: model.Wait})
	}
	return out
}
