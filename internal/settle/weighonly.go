package settle

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// Weighed is a load that is only weighed: grain going out, a neighbor's load
// for a fee. Bushels is nil where none were asked for.
type Weighed struct {
	Sheet            *worksheet.Sheet
	Gross, Tare, Net *worksheet.Step
	Bushels          *worksheet.Step
}

// Outbound has the units of a load that is only weighed.
type Outbound struct {
	// Weight is the unit of the net, lb or kg; the zero Unit keeps the scale's.
	// Place rounds a weight that had to be converted.
	Weight quantity.Unit
	Place  quantity.Rounding
	// Bushel is the legal weight of a bushel, in Weight per bushel, with the
	// law it is from; zero means that no bushels are wanted. Bushels rounds
	// them.
	Bushel       quantity.Amount
	BushelSource string
	Bushels      quantity.Rounding
}

// weigh records the weights with the stages of an engine.
func (by *engine) weigh(drafts []Draft, out Outbound) (*Weighed, error) {
	c := checker{facts: Facts{Drafts: drafts}}
	c.drafts()
	if len(c.problems) > 0 {
		return nil, c.problems
	}
	if out.Weight == quantity.Plain {
		out.Weight = drafts[0].Gross.Unit()
	}
	if problem := out.check(); !problem.IsZero() {
		return nil, Problems{{Field: "bushel", Sentence: problem}}
	}
	w := by.weighOnly(drafts, out)
	return &w, nil
}

func weighedOnly(drafts []Draft, out Outbound) Weighed {
	w := weigh(&worksheet.Sheet{}, drafts)
	w.Net = inUnit(w.Sheet, w.Net, out.Weight, out.Place)
	if !out.Bushel.IsZero() {
		bushel := w.Sheet.Rate("bushel", message.Words("Bushel weight"), out.Bushel, message.Words(out.BushelSource))
		w.Bushels = w.Sheet.Work(LineBushels, message.Words("Bushels"), worksheet.Over(w.Net, bushel), out.Bushels, worksheet.Unsourced)
	}
	return w
}

func (o Outbound) check() message.Text {
	want := o.Weight.Per(quantity.Bushel)
	switch {
	case !o.Weight.IsMass():
		return message.New("Weights were asked for in %q, which is no unit of weight. Choose lb or kg.", o.Weight.String())
	case o.Bushel.IsZero():
	case o.Bushel.Unit() != want || o.Bushel.Sign() < 0:
		return message.New("The bushel weight is %s; it must be above zero and in %s.", o.Bushel, want)
	}
	return message.Text{}
}
