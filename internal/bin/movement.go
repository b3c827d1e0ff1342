package bin

import (
	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Movement is one act on the grain in the house, whole: it is a fact of the journal and needs
// nothing else to be read.
type Movement struct {
	Number    int64         `json:"number,string"`
	What      Kind          `json:"what"`
	Day       quantity.Date `json:"day"`
	Commodity string        `json:"commodity"`
	By        string        `json:"by"`
	Reason    string        `json:"reason,omitempty"`
	// From are the weights taken out of bins; Into those put in. Grain that came out of
	// a cleaner or a dryer weighs less than what went in.
	From []Weighed `json:"from,omitempty"`
	Into []Weighed `json:"into,omitempty"`

	Drying *Run `json:"drying,omitempty"`
	// Lot is the grain kept apart that was moved; empty where it is of no lot, or of several.
	Lot string `json:"lot,omitempty"`
	// Asked are the questions of the house about such a movement. Reason answers it, or the manager who signed.
	Asked []message.Kept `json:"asked,omitempty"`
	// Screenings is the weight the cleaner took out.
	Screenings quantity.Amount `json:"screenings,omitzero"`
	// Hours is the running time of fans.
	Hours quantity.Amount `json:"hours,omitzero"`
	Count *Count          `json:"count,omitempty"`
	// Readings are the temperatures of the grain, from the floor up.
	Readings []quantity.Amount `json:"readings,omitempty"`
	// Found is the grain of a layer that the house was opened with.
	Found *Grain `json:"found,omitempty"`
	// Adjusts is as what it stands in the position, where a balance was adjusted.
	Adjusts Adjustment `json:"adjusts,omitempty"`

	// Undoes is the movement taken back and Was its kind; UndoneBy is the one that took this one
	// back.
	Undoes   int64 `json:"undoes,omitempty,string"`
	Was      Kind  `json:"was,omitempty"`
	UndoneBy int64 `json:"undone_by,omitempty,string"`
}

// Weighed is a weight of grain out of a bin or into one.
type Weighed struct {
	Bin    string          `json:"bin"`
	Weight quantity.Amount `json:"weight"`
}

// Run is a run of the dryer.
type Run struct {
	MoistureIn  quantity.Amount `json:"moisture_in"`
	MoistureOut quantity.Amount `json:"moisture_out"`
	// TestWeight is that of the dried grain, where it was tested.
	TestWeight quantity.Amount `json:"test_weight,omitzero"`
	// Fuel is gas or oil, Power what motors took, Hours how long it ran.
	Fuel  quantity.Amount `json:"fuel,omitzero"`
	Power quantity.Amount `json:"power,omitzero"`
	Hours quantity.Amount `json:"hours,omitzero"`
}

// Count is grain weighed or measured against what the book says lies in a bin.
type Count struct {
	Bin     string          `json:"bin"`
	Book    quantity.Amount `json:"book"`
	Counted quantity.Amount `json:"counted"`
	// Posted makes the book say what was counted; else the difference is explained and stays.
	Posted  bool           `json:"posted,omitempty"`
	Measure *shape.Measure `json:"measure,omitempty"`
	// Shape is the bin as it was measured then.
	Shape *shape.Shape `json:"shape,omitempty"`
}

// Kind names the fact in the journal.
func (Movement) Kind() string { return "bin.movement" }

// In is the weight taken out of bins, Out the weight put in; both in the unit of the movement.
func (m Movement) In() quantity.Amount { return sum(m.From, m.Unit()) }

// Out is the weight put into bins.
func (m Movement) Out() quantity.Amount { return sum(m.Into, m.Unit()) }

func sum(all []Weighed, unit quantity.Unit) quantity.Amount {
	total := quantity.Zero(unit)
	for _, w := range all {
		total = total.Add(w.Weight)
	}
	return total
}

// Unit is the unit of the weights; plain where nothing was weighed.
func (m Movement) Unit() quantity.Unit {
	for _, w := range append(append([]Weighed(nil), m.From...), m.Into...) {
		return w.Weight.Unit()
	}
	if m.Count != nil {
		return m.Count.Book.Unit()
	}
	return quantity.Plain
}

// Bins are the bins it is about, each once.
func (m Movement) Bins() []string {
	var out []string
	seen := map[string]bool{}
	add := func(bin string) {
		if bin != "" && !seen[bin] {
			seen[bin] = true
			out = append(out, bin)
		}
	}
	for _, w := range m.From {
		add(w.Bin)
	}
	for _, w := range m.Into {
		add(w.Bin)
	}
	if m.Count != nil {
		add(m.Count.Bin)
	}
	return out
}

// Loss is the loss of a movement by kind; below zero is a gain. Their
// sum is what was taken out of bins less what was put in, but for what the house was opened with,
// which is no gain.
type Loss struct {
	// Water went up the dryer's stack; Screenings the cleaner took out; Handling is dust and
	// breakage, and the errors of scales and meters; House is written off or found on a count.
	Water, Screenings, Handling, House quantity.Amount
}

// Total is all of it.
func (l Loss) Total() quantity.Amount {
	return l.Water.Add(l.Screenings).Add(l.Handling).Add(l.House)
}

// Loss works out what the house has less of.
func (m Movement) Loss() Loss {
	none := quantity.Zero(m.Unit())
	l, all := Loss{none, none, none, none}, m.In().Sub(m.Out())
	kind := m.What
	if kind == Undo {
		kind = m.Was
	}
	switch kind {
	case Open:
		// What the house was opened with was neither won nor lost.
	case Dry:
		l.Handling = dryMatter(m.In(), m.Drying.MoistureIn).Sub(dryMatter(m.Out(), m.Drying.MoistureOut))
		l.Water = all.Sub(l.Handling)
	case Clean:
		l.Screenings = all
	case WriteOff, WeighOver, MeasureUp:
		l.House = all
	default:
		l.Handling = all
	}
	return l
}

// dryMatter is a weight of grain without its water. It is a product, never a quotient: balances add it
// up run by run, and a denominator of 100 would grow by two digits with every one of them.
func dryMatter(weight, moisture quantity.Amount) quantity.Amount {
	return weight.Mul(quantity.Int(100, quantity.Percent).Sub(moisture)).Mul(hundredth)
}

// hundredth takes percents of a weight.
var hundredth = quantity.Of("0.01", quantity.Plain.Per(quantity.Percent))

// Reversed is the movement that takes this one back, on a day.
func (m Movement) Reversed(number int64, day quantity.Date, by, reason string) Movement {
	back := Movement{
		Number: number, What: Undo, Was: m.What, Undoes: m.Number, Day: day, Commodity: m.Commodity, By: by, Reason: reason,
		From: m.Into, Into: m.From, Lot: m.Lot,
	}
	if m.Drying != nil {
		back.Drying = &Run{MoistureIn: m.Drying.MoistureOut, MoistureOut: m.Drying.MoistureIn}
	}
	if !m.In().Equal(m.Out()) && m.What != Open {
		back.Adjusts = ErrorCorrection
	}
	return back
}

// Counting is a movement with what was counted in a bin: where it is posted, the difference goes
// into the bin or out of it.
func (m Movement) Counting(c Count) Movement {
	m.Count, m.From, m.Into = &c, nil, nil
	difference := c.Counted.Sub(c.Book)
	switch {
	case !c.Posted || difference.IsZero():
	case difference.Sign() > 0:
		m.Into = []Weighed{{c.Bin, difference}}
	default:
		m.From = []Weighed{{c.Bin, difference.Neg()}}
	}
	return m
}

// Adjusted is the movement with the kind of adjustment it stands as: the one chosen, or the one that
// its kind usually is. A movement that loses nothing has none.
func (m Movement) Adjusted(chosen Adjustment) Movement {
	m.Adjusts = chosen
	if r, known := ruleOf(m.What); known && chosen == "" {
		m.Adjusts = r.adjusts
	}
	if m.In().Equal(m.Out()) {
		m.Adjusts = ""
	}
	return m
}
