package dryness

import (
	"tenthpoint/internal/fault"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
)

// Purpose is the use the grain must be dry enough for.
type Purpose string

const (
	// ByClass is the Canadian class: straight grain is dry.
	ByClass Purpose = "class"
	// ToBuy is the elevator's limit for taking grain in as dry.
	ToBuy Purpose = "buy"
	// ToStoreShort and ToStoreLong are its limits for keeping it.
	ToStoreShort Purpose = "store-short"
	ToStoreLong  Purpose = "store-long"
)

// Message is the purpose for people.
func (p Purpose) Message() message.Text {
	switch p {
	case ByClass:
		return message.New("Canadian class")
	case ToBuy:
		return message.New("to buy as dry")
	case ToStoreShort:
		return message.New("to store a short time")
	case ToStoreLong:
		return message.New("to store a long time")
	}
	return message.New("%v", string(p))
}

// String is the purpose in English.
func (p Purpose) String() string { return p.Message().String() }

// Rules are an elevator's limits of dry grain, for one crop. A limit is the highest moisture that
// is still dry; one that is not set gives no verdict.
type Rules struct {
	Crop string `json:"crop"`
	// CanadaGrain is the grain's name in the Off Grades of Grain Order, as in
	// [grain.MoistureGrains]; empty where its classes do not apply.
	CanadaGrain string          `json:"canada_grain,omitempty"`
	Buy         quantity.Amount `json:"buy"`
	StoreShort  quantity.Amount `json:"store_short"`
	StoreLong   quantity.Amount `json:"store_long"`
	// Source says where the elevator's limits are from.
	Source string `json:"source,omitempty"`

	// AerateWithin is the largest excess over a storage limit, in points, for which aeration is
	// offered; not set, it never is.
	AerateWithin quantity.Amount `json:"aerate_within"`
	// Dries is true when the elevator dries grain at its posted charge.
	Dries bool `json:"dries,omitempty"`
	// ChargedTo is the moisture to which the rates of the day count drying; not set where they
	// charge nothing for it. It is theirs, not the elevator's limit, and is never stored.
	ChargedTo quantity.Amount `json:"-"`
	// WetPit names the pit kept for wet grain.
	WetPit string `json:"wet_pit,omitempty"`
}

// Check lists everything wrong with the limits.
func (r Rules) Check() []error {
	var faults fault.List
	if _, err := grain.ByID(r.Crop); err != nil {
		faults = append(faults, message.Errorf("the limits for dry grain: %w", err))
	}
	if r.CanadaGrain != "" {
		_, err := grain.Classes(r.CanadaGrain)
		faults.Unless(err == nil, "the limits for %s: %v", r.Crop, err)
	}
	for _, l := range r.limits() {
		faults.Unless(!quantity.Recorded(l.at) || meter.IsMoisture(l.at), "the limit for %s %s is %s; write a moisture above 0 %% and below 100 %%", r.Crop, l.purpose, l.at)
	}
	if meter.IsMoisture(r.StoreShort) && meter.IsMoisture(r.StoreLong) {
		faults.Unless(!r.StoreLong.More(r.StoreShort), "%s may be kept long up to %s and a short time only up to %s; grain kept long must be the drier", r.Crop, r.StoreLong, r.StoreShort)
	}
	faults.Unless(!quantity.Recorded(r.AerateWithin) || r.AerateWithin.Unit() == quantity.Point && r.AerateWithin.Sign() > 0,
		"air may be asked to take %s out of %s; write points above zero, such as 1 pt, or leave it out", r.AerateWithin, r.Crop)
	return faults
}

// Verdict is the answer for one purpose.
type Verdict struct {
	Purpose Purpose
	// Limit is the highest moisture that is dry.
	Limit quantity.Amount
	// Class is the Canadian class as read, for ByClass.
	Class string
	// Dry is the answer for the figure as read.
	Dry bool
	// Certain is false when the band contains the limit or the reading itself is in doubt.
	Certain bool
	// Over is the excess of the reading over the limit, in points; zero when dry.
	Over quantity.Amount
	// Reason is the whole answer in sentences.
	Reason message.Text
}

// Advice answers a grower's question: is it dry enough, and what can be done.
type Advice struct {
	Band     moisture.Band
	Verdicts []Verdict
	Options  []Option
}

