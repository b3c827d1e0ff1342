package season

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// most lines of a scale, and the figures that its steps may begin with.
const mostLines = 4

var firstFigures = []int64{1, 2, 5}

// scale is the vertical scale of a picture: its top is the top of all columns, a little room above them.
type scale struct {
	top  quantity.Amount
	step quantity.Amount
}

// scaleFor is a scale up to the greatest of some amounts, with lines at round figures.
func scaleFor(unit quantity.Unit, amounts ...quantity.Amount) scale {
	most := quantity.Zero(unit)
	for _, a := range amounts {
		most = quantity.Max(most, a)
	}
	if most.IsZero() {
		return scale{quantity.Int(1, unit), quantity.Int(1, unit)}
	}
	step := stepFor(most)
	return scale{most.Mul(quantity.Of("1.08", quantity.Plain)), step}
}

// stepFor is the smallest of 1, 2, 5, 10, 20 and so on that reaches an amount in few steps.
func stepFor(most quantity.Amount) quantity.Amount {
	for ten := int64(1); ; ten *= 10 {
		for _, first := range firstFigures {
			step := quantity.Int(first*ten, most.Unit())
			if !most.Div(step).More(quantity.Int(mostLines, quantity.Plain)) {
				return step
			}
		}
	}
}

// height is an amount in thousandths of the picture.
func (s scale) height(a quantity.Amount) int {
	return quantity.Permille(a.Div(s.top), quantity.HalfUp)
}

// guides are the lines of the scale with their figures, the ground line left out.
func (s scale) guides() []report.Guide {
	var out []report.Guide
	for at := s.step; !at.More(s.top); at = at.Add(s.step) {
		out = append(out, report.Guide{At: s.height(at), Label: report.Figure(at.Figure())})
	}
	return out
}

// figure is an amount without its unit, for a column or a cell.
func figure(a quantity.Amount) message.Text { return report.Figure(a.Figure()) }
