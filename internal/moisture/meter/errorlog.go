package meter

import "tenthpoint/internal/quantity"

// ErrorLog is the errors of one meter, check by check, each with the limit the
// authority sets for it.
type ErrorLog struct {
	// Edge is the largest error, in points, that a chart of the log has to
	// show: of the checks, the limits and the interval of the bias, rounded up to
	// a tenth. Its opposite is the other edge.
	Edge   quantity.Amount
	Points []ErrorPoint
}

// ErrorPoint is one check and its limit.
type ErrorPoint struct {
	Check Check
	// Limit is the largest error allowed, in points; Limited is false where the authority has no
	// limit for the crop.
	Limit   quantity.Amount
	Limited bool
	// Outside reports that the error is larger than the limit.
	Outside bool
}

// edgeStep rounds the edge outward.
var edgeStep = quantity.To("0.1", quantity.Up)

// leastEdge keeps a good meter's chart from looking like a bad one's.
var leastEdge = quantity.Of("0.5", quantity.Point)

// NewErrorLog takes the checks of one meter, oldest first as [ChecksOf] returns them, with the
// limits of an authority and each bias calculated from them.
func NewErrorLog(checks []Check, a CheckTolerance, biases ...Bias) ErrorLog {
	c := ErrorLog{Edge: leastEdge}
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
	for _, b := range biases {
		if b.Low != nil {
			c.Edge = quantity.Max(c.Edge, quantity.Max(size(b.Low.Value()), size(b.High.Value())))
		}
	}
	c.Edge = edgeStep.Apply(c.Edge)
	return c
}

// Share is an error as a part of the edge, from -1 to 1.
func (c ErrorLog) Share(e quantity.Amount) quantity.Amount { return e.Div(c.Edge) }