// Judge returns a verdict for every limit that is set. recorded is the moisture, tolerance the
// meter's in points, flags the warnings about the reading: a verdict is never more certain than the
// reading.
func (r Rules) Judge(recorded, tolerance quantity.Amount, flags []moisture.Flag) (Advice, error) {
	a := Advice{Band: moisture.BandOf(recorded, tolerance)}
	if r.CanadaGrain != "" {
		v, err := r.byClass(a.Band)
		if err != nil {
			return Advice{}, err
		}
		a.Verdicts = append(a.Verdicts, v)
	}
	for _, l := range r.limits() {
		if quantity.Recorded(l.at) {
			a.Verdicts = append(a.Verdicts, r.byLimit(a.Band, l.purpose, l.at))
		}
	}
	for i := range a.Verdicts {
		a.Verdicts[i].temper(a.Band, flags)
	}
	a.Options = r.options(a)
	return a, nil
}

type limit struct {
	purpose Purpose
	at      quantity.Amount
}

func (r Rules) limits() []limit {
	return []limit{{ToBuy, r.Buy}, {ToStoreShort, r.StoreShort}, {ToStoreLong, r.StoreLong}}
}

// byClass asks the table of classes: the first class, straight, is dry.
func (r Rules) byClass(b moisture.Band) (Verdict, error) {
	class, err := grain.Class(r.CanadaGrain, b.Reading)
	if err != nil {
		return Verdict{}, err
	}
	classes, err := grain.Classes(r.CanadaGrain)
	if err != nil {
		return Verdict{}, err
	}
	v := answer(ByClass, b, classes[0].UpTo)
	v.Class = class.Name
	v.Reason = message.New("%s is %s: %s is straight up to %s.", b.Reading.FixedString(1), class.Name, r.CanadaGrain, v.Limit.FixedString(1))
	return v, nil
}

func (r Rules) byLimit(b moisture.Band, p Purpose, limit quantity.Amount) Verdict {
	v := answer(p, b, limit)
	if v.Dry {
		v.Reason = message.New("%s is not above %s, dry enough %s.", b.Reading.FixedString(1), limit, p)
	} else {
		v.Reason = message.New("%s is %s above %s, not dry enough %s.", b.Reading.FixedString(1), v.Over, limit, p)
	}
	return v
}

func answer(p Purpose, b moisture.Band, limit quantity.Amount) Verdict {
	v := Verdict{Purpose: p, Limit: limit, Certain: !b.Straddles(limit), Over: quantity.Zero(quantity.Point)}
	if v.Dry = !b.Reading.More(limit); !v.Dry {
		v.Over = b.Reading.Sub(limit).In(quantity.Point)
	}
	return v
}

// temper adds to the reason how certain the reading is.
func (v *Verdict) temper(b moisture.Band, flags []moisture.Flag) {
	switch {
	case !b.Stated() && farther(b.Reading, v.Limit):
		v.add(message.New("How far the meter may be off is not entered, and no posted tolerance is so wide."))
	case !b.Stated():
		v.Certain = false
		v.add(message.New("How far the meter may be off is not entered, so how certain this is cannot be told."))
	case !v.Certain:
		v.add(message.New("The meter may be off by as much as %s: the grain may be anything from %s to %s, on both sides of the limit.",
			b.High.Sub(b.Reading).In(quantity.Point), b.Low.FixedString(1), b.High.FixedString(1)))
	}
	if len(flags) > 0 {
		v.Certain = false
		v.add(message.New("The reading itself is in doubt: %s", flags[0].What))
	}
}

// The widest that a posted tolerance of moisture meters is, a share of the moisture and at least so
// many points: NIST Handbook 44, 5.56(a), from memory, and the point a house has until it sets less.
var (
	widestShare = quantity.Of("0.05", quantity.Plain)
	widestLeast = quantity.Int(1, quantity.Point)
)

// farther reports whether a reading lies so far from a limit that no posted tolerance reaches it.
func farther(reading, limit quantity.Amount) bool {
	away := reading.Sub(limit)
	if away.Sign() < 0 {
		away = away.Neg()
	}
	away = away.In(quantity.Point)
	return away.More(widestLeast) && away.More(reading.Mul(widestShare).In(quantity.Point))
}

// add adds a sentence to the reason.
func (v *Verdict) add(sentence message.Text) { v.Reason = message.List(" ", v.Reason, sentence) }

// Short is the verdict in a word or four.
func (v Verdict) Short() message.Text {
	switch {
	case v.Dry && v.Certain:
		return message.New("verdict|dry")
	case v.Dry:
		return message.New("dry as read, not certain")
	case v.Certain:
		return message.New("not dry")
	}
	return message.New("not dry as read, not certain")
}
