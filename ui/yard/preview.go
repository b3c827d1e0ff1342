package yard

import (
	"context"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// BigFigures are what the clerk and the driver look for: net, the quantity
// settled, and what is payable.
func (f *LoadForm) BigFigures() []model.Figure {
	net := model.Figure{Caption: session.Say("Net"), Value: session.NotYet, Unit: f.session.Desk.Profile().WeightUnit().String()}
	if a, known := f.Now.Load.Net(); known {
		net.Value, net.Unit = a.Figure(), a.Unit().String()
		if a.Sign() <= 0 {
			net.State = model.Stop
		}
	}
	if f.Leaves() {
		return f.leavingFigures(net)
	}
	settled := model.Figure{Caption: session.Say("Settled"), Value: session.NotYet, Unit: "bu"}
	money := model.Figure{Caption: session.Say("Payable"), Value: session.NotYet}
	if e := f.Now.edition; e != nil {
		settled.Unit = e.Units.Settle.String()
	}
	if s := f.Now.settlement; s != nil {
		settled.Value = session.FigureOf(s.Quantity)
		money.Value = s.Payable.Printed()
		if s.Payable.Kind() == worksheet.NotApplied {
			money.Caption, money.Value = session.Say("Charges, price later"), s.Charges.Printed()
		}
	}
	return []model.Figure{net, settled, money}
}

// Tenth is one tenth of a point of moisture.
var Tenth = quantity.Of("0.1", quantity.Percent)

// TenthWorth says what a tenth of a point of moisture is worth on this load:
// the load settled as it is, and again one tenth wetter. It is empty while the
// load cannot be settled at both ends.
func (f *LoadForm) TenthWorth() string {
	s, m := f.Now.settlement, f.Now.Load.Sample.Moisture
	if s == nil || m == nil || f.Leaves() {
		return ""
	}
	wetter := entry.CopyOf(f.Now.Load)
	moist := *m
	moist.Percent, moist.Bench = m.Percent.Add(Tenth), nil // a figure, not the bench's own tests
	wetter.Sample.Moisture = &moist
	w, problems := office.Preview(f.session.Desk, wetter)
	if len(problems) > 0 || w == nil {
		return ""
	}
	lost := session.PrintedLike(s.Quantity, s.Quantity.Value().Sub(w.Quantity.Value()))
	return session.Say("A tenth of a point is worth %s, %s.", lost, moneyBetween(s, w))
}

// moneyBetween is what the grower has less by the second settlement: of what
// is payable, or while the price comes later of the charges.
func moneyBetween(s, w *settle.Settlement) string {
	if s.Payable.Kind() == worksheet.NotApplied {
		return session.Say("%s in charges", session.PrintedLike(s.Charges, w.Charges.Value().Sub(s.Charges.Value())))
	}
	return session.PrintedLike(s.Payable, s.Payable.Value().Sub(w.Payable.Value()))
}

// Margin is what stands beside the large figures: what stops the load as a
// whole, which ticket it takes the place of, or else what a tenth of a point is
// worth on it.
func (f *LoadForm) Margin() model.Remark {
	if stopped := f.Now.remarks[wholeLoad]; stopped.State == model.Stop {
		return stopped
	}
	if place := session.InPlaceText(f.Now.Load); place != "" {
		return model.Remark{State: model.Plain, Text: place}
	}
	return model.Remark{State: model.Plain, Text: f.TenthWorth()}
}

// Ruler is the moisture ruler of the load: where the rates begin to take
// something, what they shrink to, and where this load stands. Without rates
// and reading it is bare.
func (f *LoadForm) Ruler() model.Ruler {
	ruler, err := office.Ruler(context.Background(), f.session.Desk, f.Now.Load)
	if err != nil {
		f.session.Fail(err)
	}
	r := session.RulerOf(ruler)
	session.MarkReading(&r, model.OK)
	m, e := f.Now.Load.Sample.Moisture, f.Now.edition
	if m != nil && e != nil && e.Shrink.Trigger.Given() && m.Percent.More(e.Shrink.Trigger.Amount) {
		session.MarkReading(&r, model.Warn)
	}
	return r
}
