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
	Sheet          string // SHA-256 of what the sheet was made of
}

// DayRegister lists the days closed in a period.
func DayRegister(p elevator.Profile, period Period, days []ClosedDay) report.Document {
	d := registerPaper(p, "Register of days closed", period, false)
	g := newGrid(own("Day"), own("Closed by"), own("At"), own("Remark"), own("SHA-256 of the sheet"))
	for _, c := range days {
		g.add(text(c.Day.String()), text(c.By), text(c.At), text(c.Remark), text(c.Sheet))
	}
	d.Blocks = []report.Block{g.table("No day of this period was closed.", "days")}
	return d
}
