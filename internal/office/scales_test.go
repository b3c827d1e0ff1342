package office_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/scalehouse/instruments"
	"tenthpoint/internal/truckscale"
)

// The state of a scale is on the sheet of the day, as it was that day.
func TestScaleStateOnTheDaySheet(t *testing.T) {
	s := housetest.New(t).As(housetest.Manager)
	must(t, instruments.LogScale(ctx, s.Desk, "1", truckscale.Certificate{Number: "C-118", Until: quantity.MustDate("2027-05-03"), Seals: "40117"}))
	must(t, instruments.LogScale(ctx, s.Desk, "1", truckscale.Weighed{Known: housetest.Lb(20_000), Shown: housetest.Lb(20_020), Weights: "20 test weights"}))
	must(t, instruments.LogScale(ctx, s.Desk, "1", truckscale.Zeroed{Shown: housetest.Lb(0)}))
	must(t, scalehouse.CloseDay(ctx, s.Desk, s.Today(), ""))
	must(t, instruments.LogScale(ctx, s.Desk, "1", truckscale.Service{Out: true, Reason: "struck by lightning"}))
	sheet, err := office.DaySheet(ctx, s.Desk, s.Today())
	must(t, err)
	notes := message.Texts("\n", sheet.Notes.Scales).String()
	for _, want := range []string{"C-118", "2027-05-03", "40117", "20,020 lb"} {
		if !strings.Contains(notes, want) {
			t.Errorf("the sheet says nothing of %s: %s", want, notes)
		}
	}
	if strings.Contains(notes, "lightning") || sheet.Closed.Differs {
		t.Errorf("what came later changed the sheet: %s, differs %v", notes, sheet.Closed.Differs)
	}
	text := s.DayPaper(s.Today()).Text(100)
	if !strings.Contains(text, "Truck scales") || !strings.Contains(text, "C-118") {
		t.Errorf("the paper lacks the scales:\n%s", text)
	}
}
