package bench

import (
	"cmp"
	"fmt"
	"slices"

	"tenthpoint/internal/quantity"
)

// Ruler is moisture as a strip to look at: the points along it, the limits at
// which something changes, where this grain was read and how far it may be off.
// Places are thousandths of the strip's length, for whoever draws it.
type Ruler struct {
	// Low and High are the whole percents at its ends.
	Low, High quantity.Amount
	// Marks are in order along the strip, the reading last.
	Marks []RulerMark
	// Band is where the true moisture may lie; nil when that is not known.
	Band *RulerStretch
	// Free is the stretch on which nothing is taken; nil when no trigger is set.
	Free *RulerStretch
}

// RulerMark is one mark on a ruler.
type RulerMark struct {
	At    int // thousandths
	Kind  RulerMarkKind
	Label string
	// Limits are those that fall on a limit mark.
	Limits []Limit
}

// RulerMarkKind says what a mark is for.
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
	From, To int // thousandths
	Label    string
}

// shortestRuler is how many points a ruler shows at least, and tenthsUpTo how
// many it shows at most with a stroke for every tenth.
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
	if recorded(b.Reading) {
		all = append(all, b.Low, b.Reading, b.High)
	}
	if len(all) == 0 {
		return Ruler{}
	}
	r := rulerOver(all)
	r.graduate()
	r.limits(limits)
	if b.Stated() {
		r.Band = &RulerStretch{From: r.at(b.Low), To: r.at(b.High), Label: "the meter's tolerance"}
	}
	if recorded(b.Reading) {
		r.Marks = append(r.Marks, RulerMark{At: r.at(b.Reading), Kind: ReadingMark, Label: b.Reading.FixedString(1)})
	}
	return r
}

// Leave marks the stretch up to a trigger, on which nothing is taken.
func (r *Ruler) Leave(trigger quantity.Amount, label string) {
	if len(r.Marks) > 0 && trigger.More(r.Low) {
		r.Free = &RulerStretch{From: 0, To: r.at(quantity.Min(trigger, r.High)), Label: label}
	}
}

var (
	wholeDown = quantity.To("1", quantity.Down)
	wholeUp   = quantity.To("1", quantity.Up)
	nearest   = quantity.To("1", quantity.HalfUp)
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
	for r.points() < shortestRuler {
		if r.High.Less(hundredPercent) {
			r.High = r.High.Add(onePoint)
		}
		if r.Low.Sign() > 0 && r.points() < shortestRuler {
			r.Low = r.Low.Sub(onePoint)
		}
	}
	return r
}

func (r Ruler) points() int { return wholeNumber(r.High.Sub(r.Low)) }

// at is the place of a moisture in thousandths of the length. What lies beyond
// an end, as a tolerance below no water at all, is put on the end.
func (r Ruler) at(m quantity.Amount) int {
	m = quantity.Min(r.High, quantity.Max(r.Low, m))
	return wholeNumber(m.Sub(r.Low).Div(r.High.Sub(r.Low)).Mul(quantity.Int(1000, quantity.Plain)))
}

// wholeNumber is the whole number nearest to a figure.
func wholeNumber(a quantity.Amount) int {
	d, _ := nearest.Apply(a).Decimal()
	return int(d.IntPart())
}

// graduate draws a stroke for every tenth and a figure for every point. A long
// ruler has strokes for points and figures for every second point or more.
func (r *Ruler) graduate() {
	perPoint := 10
	if r.points() > tenthsUpTo {
		perPoint = 1
	}
	every := 1 + r.points()/tenthsUpTo
	first := wholeNumber(r.Low)
	for n := 0; n <= perPoint*r.points(); n++ {
		mark := RulerMark{At: n * 1000 / (perPoint * r.points()), Kind: TenthMark}
		if percent := first + n/perPoint; n%perPoint == 0 && percent%every == 0 {
			mark.Kind, mark.Label = PointMark, fmt.Sprint(percent)
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
		marks = append(marks, RulerMark{At: r.at(l.At), Kind: LimitMark, Limits: []Limit{l}})
	}
	for i := range marks {
		marks[i].Label = limitLabel(marks[i].Limits)
	}
	r.Marks = append(r.Marks, marks...)
	slices.SortStableFunc(r.Marks, func(a, b RulerMark) int { return cmp.Compare(a.At, b.At) })
}

// limitLabel names limits at one moisture: "shrink-to and shrink trigger 15.0 %".
func limitLabel(limits []Limit) string {
	text := ""
	for i, l := range limits {
		switch {
		case i > 0 && i == len(limits)-1:
			text += " and "
		case i > 0:
			text += ", "
		}
		text += l.Name
	}
	return text + " " + limits[0].At.Written()
}
