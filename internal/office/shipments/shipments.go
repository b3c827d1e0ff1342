// Package shipments answers about grain that left: which loads, what the destination found of each,
// and the papers that go with them.
package shipments

import (
	"context"
	"slices"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/book"
	"tenthpoint/internal/entry/shipping"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/shipment"
)

// Shipment is one load that left. Arrived is nil until the destination's figures were written down.
type Shipment struct {
	Load    *load.Load
	Origin  shipment.Origin
	Arrived *shipment.Arrived
	shipment.Difference
}

// All are the loads that left from one day to another, tickets in force.
func All(ctx context.Context, d office.Desk, from, to quantity.Date) ([]Shipment, error) {
	rows, err := d.Reader().Loads(ctx, book.LoadFilter{FromTicket: 1, FromDay: from.String(), ToDay: to.String()})
	if err != nil {
		return nil, err
	}
	arrived, err := office.RecordsOf[shipment.Arrived](ctx, d.Reader())
	if err != nil {
		return nil, err
	}
	var out []Shipment
	for _, r := range rows {
		if r.Direction != string(load.Outbound) || r.Phase != string(load.Ticketed) {
			continue
		}
		l, err := office.Load(ctx, d, r.ID)
		if err != nil {
			return nil, err
		}
		one, err := shipmentOf(ctx, d, l, arrived)
		if err != nil {
			return nil, err
		}
		out = append(out, one)
	}
	return out, nil
}

// Numbered is the load of a ticket that left.
func Numbered(ctx context.Context, d office.Desk, number int64) (Shipment, error) {
	l, err := office.Ticket(ctx, d, number)
	if err != nil {
		return Shipment{}, err
	}
	if err := MayArrive(l); err != nil {
		return Shipment{}, err
	}
	arrived, err := office.RecordsOf[shipment.Arrived](ctx, d.Reader())
	if err != nil {
		return Shipment{}, err
	}
	return shipmentOf(ctx, d, l, arrived)
}

// MayArrive returns why a load cannot have arrived anywhere, or nil.
func MayArrive(l *load.Load) error {
	switch {
	case l.Details.Direction != load.Outbound:
		return message.Refused.Errorf("ticket %d is of grain that came in. Name the ticket of a load that left", l.Number)
	case l.Phase != load.Ticketed:
		return message.WrongPhase.Errorf("ticket %d does not stand. Name the one in its place", l.Number)
	}
	return nil
}

func shipmentOf(ctx context.Context, d office.Desk, l *load.Load, arrived []shipment.Arrived) (Shipment, error) {
	s := Shipment{Load: l}
	net := l.Settled.Figures[settle.LineNet]
	s.Origin = shipment.Origin{Weight: net, Grade: l.Sample.Grade, Found: found(l.Sample)}
	if len(s.Origin.Found) == 0 {
		drawn, err := binlog.CarriedOut(ctx, d, bin.Place{Bin: l.Details.Bin, Commodity: l.Details.Commodity, Unit: net.Unit()}, l.IssuedDay)
		if err != nil {
			return s, err
		}
		s.Origin.Found, s.Origin.Estimated = means(l, drawn), true
	}
	at := slices.IndexFunc(arrived, func(a shipment.Arrived) bool { return a.Ticket == l.Number })
	if at < 0 {
		return s, nil
	}
	var err error
	s.Arrived = &arrived[at]
	s.Difference, err = shipment.Compare(s.Origin, arrived[at])
	return s, err
}

// found are the results of a sample that are figures.
func found(s load.Sample) map[grain.FactorID]quantity.Amount {
	out := map[grain.FactorID]quantity.Amount{}
	if s.Moisture != nil {
		out[grain.Moisture] = s.Moisture.Percent
	}
	for _, f := range s.Findings {
		if f.Amount != nil {
			out[f.Factor] = *f.Amount
		}
	}
	return out
}

// means are the results of grain as it lies, rounded as the trade records them.
func means(l *load.Load, g bin.Grain) map[grain.FactorID]quantity.Amount {
	out := map[grain.FactorID]quantity.Amount{}
	c, err := grain.ByID(l.Details.Commodity)
	if err != nil {
		return out
	}
	for id := range g.Measured {
		factor, known := c.Factor(id)
		if mean, measured := g.Mean(id); known && measured {
			out[id] = factor.Record.Apply(mean)
		}
	}
	return out
}

// Left is what is known of a load before its arrival is typed.
func Left(d office.Desk, s Shipment) (shipping.Left, error) {
	c, err := grain.ByID(s.Load.Details.Commodity)
	return shipping.Left{Ticket: s.Load.Number, Commodity: c, Unit: s.Origin.Weight.Unit(), Today: d.Today()}, err
}
