package daysheet

import (
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/report"
)

// DisputeRegister lists the disputes raised in a period.
func DisputeRegister(p elevator.Profile, period Period, disputes []dispute.Dispute) report.Document {
	d := registerPaper(p, "Register of disputes", period, false)
	g := newGrid(own("Dispute"), figure("Ticket"), own("Raised"), own("By"), words("About"), own("Claim"), own("Ask by"), words("Phase"), words("Outcome"))
	for _, one := range disputes {
		outcome := ""
		if e := one.Decided; e != nil {
			outcome = joined(": ", e.Day.String(), e.Decision)
		}
		g.add(text(one.ID), number(one.Raised.Ticket), text(one.Raised.Day.String()), text(one.Raised.By), text(one.Raised.About), text(one.Raised.Claim),
			text(one.Raised.Due.String()), text(string(one.Phase)), text(outcome))
	}
	d.Blocks = []report.Block{g.table("No dispute was raised.", "disputes")}
	return d
}
