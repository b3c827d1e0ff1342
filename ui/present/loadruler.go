package present

import (
	"strconv"

	"tenthpoint/internal/quantity"
)

// RulerMark is one mark on the moisture ruler, at so many thousandths of its
// length.
type RulerMark struct {
	At    int
	Label string
	Kind  RulerMarkKind
	State State
}

// RulerMarkKind says what a mark is for.
type RulerMarkKind int

// The kinds of mark.
const (
	TenthMark RulerMarkKind = iota
	PointMark
	LimitMark
	ReadingMark
)

// Ruler is moisture as a ruler: its marks, and the stretch on which nothing is
// taken off.
type Ruler struct {
	Marks    []RulerMark
	DryFrom  int // thousandths
	DryTo    int
	DryLabel string

	// The stretch in which the true moisture may lie; of no width where that is
	// not known.
	BandFrom, BandTo int
	BandLabel        string
}

// rulerPoints is how many points the shortest ruler shows.
const rulerPoints = 6

// Ruler is the moisture ruler of the load: where the rates begin to take
// something, what they shrink to, and where this load stands. Without rates
// and reading it is bare.
func (f *LoadForm) Ruler() Ruler {
	limits := f.rulerLimits()
	var all []quantity.Amount
	for _, l := range limits {
		all = append(all, l.at)
	}
	m := f.now.load.Sample.Moisture
	if m != nil {
		all = append(all, m.Percent)
	}
	if len(all) == 0 {
		return Ruler{}
	}
	scale := newRulerScale(all)
	r := Ruler{Marks: scale.graduation()}
	for _, l := range limits {
		r.Marks = append(r.Marks, RulerMark{At: scale.at(l.at), Label: l.label, Kind: LimitMark})
	}
	state := OK
	if e := f.now.edition; e != nil && e.Shrink.Trigger.Given() {
		r.DryTo, r.DryLabel = scale.at(e.Shrink.Trigger.Amount), Say("nothing taken")
		if m != nil && m.Percent.More(e.Shrink.Trigger.Amount) {
			state = Warn
		}
	}
	if m != nil {
		r.Marks = append(r.Marks, RulerMark{At: scale.at(m.Percent), Label: m.Percent.Written(), Kind: ReadingMark, State: state})
	}
	return r
}

type rulerLimit struct {
	at    quantity.Amount
	label string
}

// rulerLimits are the moistures at which something changes. Two that fall
// together share a mark.
func (f *LoadForm) rulerLimits() []rulerLimit {
	var out []rulerLimit
	e := f.now.edition
	if e == nil {
		return nil
	}
	to, trigger, drying := e.Shrink.To, e.Shrink.Trigger, e.Drying.Trigger
	switch {
	case to.Given() && trigger.Given() && to.Amount.Equal(trigger.Amount):
		out = append(out, rulerLimit{to.Amount, Say("shrink above and to %s", bare(to.Amount))})
	case to.Given():
		out = append(out, rulerLimit{to.Amount, Say("shrink to %s", bare(to.Amount))})
		fallthrough
	default:
		if trigger.Given() {
			out = append(out, rulerLimit{trigger.Amount, Say("shrink above %s", bare(trigger.Amount))})
		}
	}
	if drying.Given() && !(trigger.Given() && drying.Amount.Equal(trigger.Amount)) {
		out = append(out, rulerLimit{drying.Amount, Say("drying above %s", bare(drying.Amount))})
	}
	return append(out, f.classLimits()...)
}

// classLimits are the moisture classes, where the house is under rules that
// have them.
func (f *LoadForm) classLimits() []rulerLimit {
	var out []rulerLimit
	for _, class := range f.frame.Desk.MoistureClasses(f.now.load) {
		if class.HasUpTo {
			out = append(out, rulerLimit{class.UpTo, Say("%s to %s", Say(class.Name), bare(class.UpTo))})
		}
	}
	return out
}

// rulerScale runs from one whole percent to another.
type rulerScale struct{ from, to int }

// newRulerScale leaves at least a point free on either side.
func newRulerScale(all []quantity.Amount) rulerScale {
	low, high := hundredths(all[0]), hundredths(all[0])
	for _, a := range all {
		low, high = min(low, hundredths(a)), max(high, hundredths(a))
	}
	s := rulerScale{from: max(0, low/100-1), to: high/100 + 2}
	for s.to-s.from < rulerPoints {
		s.to++
		if s.to-s.from < rulerPoints && s.from > 0 {
			s.from--
		}
	}
	return s
}

// at is the place of a moisture in thousandths of the length.
func (s rulerScale) at(a quantity.Amount) int {
	return (hundredths(a) - 100*s.from) * 10 / (s.to - s.from)
}

// graduation is a stroke for every tenth and a figure for every point. A long
// ruler leaves the tenths out and names every second point or more.
func (s rulerScale) graduation() []RulerMark {
	var out []RulerMark
	every := 1 + (s.to-s.from)/16
	for tenths := 10 * s.from; tenths <= 10*s.to; tenths++ {
		at := (tenths - 10*s.from) * 100 / (s.to - s.from)
		switch {
		case tenths%(10*every) == 0:
			out = append(out, RulerMark{At: at, Label: strconv.Itoa(tenths / 10), Kind: PointMark})
		case every == 1 || tenths%10 == 0:
			out = append(out, RulerMark{At: at, Kind: TenthMark})
		}
	}
	return out
}

// hundredths is a moisture in whole hundredths of a percent, for its place on
// the ruler.
func hundredths(a quantity.Amount) int {
	whole := quantity.To("1", quantity.HalfUp).Apply(a.Mul(quantity.Int(100, quantity.Plain)))
	d, _ := whole.Decimal()
	return int(d.IntPart())
}
