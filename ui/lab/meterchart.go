package lab

import (
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// CheckChart is a meter's log as a picture: its error from check to check
// between the limits. Places are thousandths from the left and from the bottom.
type CheckChart struct {
	Points []model.ChartPoint
	Limits []model.Guide
	Scale  []model.Guide // values at the left
	Days   []model.Guide // days below
	Empty  string
}

// Chart is the log of the chosen meter as a picture.
func (m *Meters) Chart() CheckChart {
	from := m.log.Chart
	out := CheckChart{Empty: m.session.Say("No check yet.")}
	if len(from.Points) == 0 {
		return out
	}
	for i, p := range from.Points {
		point := model.ChartPoint{X: across(from, i), Y: errorHeight(from, p.Check.Error())}
		if p.Outside {
			point.State, point.Label = model.Stop, withSign(p.Check.Error(), session.Bare(p.Check.Error()))
		}
		out.Points = append(out.Points, point)
	}
	out.Scale = m.scale(from)
	out.Limits = limitLines(m.session.Language, from, m.log.Biases)
	first, last := from.Points[0].Check.Day, from.Points[len(from.Points)-1].Check.Day
	out.Days = []model.Guide{{At: 40, Label: m.session.Date(first)}}
	if last != first {
		out.Days = append(out.Days, model.Guide{At: 950, Label: m.session.Date(last)})
	}
	return out
}

// across is the place of a check by its day, in thousandths from the left. Checks
// of a single day are side by side.
func across(c meter.ErrorLog, n int) int {
	first, last := c.Points[0].Check.Day, c.Points[len(c.Points)-1].Check.Day
	days, part := first.DaysUntil(last), first.DaysUntil(c.Points[n].Check.Day)
	if days == 0 {
		days, part = len(c.Points)+1, n+1
	}
	return part * 1000 / days
}

// errorHeight is the place of an error in thousandths from the bottom, 0 points
// in the middle.
func errorHeight(c meter.ErrorLog, e quantity.Amount) int {
	return 500 + quantity.Permille(c.Share(e).Div(quantity.Int(2, quantity.Plain)), quantity.HalfUp)
}

// scale names zero and both edges, in points.
func (m *Meters) scale(c meter.ErrorLog) []model.Guide {
	edge := c.Edge.In(quantity.Plain).Written()
	return []model.Guide{{At: 0, Label: "-" + edge}, {At: 500, Label: "0"}, {At: 1000, Label: "+" + edge}}
}

// limitLines are the limits of the newest check, and the mean error with each grain.
func limitLines(in session.Language, c meter.ErrorLog, biases []office.GrainBias) []model.Guide {
	var out []model.Guide
	if p := c.Points[len(c.Points)-1]; p.Limited {
		out = append(out, model.Guide{At: errorHeight(c, p.Limit), Label: in.Say("allowed"), State: model.Stop}, model.Guide{At: errorHeight(c, p.Limit.Neg()), Label: in.Say("allowed"), State: model.Stop})
	}
	for _, bias := range biases {
		out = append(out, model.Guide{At: errorHeight(c, bias.Mean.Value()), Label: in.Say("mean, %s", in.GrainName(bias.Crop)), State: model.Wait})
	}
	return out
}
