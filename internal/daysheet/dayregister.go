package daysheet

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
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
	d := registerPaper(p, message.New("Register of days closed"), period, false)
	g := newGrid([]column[ClosedDay, none]{
		{wordsColumn("Day"), func(c ClosedDay) cell { return date(c.Day) }, nil, always},
		{wordsColumn("Closed by"), func(c ClosedDay) cell { return name(c.By) }, nil, always},
		{wordsColumn("At"), func(c ClosedDay) cell { return name(c.At) }, nil, always},
		{wordsColumn("Remark"), func(c ClosedDay) cell { return name(c.Remark) }, nil, always},
		{wordsColumn("SHA-256 of the sheet"), func(c ClosedDay) cell { return name(c.Sheet) }, nil, always},
	})
	for _, c := range days {
		g.add(c)
	}
	d.Blocks = []report.Block{g.table(message.New("days"), message.New("No day of this period was closed."))}
	return d
}
