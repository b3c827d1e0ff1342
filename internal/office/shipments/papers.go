package shipments

import (
	"maps"
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/shipment"
)

// Lading is the bill of lading of a load that left. It has the fields the trade puts on one, and is no
// carrier's form.
func Lading(s Shipment, p elevator.Profile) report.Document {
	l := s.Load
	d := report.Of(p, l.IssuedDay)
	d.Title, d.About = message.New("Bill of lading %v", ladingNumber(l)), message.New("ticket %d, %s", l.Number, l.IssuedDay)
	d.Blocks = append(d.Blocks, report.Pairs{Pairs: parties(l, p)}, report.Pairs{Pairs: vehicle(l)}, report.Pairs{Pairs: weights(l)}, qualityTable(s))
	if s.Origin.Estimated && len(s.Origin.Found) > 0 {
		d.Blocks = append(d.Blocks, report.Para{Text: message.New("No sample of this load was tested. The figures are the mean of what lay in %v where it was drawn: an estimate.", l.Details.Bin)})
	}
	if s.Arrived != nil {
		d.Blocks = append(d.Blocks, report.Heading{Text: message.New("At the destination")}, report.Pairs{Pairs: arrival(s)})
	}
	d.Blocks = append(d.Blocks,
		report.Para{Text: message.New("Grain under fumigation moves only as the label and the law allow: placarded, with its papers, and nobody enters the car. Confirm locally.")},
		report.Signing{Names: []message.Text{message.New("For the shipper"), message.New("For the carrier"), message.New("Received at the destination")}})
	return d
}

// ladingNumber is the number the bill was given, or that of the ticket.
func ladingNumber(l *load.Load) message.Text {
	if l.Details.Shipping.Lading != "" {
		return message.Name(l.Details.Shipping.Lading)
	}
	return message.New("%d", l.Number)
}

// pairs are labels with their values, without those that have none.
func pairs(all ...report.Pair) []report.Pair {
	return slices.DeleteFunc(all, func(p report.Pair) bool { return p.Value.IsZero() })
}

func named(label message.Text, value string) report.Pair {
	p := report.Pair{Label: label}
	if value != "" {
		p.Value = message.Name(value)
	}
	return p
}

func parties(l *load.Load, p elevator.Profile) []report.Pair {
	d := l.Details
	return pairs(
		named(message.New("Shipper"), p.Business), named(message.New("Owner"), d.Grower.Name),
		named(message.New("Consignee"), d.Consignee), named(message.New("Destination"), d.Shipping.Destination),
		named(message.New("Freight"), d.Shipping.Freight), named(message.New("Agent"), d.Agent),
		report.Pair{Label: message.New("Grain"), Value: message.Words(grain.NameOf(d.Commodity))}, named(message.New("Class"), d.Class),
		named(message.New("Crop year"), d.CropYear), named(message.New("Lot"), d.Lot), named(message.New("Drawn from"), d.Bin), named(message.New("Remark"), d.Remark),
	)
}

func vehicle(l *load.Load) []report.Pair {
	d := l.Details
	return pairs(
		named(message.New("Carrier"), d.Shipping.Carrier), named(message.New("Railcar or barge"), d.Shipping.Vehicle),
		named(message.New("Truck"), d.Truck.ID), named(message.New("Plate"), d.Truck.Plate), named(message.New("Trailer"), d.Truck.Trailer),
		named(message.New("Driver"), d.Driver), named(message.New("Seals"), d.Shipping.Seals), named(message.New("Previous cargo"), d.Grown.Previous),
	)
}

func weights(l *load.Load) []report.Pair {
	figure := func(label message.Text, line string) report.Pair {
		p := report.Pair{Label: label}
		if a, known := l.Settled.Figures[line]; known {
			p.Value = message.New("%s", a)
		}
		return p
	}
	return pairs(figure(message.New("Gross"), settle.LineGross), figure(message.New("Tare"), settle.LineTare), figure(message.New("Net"), settle.LineNet),
		figure(message.New("Bushels by legal weight"), settle.LineBushels), named(message.New("Weighed by"), l.Weigher), named(message.New("Grade"), l.Sample.Grade))
}

// qualityTable has the results of the load, at both ends where it has arrived.
func qualityTable(s Shipment) report.Table {
	t := report.Table{Name: message.New("Quality"), Empty: message.New("No result is known of this load."), Columns: []report.Column{
		{Title: message.New("Result")}, {Title: message.New("Origin"), Align: report.Right},
	}}
	if s.Arrived == nil {
		for _, id := range slices.Sorted(maps.Keys(s.Origin.Found)) {
			t.Rows = append(t.Rows, report.Row{Cells: []message.Text{factorName(s.Load, id), result(s.Load, id, s.Origin.Found[id])}})
		}
		return t
	}
	t.Columns = append(t.Columns, report.Column{Title: message.New("Destination"), Align: report.Right}, report.Column{Title: message.New("Difference"), Align: report.Right})
	for _, f := range s.Factors {
		t.Rows = append(t.Rows, report.Row{Cells: []message.Text{factorName(s.Load, f.ID), result(s.Load, f.ID, f.Origin), result(s.Load, f.ID, f.Destination), result(s.Load, f.ID, f.Difference)}})
	}
	return t
}

