package yard

import (
	"context"

	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Preview is everything shown about a form with what is typed on it, as one value: the state of
// each field with its message, the settlement in figures, and the ticket as it would print now. A
// screen draws from it alone.
type Preview struct {
	session *session.Session
	now     *formState

	Fields  []model.Field
	Figures []model.Figure       // net, quantity settled, payable: what clerk and driver look for
	Margin  model.Status         // beside the figures
	Tenth   string               // the value of a tenth of a point of moisture; may be empty
	Slip    scaleticket.Document // the ticket, with placeholders for what is missing
	Ruler   model.Ruler          // of the moisture; bare without rates and reading

	CanUseTare  bool // the truck has a stored tare that is not in use
	CanWithdraw bool // the load is in the book and was never weighed
}

// Preview returns the form's current preview.
func (f *LoadForm) Preview() Preview {
	p := Preview{session: f.session, now: f.Now, Fields: f.Fields(), CanUseTare: storedTare{f}.canUse(), CanWithdraw: f.CanWithdraw()}
	p.Figures = p.figures()
	p.Tenth = p.tenth()
	p.Margin = p.margin()
	p.Slip = scaleticket.Compose(session.TicketUnder(f.session, f.Now.edition, f.Now.Load, f.Now.settlement, scaleticket.Draft, append(f.Now.sentences(), f.Now.questions()...)))
	p.Ruler = p.ruler()
	f.last.show(&p)
	return p
}

func (p Preview) figures() []model.Figure {
	net := model.Figure{Caption: p.session.Say("Net"), Value: session.NotYet, Unit: p.session.Desk.Profile().WeightUnit().String()}
	if a, known := p.now.Load.Net(); known {
		net.Value, net.Unit = a.Figure(), a.Unit().String()
		if a.Sign() <= 0 {
			net.State = model.Stop
		}
	}
	if p.now.Leaves() {
		return p.leavingFigures(net)
	}
	settled := model.Figure{Caption: p.session.Say("Settled"), Value: session.NotYet, Unit: "bu"}
	money := model.Figure{Caption: p.session.Say("Payable"), Value: session.NotYet}
	if e := p.now.edition; e != nil {
		settled.Unit = e.Units.Settle.String()
	}
	if s := p.now.settlement; s != nil {
		settled.Value = session.FigureOf(s.Quantity)
		money.Value = s.Payable.Printed()
		if s.Payable.Kind() == worksheet.NotApplied {
			money.Caption, money.Value = p.session.Say("Charges, discounts"), session.ToOwner(s.ToOwner())
		}
	}
	return []model.Figure{net, settled, money}
}

// leavingFigures are the large figures of a load that is only weighed.
func (p Preview) leavingFigures(net model.Figure) []model.Figure {
	bushels := model.Figure{Caption: p.session.Say("By legal weight"), Value: session.NotYet, Unit: "bu"}
	if s := p.now.settlement; s != nil && s.Bushels != nil {
		bushels.Value = session.FigureOf(s.Bushels)
	}
	return []model.Figure{net, bushels, {Caption: p.session.Say("Only weighed")}}
}

// tenth describes what the load would bring less one tenth of a point wetter. It is empty while the
// load cannot be settled at both moistures.
func (p Preview) tenth() string {
	s := p.now.settlement
	if s == nil || s.Moisture == nil || p.now.Leaves() {
		return ""
	}
	wetter := s.Supposed(p.now.Load.SettleFacts(), s.Moisture.Value().Add(office.Tenth.In(quantity.Percent)))
	if wetter.Settlement == nil {
		return ""
	}
	lost := session.PrintedLike(s.Quantity, wetter.Change.Quantity.Neg())
	return p.session.Say("A tenth of a point is worth %s, %s.", lost, moneyLost(p.session.Language, s, wetter.Change))
}

// moneyLost is the grower's loss by a change: of what is payable, or without a price of what is
// charged and discounted.
func moneyLost(in session.Language, s *settle.Settlement, c settle.Change) string {
	if c.Payable == nil {
		return in.Say("%s in charges and discounts", c.ToOwner.Neg().FixedString(2))
	}
	return session.PrintedLike(s.Payable, c.Payable.Neg())
}

// margin returns the problem that stops the load as a whole, else the question about it, else the
// ticket it replaces, else the value of a tenth of a point.
func (p Preview) margin() model.Status {
	if stopped := p.now.messages[wholeLoad]; stopped.State == model.Stop {
		return stopped
	}
	if asked := p.now.questions(); len(asked) > 0 {
		return model.Status{State: model.Warn, Text: p.session.Text(asked[0])}
	}
	if place := session.InPlaceText(p.session.Language, p.now.Load); place != "" {
		return model.Status{State: model.Plain, Text: session.Join(" ", p.now.payableChange(p.session.Language), place)}
	}
	return model.Status{State: model.Plain, Text: p.Tenth}
}

// ruler has the trigger, the shrink-to moisture, and the moisture of this load.
func (p Preview) ruler() model.Ruler {
	ruler, err := office.Ruler(context.Background(), p.session.Desk, p.now.Load, p.now.edition)
	if err != nil {
		p.session.Fail(err)
	}
	r := session.RulerOf(p.session.Language, ruler)
	session.MarkReading(&r, model.OK)
	m, e := p.now.Load.Sample.Moisture, p.now.edition
	if m != nil && e != nil && e.Shrink.Trigger.Given() && m.Percent.More(e.Shrink.Trigger.Amount) {
		session.MarkReading(&r, model.Warn)
	}
	return r
}

// Working lists every line of the settlement with its calculation, as shown instead of the slip.
// While the load cannot be settled it says why.
func (p Preview) Working() []model.CardLine {
	lines := []model.CardLine{{Kind: model.CardTitle, Left: p.session.Say("Working")}}
	s := p.now.settlement
	if s == nil {
		lines = append(lines, model.CardLine{Kind: model.CardText, Left: p.session.Say("The load cannot be settled yet.")})
		for _, m := range p.now.Load.Missing() {
			lines = append(lines, model.CardLine{Kind: model.CardMark, Left: p.session.Text(m.Sentence)})
		}
		for _, sentence := range p.now.sentences() {
			lines = append(lines, model.CardLine{Kind: model.CardMark, Left: p.session.Text(sentence)})
		}
		return lines
	}
	lines = append(lines, p.now.differences(p.session.Language)...)
	return append(append(lines, session.WorkingLines(p.session.Language, s, p.now.Load.Details.Under)...), session.GradeLines(p.session, p.now.Load)...)
}
