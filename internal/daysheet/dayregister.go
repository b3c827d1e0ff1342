package daysheet

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// ClosedDay is the closing of a day as the register shows it.
type ClosedDay struct {
	Day            quantity.Date
	By, At, Remark string
	Sheet          string // SHA-256 of the sheet's input
}

// DayRegister lists the days closed in a period.
func DayRegister(p elevator.Profile, period Period, days []ClosedDay) report.Document {
	d := registerPaper(p, "Register of days closed", period, false)
	g := newGrid([]column[ClosedDay, none]{
		{own("Day"), func(c ClosedDay) cell { return text(c.Day.String()) }, nil, always},
		{own("Closed by"), func(c ClosedDay) cell { return text(c.By) }, nil, always},
		{own("At"), func(c ClosedDay) cell { return text(c.At) }, nil, always},
		{own("Remark"), func(c ClosedDay) cell { return text(c.Remark) }, nil, always},
		{own("SHA-256 of the sheet"), func(c ClosedDay) cell { return text(c.Sheet) }, nil, always},
	})
	for _, c := range days {
		g.add(c)
	}
	d.Blocks = []report.Block{g.table("No day of this period was closed.", "days")}
	return d
}
