package housetest

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// Details are those of a load of corn.
func Details() load.Details {
	return load.Details{
		Direction: load.Inbound, Commodity: "corn",
		Grower: load.Party{ID: "G1", Name: "Ada Field"}, Truck: load.Truck{ID: "T1"}, Bin: "Pit 1",
	}
}

// Arrive opens a load and weighs it full.
func (s *Scene) Arrive(grossLb int64) string {
	s.T.Helper()
	id, err := scalehouse.OpenLoad(ctx, s.Desk, Details())
	Must(s.T, err)
	s.Weigh(id, load.Gross, grossLb)
	return id
}

// Weigh enters a weight from the scale.
func (s *Scene) Weigh(id string, which load.Which, lb int64) {
	s.T.Helper()
	Must(s.T, scalehouse.Weigh(ctx, s.Desk, id, ScaleWeight(which, lb)))
}

// ScaleWeight is a weight from the scale.
func ScaleWeight(which load.Which, lb int64) load.Weighing {
	return load.Weighing{Which: which, Weight: quantity.Int(lb, quantity.Lb), Source: load.FromScale}
}

// Sample enters what a sample was tested for.
func (s *Scene) Sample(id, moisture string, findings ...load.Finding) {
	s.T.Helper()
	Must(s.T, scalehouse.RecordSample(ctx, s.Desk, id, SampleOf(moisture, findings...)))
}

// SampleOf is a sample with its moisture and findings.
func SampleOf(moisture string, findings ...load.Finding) load.Sample {
	m := quantity.Of(moisture, quantity.Percent)
	return load.Sample{Number: "S1", Tester: Tester, Moisture: &load.Moisture{Percent: m, Method: "direct", Meter: "M1"}, Findings: findings}
}

// Found is the results of a sample.
func Found(factor grain.FactorID, text string, unit quantity.Unit) load.Finding {
	a := quantity.Of(text, unit)
	return load.Finding{Factor: factor, Amount: &a}
}

// Whole brings a load to where only its ticket is due.
func (s *Scene) Whole() string {
	s.T.Helper()
	id := s.Arrive(52300)
	s.Sample(id, "18.0")
	s.Weigh(id, load.Tare, 24300)
	return id
}

// Ticket issues a whole load's ticket.
func (s *Scene) Ticket() (id string, number int64) {
	s.T.Helper()
	id = s.Whole()
	number, err := scalehouse.Issue(ctx, s.Desk, id)
	Must(s.T, err)
	return id, number
}

// Leave weighs a truck out with so many pounds from a bin and issues its
// ticket.
func (s *Scene) Leave(bin string, pounds int64) (number int64) {
	s.T.Helper()
	d := Details()
	d.Direction, d.Bin, d.Consignee = load.Outbound, bin, "A buyer"
	id, err := scalehouse.OpenLoad(ctx, s.Desk, d)
	Must(s.T, err)
	s.Weigh(id, load.Tare, 24000)
	s.Weigh(id, load.Gross, 24000+pounds)
	number, err = scalehouse.Issue(ctx, s.Desk, id)
	Must(s.T, err)
	return number
}

// Probe takes a sample that is kept.
func (s *Scene) Probe(id, place string) string {
	s.T.Helper()
	number, err := scalehouse.Probe(ctx, s.Desk, id, scalehouse.Probed{Probes: []moisture.Probe{{Place: "left front"}, {Place: "right rear", Note: "musty"}}, Place: place})
	Must(s.T, err)
	return number
}

// Voided issues a ticket and voids it.
func Voided(s *Scene) (string, int64) {
	id, number := s.Ticket()
	Must(s.T, scalehouse.Void(ctx, s.As(Manager).Desk, number, "a trial"))
	return id, number
}

// Corrected issues a ticket and corrects it.
func Corrected(s *Scene) (string, int64) {
	id, number := s.Ticket()
	next, err := scalehouse.Correct(ctx, s.As(Manager).Desk, number, "a trial")
	Must(s.T, err)
	_, err = scalehouse.Issue(ctx, s.Desk, next)
	Must(s.T, err)
	return id, number
}

// UnderReissue is a void ticket whose load has another on the way.
func UnderReissue(s *Scene) (string, int64) {
	_, number := Voided(s)
	id, err := scalehouse.Reissue(ctx, s.Desk, number, "torn in the printer")
	Must(s.T, err)
	return id, number
}

// Reissued is a void ticket in whose place another was issued.
func Reissued(s *Scene) (string, int64) {
	id, number := UnderReissue(s)
	_, err := scalehouse.Issue(ctx, s.Desk, id)
	Must(s.T, err)
	return id, number
}

// TurnedAway is a load that was refused.
func TurnedAway(s *Scene) (string, int64) {
	id := s.Arrive(52300)
	Must(s.T, scalehouse.Refuse(ctx, s.Desk, id, "hot"))
	return id, 0
}
