package scaleticket

import (
	"fmt"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// weightSection is gross less tare: every draft full, every draft empty, net.
func weightSection(t *facts) Section {
	p := newPart(t, "weight", t.w.Weight, Ledger)
	var texts []string
	for _, w := range t.l.Weighings {
		texts = append(texts, w.Weight.Written())
	}
	col := columnOf(texts...)
	drafts := t.l.Drafts()
	if len(drafts) == 0 {
		drafts = []string{""}
	}
	for _, which := range []load.Which{load.Gross, load.Tare} {
		for i, draft := range drafts {
			weighedLines(p, col, which, draft, i == 0)
		}
	}
	netLine(p, col)
	originLines(p, col)
	weighedHow(p)
	return p.Section
}

// weighedLines adds the weight in force of one side, and those it replaced.
func weighedLines(p *part, col column, which load.Which, draft string, first bool) {
	label := p.w.sideLabel(which, draft)
	w, ok := p.l.Weight(which, draft)
	if !ok {
		p.put(Line{Field: string(which), Label: label, Value: p.w.NotWeighed, Missing: true})
		return
	}
	line := Line{Field: string(which), Label: label, Value: col.off(w.Weight), Notes: some(weightSource(p.facts, w))}
	switch {
	case which == load.Gross && first:
		line.Value = col.figure(w.Weight)
	case which == load.Gross:
		line.Value = col.on(w.Weight)
	}
	if w.Source == load.ByHand {
		line.Mark = p.w.MarkManual
	}
	p.put(line)
	for _, old := range p.l.Struck {
		if old.Which == which && old.Draft == draft {
			struckLine(p, col, old)
		}
	}
}

// struckLine adds a weight that was replaced by a later one.
func struckLine(p *part, col column, w load.StampedWeighing) {
	line := Line{
		Kind: Struck, Label: p.w.sideLabel(w.Which, w.Draft) + ", " + p.w.StruckWeight,
		Value: col.figure(w.Weight), Notes: some(Joined(", ", weightSource(p.facts, w), timeOf(p.facts, w))),
	}
	if w.Source == load.ByHand {
		line.Mark = p.w.MarkManual
	}
	p.put(line)
}

func timeOf(t *facts, w load.StampedWeighing) string {
	if w.Source == load.StoredTare {
		return ""
	}
	return t.hour(w.At)
}

func (w Words) sideLabel(which load.Which, draft string) string {
	side := w.Gross
	if which == load.Tare {
		side = w.Tare
	}
	if draft == "" {
		return side
	}
	return fmt.Sprintf(w.OfDraft, side, w.word(draft))
}

// weightSource describes the source of a weight.
func weightSource(t *facts, w load.StampedWeighing) string {
	scale := ""
	if w.Scale != "" {
		scale = t.w.OnScale + " " + w.Scale
	}
	switch w.Source {
	case load.ByHand:
		return Joined(", ", scale, t.w.TypedBy+" "+w.Who, t.w.word(w.Reason))
	case load.StoredTare:
		return Joined(", ", t.w.StoredTareOf+" "+t.date(w.Weighing.Taken), scale, t.w.UsedBy+" "+w.Who)
	}
	return scale
}

// netLine adds the net, which is a step of the settlement, or without one gross less tare as far as
// they are weighed.
func netLine(p *part, col column) {
	line := Line{Kind: Total, Field: "net", Label: p.w.Net, Emphasis: true}
	net, ok := netWeight(p.facts)
	if !ok {
		line.Value = netLater(p.facts)
		p.put(line)
		return
	}
	line.Value = col.figure(net)
	p.put(line)
	if net.Sign() > 0 {
		p.warn(lightNet(p.facts, net))
	}
}

// netLater is the placeholder of a net that is not weighed yet.
func netLater(t *facts) string {
	if t.isRefused() {
		return t.w.NotWeighed
	}
	return t.w.NetWhenWeighed
}

// netWeight is the net in the unit of the scale.
func netWeight(t *facts) (quantity.Amount, bool) {
	if t.s != nil {
		if step, ok := t.s.Sheet.Step(settle.LineNet); ok {
			return step.Value(), true
		}
		return t.s.Net.Value(), true
	}
	if len(t.l.Weighings) == 0 {
		return quantity.Amount{}, false
	}
	net := quantity.Zero(t.l.Weighings[0].Weight.Unit())
	for _, draft := range t.l.Drafts() {
		gross, full := t.l.Weight(load.Gross, draft)
		tare, empty := t.l.Weight(load.Tare, draft)
		if !full || !empty || gross.Weight.Unit() != net.Unit() || tare.Weight.Unit() != net.Unit() {
			return quantity.Amount{}, false
		}
		net = net.Add(gross.Weight).Sub(tare.Weight)
	}
	return net, true
}

// lightNet warns of a load too light for the scale.
func lightNet(t *facts, net quantity.Amount) string {
	for _, w := range t.l.Weighings {
		if scale, ok := t.House.Scale(w.Scale); ok {
			return t.w.say(scale.LightNet(net))
		}
	}
	return ""
}

// originLines are the weight at another scale, and the difference of this one.
func originLines(p *part, col column) {
	o := p.l.Details.Elsewhere
	if o == (load.Elsewhere{}) {
		return
	}
	line := Line{Field: "origin-weight", Label: p.w.say(message.New("Origin weight")), Value: p.w.NotWeighed}
	if o.Weight != nil {
		line.Value = o.Weight.Written()
	}
	if o.Ticket != "" {
		line.Notes = append(line.Notes, p.w.say(message.New("ticket %v", o.Ticket)))
	}
	if o.Scale != "" {
		line.Notes = append(line.Notes, p.w.say(message.New("scale %v", o.Scale)))
	}
	p.put(line)
	if off, known := load.OriginDifference(p.l); known {
		value := col.figure(off)
		if off.Sign() > 0 {
			value = col.on(off)
		}
		p.put(Line{Label: p.w.say(message.New("Net less origin weight")), Value: value})
	}
}

// weighedHow says how truck and trailer came to be weighed apart, and whether the zero was shown.
// Tickets of the engines before the fourth print as they were issued.
func weighedHow(p *part) {
	isOld := p.l.Settled != nil && p.l.Settled.Engine < settle.Current
	if len(p.l.Drafts()) > 1 && (!isOld || p.l.Details.Apart != "") {
		p.put(Line{Field: "apart", Label: p.w.say(message.New("Truck and trailer")), Value: p.w.say(p.l.Details.Apart.Said())})
	}
	if p.l.Details.Zero != "" {
		p.put(Line{Field: "zero", Label: p.w.say(message.New("Zero before weighing")), Value: p.w.word(p.l.Details.Zero)})
	}
}
