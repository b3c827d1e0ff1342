package bench

import (
	"fmt"

	"tenthpoint/internal/quantity"
)

// ErrorChart is a meter's log as a picture: every check a point, by its day from
// left to right and by its error from low to high, between the lines the
// authority draws. Places are thousandths, for whoever draws it: nought error
// lies at 500.
type ErrorChart struct {
	// Edge is the error, in points, at the upper edge; its opposite is the lower.
	Edge   quantity.Amount
	Points []ErrorPoint
	// Mean is where the mean error lies, and Low and High what holds the true
	// bias 95 times in 100; nil where the checks do not tell.
	Mean, Low, High *int
}

// ErrorPoint is one check on the chart.
type ErrorPoint struct {
	Check Check
	X, Y  int // thousandths
	// Limit is the largest error allowed, in points, with the heights of the two
	// lines; Limited is false where the authority says nothing of the crop.
	Limit        quantity.Amount
	Limited      bool
	Lower, Upper int
	Outside      bool
	// Label is the point in words.
	Label string
}

// leastEdge keeps a good meter's chart from looking like a bad one's.
var leastEdge = quantity.Of("0.5", quantity.Point)

// NewErrorChart lays the checks of one meter out, oldest first as [ChecksOf]
// gives them, with the limits of an authority and the bias worked from the same
// checks.
func NewErrorChart(checks []Check, a Authority, b Bias) ErrorChart {
	c := ErrorChart{Edge: leastEdge}
	for _, check := range checks {
		p := ErrorPoint{Check: check}
		p.Limit, p.Limited = a.Allowed(check.Crop, check.Reference)
		p.Outside = p.Limited && size(check.Error()).More(p.Limit)
		c.Edge = quantity.Max(c.Edge, size(check.Error()))
		if p.Limited {
			c.Edge = quantity.Max(c.Edge, p.Limit)
		}
		c.Points = append(c.Points, p)
	}
	if b.Low != nil {
		c.Edge = quantity.Max(c.Edge, quantity.Max(size(b.Low.Value()), size(b.High.Value())))
	}
	c.Edge = upToTenth.Apply(c.Edge)
	for i := range c.Points {
		c.place(&c.Points[i], i)
	}
	if b.Mean != nil {
		c.Mean = c.line(b.Mean.Value())
	}
	if b.Low != nil {
		c.Low, c.High = c.line(b.Low.Value()), c.line(b.High.Value())
	}
	return c
}

func (c ErrorChart) place(p *ErrorPoint, n int) {
	p.X, p.Y = c.across(p.Check.Day, n), c.height(p.Check.Error())
	p.Label = fmt.Sprintf("%s, %s %s: %s", p.Check.Day, p.Check.Crop, p.Check.Name, signed(p.Check.Error()))
	if p.Limited {
		p.Lower, p.Upper = c.height(p.Limit.Neg()), c.height(p.Limit)
	}
}

// across is a day's place; the checks of a single day stand side by side.
func (c ErrorChart) across(day quantity.Date, n int) int {
	first, last := c.Points[0].Check.Day, c.Points[len(c.Points)-1].Check.Day
	days, part := first.DaysUntil(last), first.DaysUntil(day)
	if days == 0 {
		days, part = len(c.Points)+1, n+1
	}
	return part * 1000 / days
}

// height is the place of an error.
func (c ErrorChart) height(e quantity.Amount) int {
	return 500 + wholeNumber(e.Div(c.Edge).Mul(quantity.Int(500, quantity.Plain)))
}

func (c ErrorChart) line(e quantity.Amount) *int {
	h := c.height(e)
	return &h
}

// signed is an error with its way: "+0.1 pt", "-0.2 pt".
func signed(a quantity.Amount) string {
	if a.Sign() > 0 {
		return "+" + a.String()
	}
	return a.String()
}

// Tall is the height of a bar that stands for the size of an error, in
// thousandths of the tallest the chart shows.
func (c ErrorChart) Tall(e quantity.Amount) int { return 2 * (c.height(size(e)) - 500) }
