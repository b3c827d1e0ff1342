package shelf

import (
	"tenthpoint/internal/load"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/session"
)

// PrintLabel prints the label for the container of a load's sample.
func PrintLabel(f *session.Session, l *load.Load) {
	t := session.TicketOf(f, l, nil, scaleticket.Draft, nil)
	label, err := scaleticket.SampleLabel(t)
	if err != nil {
		f.Fail(err)
		return
	}
	session.PrintLabel(f, label, "label-"+label.Number, f.Say("the label of sample %s", label.Number))
}
