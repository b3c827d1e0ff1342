package moisture

import (
	"slices"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Ruler is a range of moistures around a reading: the points along it, the limits at which
// something changes, the reading and its tolerance. It holds figures only; to draw it, get the
// position of each with [Ruler.Part].
type Ruler struct {
	// Low and High are the whole percents at its ends.
	Low, High quantity.Amount
	// Marks are in order along the strip, the reading last.
	Marks []RulerMark
	// Band is the range of the true moisture; nil when that is not known.
	Band *RulerStretch
	// Free is the stretch on which nothing is taken; nil when no trigger is set.
	Free *RulerStretch
}

// RulerMark is one mark on a ruler.
type RulerMark struct {
	At    quantity.Amount // %
	Kind  RulerMarkKind
	Label message.Text
	// Limits are those that fall on a limit mark.
	Limits []Limit
}

// RulerMarkKind is the kind of a mark.
type RulerMarkKind string

// The kinds of mark.
const (
	TenthMark   RulerMarkKind = "tenth"
	PointMark   RulerMarkKind = "point"
	LimitMark   RulerMarkKind = "limit"
	ReadingMark RulerMarkKind = "reading"
)

// RulerStretch is a part of a ruler.
type RulerStretch struct {
	From, To quantity.Amount // %
	Label    message.Text
}

// shortestRuler is the least number of points of a ruler, and tenthsUpTo the largest with a mark
// for every tenth.
const (
	shortestRuler = 6
	tenthsUpTo    = 16
)

// NewRuler lays a reading and limits along a ruler. Limits at one moisture
// share a mark. A band without a reading makes a ruler of limits alone; without
// either there is none.
func NewRuler(b Band, limits []Limit) Ruler {
	all := make([]quantity.Amount, 0, len(limits)+3)
	for _, l := range limits {
		all = append(all, l.At)
	}
	if quantity.Recorded(b.Reading) {
		all = append(all, b.Low, b.Reading, b.High)
	}
	if len(all) == 0 {
		return Ruler{}
	}
	r := rulerOver(all)
	r.graduate()
	r.limits(limits)
	if b.Stated() {
		r.Band = &RulerStretch{From: b.Low, To: b.High, Label: message.New("the meter's tolerance")}
	}
	if quantity.Recorded(b.Reading) {
		r.Marks = append(r.Marks, RulerMark{At: b.Reading, Kind: ReadingMark, Label: message.New("%s", b.Reading.FixedString(1))})
	}
	return r
}

// MarkFree marks the stretch up to a trigger, on which nothing is taken.
func (r *Ruler) MarkFree(trigger quantity.Amount, label message.Text) {
	if len(r.Marks) > 0 && trigger.More(r.Low) {
		r.Free = &RulerStretch{From: r.Low, To: quantity.Min(trigger, r.High), Label: label}
	}
}

var (
	wholeDown = quantity.To("1", quantity.Down)
	wholeUp   = quantity.To("1", quantity.Up)
	onePoint  = quantity.Int(1, quantity.Percent)
)

// rulerOver is a bare ruler with a point or more to spare on either side.
func rulerOver(all []quantity.Amount) Ruler {
	low, high := slices.MinFunc(all, quantity.Amount.Cmp), slices.MaxFunc(all, quantity.Amount.Cmp)
	none := quantity.Zero(quantity.Percent)
	r := Ruler{
		Low:  quantity.Max(none, wholeDown.Apply(low).Sub(onePoint)),
		High: quantity.Min(hundredPercent, wholeUp.Apply(high).Add(onePoint)),
	}
	for r.Points() < shortestRuler {
		if r.High.Less(hundredPercent) {
			r.High = r.High.Add(onePoint)
		}
		if r.Low.Sign() > 0 && r.Points() < shortestRuler {
			r.Low = r.Low.Sub(onePoint)
		}
	}
	return r
}

// Points is the length of the ruler in whole points.
func (r Ruler) Points() int { return wholeNumber(r.High.Sub(r.Low)) }

// Part returns the position of a moisture as a part of the ruler's length: 0 at its low end, 1 at
// its high end. A moisture beyond an end, such as a tolerance that reaches below 0 %, counts as the
// end.
func (r Ruler) Part(m quantity.Amount) quantity.Amount {
	m = quantity.Min(r.High, quantity.Max(r.Low, m))
	return m.Sub(r.Low).Div(r.High.Sub(r.Low))
}

// Place is the place of a moisture in thousandths of the ruler's length.
func (r Ruler) Place(m quantity.Amount) int { return quantity.Permille(r.Part(m), quantity.HalfUp) }

// MarkPlace is the place of a mark. Graduations are rounded down: they are spaced
// evenly from the low end.
func (r Ruler) MarkPlace(m RulerMark) int {
	if m.Kind == PointMark || m.Kind == TenthMark {
		return quantity.Permille(r.Part(m.At), quantity.Down)
	}
	return r.Place(m.At)
}

// wholeNumber reads an amount that is known to be whole.
func wholeNumber(a quantity.Amount) int {
	d, _ := a.Decimal()
	return int(d.IntPart())
}

// graduate marks every tenth and names every point. A long ruler has marks for
// points only and names every second point or more.
func (r *Ruler) graduate() {
	perPoint := 10
	if r.Points() > tenthsUpTo {
		perPoint = 1
	}
	every := 1 + r.Points()/tenthsUpTo
	first := wholeNumber(r.Low)
	for n := 0; n <= perPoint*r.Points(); n++ {
		step := quantity.Int(int64(n), quantity.Percent).Div(quantity.Int(int64(perPoint), quantity.Plain))
		mark := RulerMark{At: r.Low.Add(step), Kind: TenthMark}
		if percent := first + n/perPoint; n%perPoint == 0 && percent%every == 0 {
			mark.Kind, mark.Label = PointMark, message.New("%d", percent)
		}
		r.Marks = append(r.Marks, mark)
	}
}

func (r *Ruler) limits(limits []Limit) {
	sorted := slices.Clone(limits)
	slices.SortStableFunc(sorted, func(a, b Limit) int { return a.At.Cmp(b.At) })
	var marks []RulerMark
	for _, l := range sorted {
		if last := len(marks) - 1; last >= 0 && marks[last].Limits[0].At.Equal(l.At) {
			marks[last].Limits = append(marks[last].Limits, l)
			continue
		}
		marks = append(marks, RulerMark{At: l.At, Kind: LimitMark, Limits: []Limit{l}})
	}
	for i := range marks {
		marks[i].Label = limitLabel(marks[i].Limits)
	}
	r.Marks = append(r.Marks, marks...)
	slices.SortStableFunc(r.Marks, func(a, b RulerMark) int { return a.At.Cmp(b.At) })
}

// limitLabel names limits at one moisture: "shrink-to and shrink trigger 15.0 %".
func limitLabel(limits []Limit) message.Text {
	names := make([]any, len(limits))
	for i, l := range limits {
		names[i] = l.Name
	}
	last := len(names) - 1
	return message.List(" ", message.List(" and ", message.List(", ", names[:last]...), names[last]), limits[0].At.Written())
}