func factorName(l *load.Load, id grain.FactorID) message.Text {
	if c, err := grain.ByID(l.Details.Commodity); err == nil {
		if f, known := c.Factor(id); known {
			return message.Words(f.Name)
		}
	}
	return message.Name(string(id))
}

// result is a result to the places that it is recorded with; nothing where there is none.
func result(l *load.Load, id grain.FactorID, a quantity.Amount) message.Text {
	if !quantity.Recorded(a) {
		return message.Text{}
	}
	if c, err := grain.ByID(l.Details.Commodity); err == nil {
		if f, known := c.Factor(id); known {
			return message.New("%s", a.FixedString(f.Record.Places()))
		}
	}
	return message.New("%s", a)
}

// percent is a part of the net weight.
func percent(a quantity.Amount) message.Text { return message.New("%s", a.FixedString(2)) }

func arrival(s Shipment) []report.Pair {
	a := s.Arrived
	return pairs(
		report.Pair{Label: message.New("Day"), Value: message.New("%s", a.Day)}, report.Pair{Label: message.New("Net weight there"), Value: message.New("%s", a.Weight)},
		report.Pair{Label: message.New("Difference"), Value: message.New("%s (%s)", s.Weight, percent(s.Percent))},
		named(message.New("Grade there"), a.Grade), named(message.New("Ticket or certificate there"), a.Paper), named(message.New("Scale there"), a.Scale), named(message.New("Remark"), a.Remark),
	)
}

// Register is the list of loads that left as a paper, with the sums of those that have arrived.
func Register(all []Shipment, p elevator.Profile, from, to quantity.Date) report.Document {
	d := report.Of(p, to)
	d.Title, d.About = message.New("Grain loaded out"), message.New("from %s to %s", from, to)
	t := report.Table{Name: message.New("loads"), Empty: message.New("No grain left in this period."), Columns: []report.Column{
		{Title: message.New("Ticket"), Align: report.Right}, {Title: message.New("Day")}, {Title: message.New("Grain")}, {Title: message.New("Consignee")},
		{Title: message.New("Truck, railcar or barge")}, {Title: message.New("Bill of lading")}, {Title: message.New("Seals")}, {Title: message.New("From bin")},
		{Title: message.New("Net"), Align: report.Right}, {Title: message.New("Net weight there"), Align: report.Right}, {Title: message.New("Difference"), Align: report.Right}, {Title: message.New("Of net"), Align: report.Right},
	}}
	for _, s := range all {
		t.Rows = append(t.Rows, report.Row{Cells: registerCells(s)})
	}
	for _, sum := range Arrivals(all) {
		t.Rows = append(t.Rows, report.Row{Kind: report.Total, Cells: []message.Text{{}, {}, message.New("%v, arrived", message.Words(grain.NameOf(sum.Commodity))), message.Count(sum.Loads, "%d load", "%d loads"), {}, {}, {}, {},
			message.New("%s", sum.Origin), message.New("%s", sum.Destination), message.New("%s", sum.Weight), percent(sum.Percent)}})
	}
	d.Blocks = append(d.Blocks, t, report.Para{Text: message.New("A difference of one load is within two scales. What repeats over many loads is looked into: a scale, a leak, moisture lost on the way.")})
	return d
}

func registerCells(s Shipment) []message.Text {
	l := s.Load
	by := l.Details.Shipping.Vehicle
	if by == "" {
		by = l.Details.Truck.ID
	}
	cells := []message.Text{message.New("%d", l.Number), message.New("%s", l.IssuedDay), message.Words(grain.NameOf(l.Details.Commodity)), message.Name(l.Details.Consignee),
		message.Name(by), message.Name(l.Details.Shipping.Lading), message.Name(l.Details.Shipping.Seals), message.Name(l.Details.Bin), message.New("%s", s.Origin.Weight)}
	if s.Arrived == nil {
		return append(cells, message.Text{}, message.Text{}, message.Text{})
	}
	return append(cells, message.New("%s", s.Arrived.Weight), message.New("%s", s.Weight), percent(s.Percent))
}

// Sum is all loads of a grain that have arrived, in one unit of weight.
type Sum struct {
	Commodity           string
	Loads               int
	Origin, Destination quantity.Amount
	shipment.Difference
}

// Arrivals are the sums of the loads that have arrived, grain by grain.
func Arrivals(all []Shipment) []Sum {
	var out []Sum
	for _, s := range all {
		if s.Arrived == nil {
			continue
		}
		i := slices.IndexFunc(out, func(sum Sum) bool {
			return sum.Commodity == s.Load.Details.Commodity && sum.Origin.Unit() == s.Origin.Weight.Unit()
		})
		if i < 0 {
			i = len(out)
			none := quantity.Zero(s.Origin.Weight.Unit())
			out = append(out, Sum{Commodity: s.Load.Details.Commodity, Origin: none, Destination: none})
		}
		out[i].Loads++
		out[i].Origin, out[i].Destination = out[i].Origin.Add(s.Origin.Weight), out[i].Destination.Add(s.Arrived.Weight)
	}
	for i := range out {
		sum := &out[i]
		// in one unit, so that it cannot fail
		sum.Difference, _ = shipment.Compare(shipment.Origin{Weight: sum.Origin}, shipment.Arrived{Weight: sum.Destination})
	}
	return out
}
