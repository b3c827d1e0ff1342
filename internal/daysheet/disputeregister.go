package daysheet

import (
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/report"
)

// DisputeRegister lists the disputes raised in a period.
func DisputeRegister(p elevator.Profile, period Period, disputes []dispute.Dispute) report.Document {
	d := registerPaper(p, message.New("Register of disputes"), period, false)
	g := newGrid([]column[dispute.Dispute, none]{
		{wordsColumn("Dispute"), func(o dispute.Dispute) cell { return name(o.ID) }, nil, always},
		{figureColumn("Ticket"), func(o dispute.Dispute) cell { return number(o.Raised.Ticket) }, nil, always},
		{wordsColumn("Raised"), func(o dispute.Dispute) cell { return date(o.Raised.Day) }, nil, always},
		{wordsColumn("By"), func(o dispute.Dispute) cell { return name(o.Raised.By) }, nil, always},
		{wordsColumn("About"), func(o dispute.Dispute) cell { return said(o.Raised.About) }, nil, always},
		{wordsColumn("Claim"), func(o dispute.Dispute) cell { return name(o.Raised.Claim) }, nil, always},
		{wordsColumn("Deadline"), func(o dispute.Dispute) cell { return date(o.Raised.Due) }, nil, always},
		{wordsColumn("Status"), func(o dispute.Dispute) cell { return said(string(o.Phase)) }, nil, always},
		{wordsColumn("Outcome"), func(o dispute.Dispute) cell { return text(outcomeOf(o)) }, nil, always},
	})
	for _, one := range disputes {
		g.add(one)
	}
	d.Blocks = []report.Block{g.table(message.New("disputes"), message.New("No dispute was raised."))}
	return d
}

// outcomeOf returns the decision of a dispute; empty while it is open.
func outcomeOf(o dispute.Dispute) message.Text {
	if o.Decided == nil {
		return message.Text{}
	}
	return message.Names(": ", []string{o.Decided.Day.String(), o.Decided.Decision})
}
