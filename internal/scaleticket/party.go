package scaleticket

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
)

// partySection has the owner of the grain.
func partySection(t *facts) Section {
	d := t.l.Details
	p := newPart(t, "party", t.w.Party, Facts)
	label := t.w.Grower
	if d.Direction == load.Outbound {
		label = t.w.Owner
	}
	p.need("grower", label, d.Grower.Name, t.w.NotNamed)
	if owner, ok := t.owner(); ok {
		p.put(Line{Label: t.w.ThisCopyFor, Value: t.w.shareWords(owner), Emphasis: true})
	} else {
		p.put(Line{Field: "shares", Label: t.w.Shares, Value: sharesWords(t)})
	}
	if d.Direction == load.Outbound {
		p.need("consignee", t.w.Consignee, d.Consignee, t.w.NotNamed)
	} else {
		p.given(t.w.Consignee, d.Consignee)
	}
	p.given(t.w.Agent, d.Agent)
	return p.Section
}

// sharesWords describes the owners' shares of the load.
func sharesWords(t *facts) string {
	owners := t.l.Details.Shares
	if len(owners) < 2 {
		return t.w.WholeLoad
	}
	var parts []string
	for _, o := range owners {
		parts = append(parts, t.w.shareWords(o))
	}
	return Joined("; ", parts...)
}

func (w Words) shareWords(o load.Owner) string {
	return o.Name + " " + w.figure(o.Part().String())
}

// movementSection has the grain, the time and the vehicle.
func movementSection(t *facts) Section {
	d := t.l.Details
	p := newPart(t, "movement", t.w.Movement, Facts)
	p.fact(t.w.Movement, directionWord(t), t.w.NotStated)
	p.need("day", t.w.Date, t.date(d.Day), t.w.NotDated)
	p.need("commodity", t.w.Commodity, Joined(", ", commodityName(t), d.Class), t.w.NotNamed)
	p.fact(t.w.CropYear, d.CropYear, t.w.NoCropYear)
	p.grown(d)
	p.need("truck", t.w.Truck, truckName(t), t.w.NotNamed)
	p.fact(t.w.Trailer, d.Truck.Trailer, t.w.NoTrailer)
	weighedAt(p, load.Gross, t.w.GrossAt)
	weighedAt(p, load.Tare, t.w.TareAt)
	p.fact(t.w.Driver, d.Driver, t.w.NotNamed)
	p.known("bin", t.w.Bin, d.Bin, t.w.NotNamed)
	p.shipping(d)
	if remark := remarkOf(t); !remark.IsZero() {
		p.put(Line{Field: "remark", Label: t.w.Remark, Value: t.w.say(remark)})
	}
	return p.Section
}

// remarkOf is the remark on a load, after its number in the old books and the slip it was entered
// again from.
func remarkOf(t *facts) message.Text {
	var before []any
	if old := t.l.Details.OldTicket; old != "" {
		before = append(before, message.New("old ticket %v.", old))
	}
	if slip := t.l.Slip; slip != nil {
		before = append(before, message.New("entered again from the slip of %v, code %v.", t.moment(slip.At), slip.Code))
	}
	return message.List(" ", append(before, message.Name(t.l.Details.Remark))...)
}

func directionWord(t *facts) string {
	switch t.l.Details.Direction {
	case load.Inbound:
		return t.w.Inbound
	case load.Outbound:
		return t.w.Outbound
	}
	return ""
}

// knownGrain returns the commodity of the load, if it is a known one.
func knownGrain(t *facts) (grain.Commodity, bool) {
	if t.Edition != nil {
		return t.Edition.Commodity, true
	}
	known, err := grain.ByID(t.l.Details.Commodity)
	return known, err == nil
}

func commodityName(t *facts) string {
	if known, ok := knownGrain(t); ok {
		return t.w.word(known.Name)
	}
	return t.l.Details.Commodity
}

func truckName(t *facts) string {
	truck := t.l.Details.Truck
	switch {
	case truck.Plate == "" || truck.Plate == truck.ID:
		return truck.ID
	case truck.ID == "":
		return t.w.Plate + " " + truck.Plate
	}
	return truck.ID + ", " + t.w.Plate + " " + truck.Plate
}

// weighedAt says when one side was weighed, and whether the driver was on.
func weighedAt(p *part, which load.Which, label string) {
	var times []string
	for _, w := range p.l.Weighings {
		if w.Which == which {
			times = append(times, Joined(" ", p.w.word(w.Draft), Joined(", ", whenTaken(p.facts, w), driverWords(p.facts, w))))
		}
	}
	p.need(string(which), label, Joined("; ", times...), p.w.NotWeighed)
}

// whenTaken is the time a weight was taken; of a stored tare, the day.
func whenTaken(t *facts, w load.StampedWeighing) string {
	if w.Source == load.StoredTare {
		return t.w.StoredTareOf + " " + t.date(w.Weighing.Taken)
	}
	return t.hour(w.At)
}

func driverWords(t *facts, w load.StampedWeighing) string {
	switch {
	case w.Source == load.StoredTare:
		return ""
	case w.DriverOn == "on":
		return t.w.DriverOn
	case w.DriverOn == "off":
		return t.w.DriverOff
	}
	return t.w.DriverNotNoted
}

// grown says where and as what the grain grew, and its lot, where anything was declared.
func (p *part) grown(d load.Details) {
	for _, one := range []struct {
		label message.Text
		value string
	}{
		{message.New("Farm"), d.Grown.Farm}, {message.New("Farm number"), d.Grown.Number}, {message.New("Field or bin of origin"), d.Grown.Field}, {message.New("Grown in"), d.Grown.Place},
		{message.New("Variety declared"), d.Grown.Variety}, {message.New("Lot"), d.Lot}, {message.New("Previous cargo"), d.Grown.Previous},
	} {
		p.given(p.w.say(one.label), one.value)
	}
}

// padWords are the number of an emergency ticket, and the hour it was written.
func padWords(on load.OnPad) message.Text {
	if on.Hour == "" {
		return message.New("%d", on.Number)
	}
	return message.New("%d, written at %v", on.Number, on.Hour)
}

// shipping are the papers that go with the grain, and the first day of its storage.
func (p *part) shipping(d load.Details) {
	p.given(p.w.say(message.New("Railcar or barge")), d.Shipping.Vehicle)
	p.given(p.w.say(message.New("Seals")), d.Shipping.Seals)
	p.given(p.w.say(message.New("Bill of lading")), d.Shipping.Lading)
	p.given(p.w.say(message.New("Destination")), d.Shipping.Destination)
	p.given(p.w.say(message.New("Carrier")), d.Shipping.Carrier)
	p.given(p.w.say(message.New("Freight")), p.w.word(d.Shipping.Freight))
	if on := d.Pad; on != nil {
		p.given(p.w.say(message.New("Emergency ticket")), p.w.say(padWords(*on)))
	}
	if !d.StoredFrom.IsZero() {
		p.given(p.w.say(message.New("Stored from")), p.date(d.StoredFrom))
	}
}
