package tickettest

import (
	"fmt"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scaleticket"

	"pgregory.net/rapid"
)

func Editions(t testing.TB) []*rates.Edition {
	return []*rates.Edition{edition(t, "corn"), edition(t, "wheat-tonnes"), edition(t, "wheat-weight")}
}

// AnyTicket is a load with weights, results, owners and names of any sort. Some
// lack a weight or a result and cannot be settled.
func AnyTicket(rt *rapid.T, t testing.TB, editions []*rates.Edition) scaleticket.Ticket {
	e := rapid.SampledFrom(editions).Draw(rt, "edition")
	s := Tell(t, anyDetails(rt, e))
	unit := rapid.SampledFrom([]quantity.Unit{quantity.Lb, quantity.Kg}).Draw(rt, "scale unit")
	drafts := rapid.SampledFrom([][]string{{""}, {""}, {"truck", "trailer"}}).Draw(rt, "drafts")
	for _, draft := range drafts {
		anyWeights(rt, s, unit, draft)
	}
	s.Samples(anySample(rt, e))
	l := s.Load()
	if l.Missing() == nil && rapid.Bool().Draw(rt, "issued") {
		s.issues(rapid.Int64Range(1, 99999999).Draw(rt, "number"))
	}
	p := ExampleElevator()
	p.Business = anyName(rt, "business")
	ticket := s.Ticket(p, e)
	ticket.Owner = rapid.IntRange(0, len(l.Details.Shares)).Draw(rt, "owner")
	if len(l.Details.Shares) < 2 {
		ticket.Owner = 0
	}
	return ticket
}

func anyName(rt *rapid.T, label string) string {
	return rapid.SampledFrom([]string{
		"A", "Alder Farm", "Ågård & Søn", "The Very Long Named Family Land Holding Partnership of the Northern Plains, Limited",
		"Wordwithoutanyblanksthatislongerthananycolumnofthisslipandthenevenlongerthanthat", "Żółć i Synowie", "農場 😀",
	}).Draw(rt, label)
}

func anyDetails(rt *rapid.T, e *rates.Edition) load.Details {
	d := CornDetails()
	d.Commodity, d.Class = e.Commodity.ID, ""
	d.Grower.Name, d.Driver, d.Bin = anyName(rt, "grower"), anyName(rt, "driver"), anyName(rt, "bin")
	d.Remark = rapid.SampledFrom([]string{"", anyName(rt, "remark")}).Draw(rt, "remark or none")
	d.Price = nil
	if rapid.Bool().Draw(rt, "priced") {
		cents := quantity.Int(rapid.Int64Range(300, 900000).Draw(rt, "cents"), quantity.Plain)
		price := cents.Mul(quantity.Of("0.01", quantity.Dollar.Per(e.Units.Settle)))
		d.Price = &price
	}
	n := rapid.SampledFrom([]int64{0, 0, 2, 3, 7}).Draw(rt, "owners")
	for i := range n {
		d.Shares = append(d.Shares, load.Owner{
			Party: load.Party{ID: fmt.Sprint(i), Name: fmt.Sprint(i+1, " ", anyName(rt, "owner"))},
			Parts: quantity.Int(1, quantity.Plain), Of: quantity.Int(n, quantity.Plain),
		})
	}
	return d
}

func anyWeights(rt *rapid.T, s *Story, unit quantity.Unit, draft string) {
	tare := quantity.Int(20*rapid.Int64Range(400, 1500).Draw(rt, "tare"), unit)
	net := quantity.Int(20*rapid.Int64Range(1, 4000).Draw(rt, "net"), unit)
	source := rapid.SampledFrom([]load.WeightSource{load.FromScale, load.ByHand}).Draw(rt, "source")
	s.weighs(load.Weighing{Which: load.Gross, Draft: draft, Weight: tare.Add(net), Source: source, Scale: "North", Reason: anyName(rt, "reason")})
	if rapid.IntRange(0, 9).Draw(rt, "weighed empty") == 0 {
		return
	}
	s.weighs(load.Weighing{Which: load.Tare, Draft: draft, Weight: tare, Source: load.StoredTare, Scale: "North", Taken: quantity.MustDate("2026-09-02")})
}

func anySample(rt *rapid.T, e *rates.Edition) load.Sample {
	tenths := func(label string, low, high int64, unit quantity.Unit) *quantity.Amount {
		n := quantity.Int(rapid.Int64Range(low, high).Draw(rt, label), quantity.Plain)
		a := n.Mul(quantity.Of("0.1", unit))
		return &a
	}
	s := load.Sample{Number: "S-1", Tester: anyName(rt, "tester"), Kept: anyName(rt, "shelf")}
	if rapid.IntRange(0, 9).Draw(rt, "tested") > 0 {
		s.Moisture = &load.Moisture{Percent: *tenths("moisture", 90, 320, quantity.Percent), Method: "digital meter"}
	}
	for _, f := range e.Commodity.Factors {
		switch {
		case f.ID == grain.Moisture || rapid.IntRange(0, 2).Draw(rt, "found") == 0:
		case f.ID == grain.TestWeight:
			s.Findings = append(s.Findings, load.Finding{Factor: f.ID, Amount: tenths("test weight", 430, 640, f.Unit)})
		case f.YesNo:
			s.Findings = append(s.Findings, load.Finding{Factor: f.ID, Present: f.ID == grain.Musty})
		case f.Unit == quantity.Percent && !f.Max.Less(quantity.Int(20, quantity.Percent)):
			s.Findings = append(s.Findings, load.Finding{Factor: f.ID, Amount: tenths("percent", 0, 150, f.Unit)})
		}
	}
	return s
}
