// Package season adds a season up and makes the pictures of it: what came in day by day, how wet it
// was and what that cost, when trucks came and how long they waited, what the house took in for its
// work, and how far its meters were off. The window and the paper show the same pictures.
//
// Figures are exact; places in a picture are thousandths, rounded to the nearest.
package season

import (
	"cmp"
	"slices"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Facts are the data of the pictures of a season.
type Facts struct {
	From, To quantity.Date // the first and last day
	// Day is the day that is held against the others: today, as a rule.
	Day    quantity.Date
	Weight quantity.Unit // in which the house weighs; other weights are turned into it
	Intake []Intake
	Before []Intake // of the same days a year earlier
	Loads  []Load
	// Triggers are the moistures above which drying is charged or shrink is taken, by grain, under the
	// rates in force on the last day.
	Triggers map[string]quantity.Amount
	Kept     KeptMoney
	Meters   []Meter
	Example  bool // settled under invented rates
}

// Intake is the weight received on a day: the weight that counts, less what was taken back that day.
type Intake struct {
	Day       quantity.Date
	Commodity string
	Weight    quantity.Amount
}

// Load is one truck that has a ticket.
type Load struct {
	Number    int64
	Commodity string
	Outbound  bool
	InForce   bool // neither void nor corrected
	Again     bool // in the place of another ticket: no truck came for it
	// Came is the day on which it was written down at the gate, and Hour the hour: "14".
	Came quantity.Date
	Hour string
	// Waited is the whole minutes from the gate to the second weight, if Timed.
	Waited int
	Timed  bool
	settle.Summary
}

// isTruck reports whether a truck stood at the gate for the load.
func (l Load) isTruck() bool { return !l.Again }

// KeptMoney is the storage charges and interest on settlement sheets.
type KeptMoney struct{ Storage, Interest quantity.Amount }

// Meter is a moisture meter with its checks, oldest first.
type Meter struct {
	ID  string
	Log meter.ErrorLog
}

// inForce are the inbound loads whose tickets stand.
func (f *Facts) inForce() []Load {
	var out []Load
	for _, l := range f.Loads {
		if l.InForce && !l.Outbound {
			out = append(out, l)
		}
	}
	return out
}

// Grains are the grains that came in, the one with the most loads first.
func (f *Facts) Grains() []string {
	loads := map[string]int{}
	for _, l := range f.inForce() {
		loads[l.Commodity]++
	}
	var out []string
	for id := range loads {
		out = append(out, id)
	}
	slices.SortFunc(out, func(a, b string) int { return cmp.Or(cmp.Compare(loads[b], loads[a]), cmp.Compare(a, b)) })
	return out
}

// span is the days as a search has them.
func (f *Facts) span() string { return f.From.String() + ".." + f.To.String() }

// grainName is the name of a grain as a word of the program.
func grainName(commodity string) message.Text { return message.Words(grain.NameOf(commodity)) }

// weighed turns a weight into the unit of the house.
func (f *Facts) weighed(a quantity.Amount) quantity.Amount {
	if a.Unit() == f.Weight {
		return a
	}
	factor, err := quantity.MassFactor(a.Unit(), f.Weight)
	if err != nil {
		return quantity.Zero(f.Weight)
	}
	return whole.Apply(a.Mul(factor))
}

var (
	whole = quantity.To("1", quantity.HalfUp)
	tenth = quantity.To("0.1", quantity.HalfUp)
	cents = quantity.To("0.01", quantity.HalfUp)
)
