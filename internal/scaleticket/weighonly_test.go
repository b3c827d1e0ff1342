package scaleticket_test

import (
	"io"
	"testing"

	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/tickettest"
)

// Grain that leaves under no rates lacks no test, nothing of it is still to
// come, and its working is its weights.
func TestWeighedOnlySlip(t *testing.T) {
	for _, tested := range []bool{false, true} {
		d := tickettest.CornDetails()
		d.Direction, d.Consignee = load.Outbound, "Example River Mill"
		s := tickettest.Tell(t, d).Truck(tickettest.Lb(78_000), tickettest.Lb(27_600))
		if tested {
			s.Samples(load.Sample{Moisture: &load.Moisture{Percent: tickettest.Of("14.2 %")}})
		}
		w, err := settle.Current.WeighOnly(s.Load().SettleFacts().Drafts, settle.Outbound{
			Place: quantity.Unrounded, Bushel: tickettest.Of("56 lb/bu"), BushelSource: "Iowa Code 210.10", Bushels: quantity.To("0.01", quantity.HalfUp),
		})
		if err != nil {
			t.Fatal(err)
		}
		doc := scaleticket.Compose(scaleticket.Ticket{House: tickettest.ExampleElevator(), Load: s.Load(), Copy: scaleticket.Draft, Settlement: &settle.Settlement{
			Sheet: w.Sheet, Gross: w.Gross, Tare: w.Tare, Net: w.Net, Bushels: w.Bushels,
		}})
		if l := line(t, doc, "figures", "Bushels by legal weight"); l.Value != "900.00 bu" { // 50,400 / 56
			t.Errorf("the bushels are %q", l.Value)
		}
		if l := line(t, doc, "settlement", "Rates"); l.Value != "weighed only, under no rates" || l.Missing {
			t.Errorf("the rates are %+v", l)
		}
		line(t, doc, "working", "Bushel weight")
		if l := line(t, doc, "quality", "Moisture"); (l.Value == "14.2 %") != tested || l.Missing {
			t.Errorf("tested %v: moisture is %+v", tested, l)
		}
		for _, section := range doc.Sections {
			for _, l := range section.Lines {
				if l.Value == "when settled" || l.Value == "price not set" {
					t.Errorf("%s, %s is %q", section.ID, l.Label, l.Value)
				}
			}
		}
		if err := sheet.PDF(io.Discard, doc, sheet.A5, sheet.Options{}); err != nil {
			t.Error(err)
		}
	}
}
