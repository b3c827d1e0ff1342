package load

import (
	"reflect"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// SettleFacts is the load as the settlement reads it. The load must lack
// nothing ([Load.Missing]).
func (l *Load) SettleFacts() settle.Facts {
	f := settle.Facts{Moisture: l.moisture(), Deal: l.Details.Deal().settled()}
	for _, draft := range l.Drafts() {
		f.Drafts = append(f.Drafts, l.draft(draft))
	}
	for _, found := range l.Sample.Findings {
		f.Findings = append(f.Findings, l.finding(found))
	}
	for _, o := range l.Details.Shares {
		f.Shares = append(f.Shares, o.settled())
	}
	if len(f.Shares) == 1 && f.Shares[0].Own != nil {
		f.Deal = *f.Shares[0].Own
	}
	for _, a := range l.Accepted {
		f.Accepted = append(f.Accepted, a.Limit)
	}
	return f
}

func (l *Load) draft(name string) settle.Draft {
	gross, _ := l.Weight(Gross, name)
	tare, _ := l.Weight(Tare, name)
	return settle.Draft{
		Name:  name,
		Gross: gross.Weight, GrossSource: l.onTheClock(gross).SourceWords(),
		Tare: tare.Weight, TareSource: l.onTheClock(tare).SourceWords(),
	}
}

// UseClock sets the elevator's time zone, in which its settlement says when it was weighed. The
// facts themselves are in UTC.
func (l *Load) UseClock(clock func(at string) string) { l.clock = clock }

func (l *Load) onTheClock(t StampedWeighing) StampedWeighing {
	if l.clock != nil {
		t.At = l.clock(t.At)
	}
	return t
}

// SourceWords describes the source of a weight, as the slip prints it.
func (t StampedWeighing) SourceWords() message.Text {
	switch t.Source {
	case ByHand:
		return message.New("MANUAL WT, typed by %v: %s", t.Who, t.Reason)
	case StoredTare:
		return message.New("stored tare of %s", t.Weighing.Taken)
	}
	return message.New("scale %s, %s", message.Own(t.Scale), message.Own(t.At))
}

func (l *Load) moisture() settle.Moisture {
	m := l.Sample.Moisture
	if m == nil {
		return nil
	}
	if m.Bench != nil {
		return benchMoisture{bench: *m.Bench, charts: l.charts}
	}
	source := message.Words(m.Method)
	if m.Meter != "" {
		source = message.New("%s, meter %v", source, m.Meter)
	}
	if m.Reason != "" {
		source = message.New("%s: %s", source, m.Reason)
	}
	return settle.Reading{Percent: m.Percent, Source: source}
}

func (l *Load) finding(f Finding) settle.Finding {
	out := settle.Finding{Factor: f.Factor, Present: f.Present}
	if f.Amount != nil {
		out.Amount = *f.Amount
	} else {
		out.Amount = quantity.Zero(quantity.Count)
	}
	if l.Sample.Tester != "" {
		out.Source = message.New("tested by %v", l.Sample.Tester)
	}
	return out
}

// settled is an owner as the settlement reads it.
func (o Owner) settled() settle.Share {
	share := settle.Share{Owner: o.Name, Parts: o.Parts, Of: o.Of, Drying: o.Drying}
	if o.Own != nil {
		own := o.Own.settled()
		share.Own = &own
	}
	return share
}

// PriceText tells the origin of the price.
func (d Deal) PriceText() message.Text {
	if d.Under == title.Contract && d.PriceSource == "contract "+d.No {
		return message.New("contract %s", message.Own(d.No))
	}
	return message.Words(d.PriceSource)
}

// settled is a deal as the settlement reads it.
func (d Deal) settled() settle.Deal {
	out := settle.Deal{Unpriced: d.Under.Unpriced()}
	if d.Price != nil {
		out.Price = &settle.Price{Amount: *d.Price, Source: d.PriceText()}
	}
	return out
}

// SameFacts reports whether two loads hold the same facts. The clock and the charts that a load was
// given to be read with do not count.
func (l *Load) SameFacts(other *Load) bool {
	if l == nil || other == nil {
		return l == other
	}
	a, b := *l, *other
	a.clock, b.clock, a.charts, b.charts = nil, nil, nil, nil
	return reflect.DeepEqual(a, b)
}
