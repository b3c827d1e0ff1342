package daysheet

import (
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/report"
)

// DisputeRegister lists the disputes raised in a period.
func DisputeRegister(p elevator.Profile, period Period, disputes []dispute.Dispute) report.Document {
	d := registerPaper(p, "Register of disputes", period, false)
	g := newGrid([]column[dispute.Dispute, none]{
		{own("Dispute"), func(o dispute.Dispute) cell { return text(o.ID) }, nil, always},
		{figure("Ticket"), func(o dispute.Dispute) cell { return number(o.Raised.Ticket) }, nil, always},
		{own("Raised"), func(o dispute.Dispute) cell { return text(o.Raised.Day.String()) }, nil, always},
		{own("By"), func(o dispute.Dispute) cell { return text(o.Raised.By) }, nil, always},
		{words("About"), func(o dispute.Dispute) cell { return text(o.Raised.About) }, nil, always},
		{own("Claim"), func(o dispute.Dispute) cell { return text(o.Raised.Claim) }, nil, always},
		{own("Ask by"), func(o dispute.Dispute) cell { return text(o.Raised.Due.String()) }, nil, always},
		{words("Phase"), func(o dispute.Dispute) cell { return text(string(o.Phase)) }, nil, always},
		{words("Outcome"), func(o dispute.Dispute) cell { return text(outcomeOf(o)) }, nil, always},
	})
	for _, one := range disputes {
		g.add(one)
	}
	d.Blocks = []report.Block{g.table("No dispute was raised.", "disputes")}
	return d
}

// outcomeOf returns the decision of a dispute; empty while it is open.
func outcomeOf(o dispute.Dispute) string {
	if o.Decided == nil {
		return ""
	}
	return joined(": ", o.Decided.Day.String(), o.Decided.Decision)
}
