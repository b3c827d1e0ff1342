package checker

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/settle/trial"
)

// The drawing of the curve, in its own units, and the room for the words at its edges.
const (
	curveWidth, curveHeight = 600, 300
	curveLeft, curveBottom  = 90, 40
	curveTop                = 20
)

// around is the range of the curve on both sides of the load's moisture, curveStep its resolution.
var (
	around    = quantity.Int(5, quantity.Percent)
	curveStep = quantity.Of("0.2", quantity.Percent)
)

// point is a moisture and what it would have made.
type point struct{ moisture, result quantity.Amount }

// curve draws what is payable against moisture, everything else the same.
func curve(s *sheet, a ask, settled *settle.Settlement) {
	at := settled.Moisture.Value()
	own := a.result(settled)
	var points []point
	for _, m := range trial.Grid(quantity.Max(at.Sub(around), tenth), at.Add(around), curveStep) {
		f := a.facts
		f.Moisture = settle.Reading{Percent: m, Source: message.New("what if")}
		if again, err := a.engine.Settle(f, settled.Edition); err == nil {
			if r := a.result(again); r != nil && own != nil && r.Value().Unit() == own.Value().Unit() {
				points = append(points, point{m, r.Value()})
			}
		}
	}
	if len(points) < 2 || own == nil {
		return
	}
	title := s.Say("%s against moisture", own.Label())
	s.put(`<figure><figcaption>%s</figcaption>`, title)
	low, high := bounds(points)
	first, last := points[0].moisture, points[len(points)-1].moisture
	across := func(m quantity.Amount) int64 { return curveLeft + scaled(m, first, last, curveWidth-curveLeft-10) }
	down := func(r quantity.Amount) int64 {
		return curveHeight - curveBottom - scaled(r, low, high, curveHeight-curveBottom-curveTop)
	}
	s.put(`<svg viewBox="0 0 %s %s" role="img" aria-label="%s">`, curveWidth, curveHeight,
		s.Say("From %s at %s to %s at %s; this load %s at %s.", points[0].result, first, points[len(points)-1].result, last, own.Value(), at))
	for _, edge := range []quantity.Amount{low, high} {
		s.put(`<line class="grid" x1="%s" y1="%s" x2="%s" y2="%s"/>`, curveLeft, down(edge), curveWidth-10, down(edge))
		s.put(`<text x="%s" y="%s" text-anchor="end">%s</text>`, curveLeft-6, down(edge)+4, s.Say("%s", edge))
	}
	for _, m := range []quantity.Amount{first, at, last} {
		s.put(`<text x="%s" y="%s" text-anchor="middle">%s</text>`, min(across(m), curveWidth-30), curveHeight-12, s.Say("%s", m))
	}
	s.put(`<polyline class="curve" points="`)
	for _, p := range points {
		s.put(`%s,%s `, across(p.moisture), down(p.result))
	}
	s.put(`"/>`)
	s.put(`<line class="here" x1="%s" y1="%s" x2="%s" y2="%s"/>`, across(at), curveTop, across(at), curveHeight-curveBottom)
	s.put(`<circle class="here" cx="%s" cy="%s" r="5"/>`, across(at), down(own.Value()))
	s.put(`</svg></figure>`)
}

func bounds(points []point) (low, high quantity.Amount) {
	low, high = points[0].result, points[0].result
	for _, p := range points[1:] {
		low, high = quantity.Min(low, p.result), quantity.Max(high, p.result)
	}
	return low, high
}

// scaled maps a value between two others to whole units of a length.
func scaled(a, from, to quantity.Amount, length int64) int64 {
	if from.Equal(to) {
		return 0
	}
	share := a.Sub(from).Mul(quantity.Int(length, quantity.Plain)).Div(to.Sub(from))
	whole, _ := quantity.To("1", quantity.HalfUp).Apply(share).Decimal()
	return whole.IntPart()
}
