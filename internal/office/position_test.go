package office_test

import (
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

func TestPositionPaper(t *testing.T) {
	s := housetest.Workday(t)
	s.At("2026-10-02 14:00")
	must(t, scalehouse.Void(ctx, s.Desk, 1, "paid twice"))
	s.As(housetest.Clerk).Leave("Pit 2", 20000)
	s.At("2026-10-05 09:00")
	s.Ticket()
	doc, err := office.PositionPaper(ctx, s.Desk, housetest.Oct1, quantity.MustDate("2026-10-31"))
	must(t, err)
	housetest.Golden(t, "position.txt", doc.Text(100))
	// In every place each day begins with what the day before ended with.
	table, _ := doc.Table("days lb")
	for i, r := range table.Rows {
		if i > 0 && table.Rows[i-1].Cells[1].Equal(r.Cells[1]) && !table.Rows[i-1].Cells[7].Equal(r.Cells[3]) {
			t.Errorf("%v does not follow %v", r.Cells, table.Rows[i-1].Cells)
		}
	}
	if len(table.Rows) != 4 {
		t.Errorf("%d days", len(table.Rows))
	}
	_, err = office.PositionPaper(ctx, s.Desk, housetest.Oct2, housetest.Oct1)
	refused(t, err, errortest.Invalid())
}
