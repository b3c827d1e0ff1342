package present

import (
	"tenthpoint/internal/desk"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/working"
	"tenthpoint/ui/model"
)

// BigFigures are what the clerk and the driver look for: net, the quantity
// settled, and what is payable.
func (f *LoadForm) BigFigures() []model.Figure {
	net := model.Figure{Caption: Say("Net"), Value: notYet, Unit: f.frame.Desk.Profile().WeightUnit().String()}
	if a, known := desk.Net(f.now.load); known {
		net.Value, net.Unit = a.Figure(), a.Unit().String()
		if a.Sign() <= 0 {
			net.State = model.Stop
		}
	}
	if f.Leaves() {
		return f.leavingFigures(net)
	}
	settled := model.Figure{Caption: Say("Settled"), Value: notYet, Unit: "bu"}
	money := model.Figure{Caption: Say("Payable"), Value: notYet}
	if e := f.now.edition; e != nil {
		settled.Unit = e.Units.Settle.String()
	}
	if s := f.now.settlement; s != nil {
		settled.Value = figureOf(s.Quantity)
		money.Value = s.Payable.Printed()
		if s.Payable.Kind() == working.NotApplied {
			money.Caption, money.Value = Say("Charges, price later"), s.Charges.Printed()
		}
	}
	return []model.Figure{net, settled, money}
}

// tenth is one tenth of a point of moisture.
var tenth = quantity.Of("0.1", quantity.Percent)

// TenthWorth says what a tenth of a point of moisture is worth on this load:
// the load settled as it is, and again one tenth wetter. It is empty while the
// load cannot be settled at both ends.
func (f *LoadForm) TenthWorth() string {
	s, m := f.now.settlement, f.now.load.Sample.Moisture
	if s == nil || m == nil || f.Leaves() {
		return ""
	}
	wetter := copyOf(f.now.load)
	moist := *m
	moist.Percent, moist.Bench = m.Percent.Add(tenth), nil // a figure, not the bench's own tests
	wetter.Sample.Moisture = &moist
	w, problems := f.frame.Desk.Preview(wetter)
	if len(problems) > 0 || w == nil {
		return ""
	}
	lost := printedLike(s.Quantity, s.Quantity.Value().Sub(w.Quantity.Value()))
	return Say("A tenth of a point is worth %s, %s.", lost, moneyBetween(s, w))
}

// moneyBetween is what the grower has less by the second settlement: of what
// is payable, or while the price comes later of the charges.
func moneyBetween(s, w *settle.Settlement) string {
	if s.Payable.Kind() == working.NotApplied {
		return Say("%s in charges", printedLike(s.Charges, w.Charges.Value().Sub(s.Charges.Value())))
	}
	return printedLike(s.Payable, s.Payable.Value().Sub(w.Payable.Value()))
}

// Margin is what stands beside the large figures: what stops the load as a
// whole, which ticket it takes the place of, or else what a tenth of a point is
// worth on it.
func (f *LoadForm) Margin() model.Remark {
	if stopped := f.now.remarks[wholeLoad]; stopped.State == model.Stop {
		return stopped
	}
	if place := inPlaceText(f.now.load); place != "" {
		return model.Remark{State: model.Plain, Text: place}
	}
	return model.Remark{State: model.Plain, Text: f.TenthWorth()}
}
