package daysheet

import (
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
)

// The position of an evening knows what is there and nothing of the day: its totals
// add up that alone.
func TestPositionOfAnEvening(t *testing.T) {
	tonight := []Move{
		{Name: "Corn", Bin: "B1", After: quantity.Int(5_600, quantity.Lb)},
		{Name: "Corn", Bin: "B2", After: quantity.Int(11_200, quantity.Lb)},
	}
	period := Period{quantity.MustDate("2026-10-01"), quantity.MustDate("2026-10-02")}
	d := ComposePosition(elevator.Profile{Business: "Example"}, period, tonight, nil, false)
	table, found := d.Table("tonight lb")
	if !found || len(table.Rows) != 3 {
		t.Fatalf("found %v, rows %v", found, table.Rows)
	}
	if total := table.Rows[2].Cells; total[0].String() != "All Corn" || total[2].String() != "16,800" {
		t.Errorf("the total says %q", total)
	}
}
