package lab

import (
	"bytes"

	"tenthpoint/internal/load"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/sheet"
	"tenthpoint/ui/session"
)

// CanPrintLabel reports whether the sample in hand has a number in the book.
func (b *Bench) CanPrintLabel() bool { return b.hand.load != nil && b.hand.load.Sample.Number != "" }

// PrintLabel prints the label for the can of the sample in hand.
func (b *Bench) PrintLabel() { PrintLabel(b.session, b.hand.load) }

// PrintLabel prints the label of a load's sample.
func PrintLabel(f *session.Session, l *load.Load) {
	t := session.TicketOf(f, l, nil, scaleticket.Draft, nil)
	label, err := scaleticket.SampleLabel(t)
	if err != nil {
		f.Fail(err)
		return
	}
	var pdf bytes.Buffer
	if err := sheet.Label(&pdf, label); err != nil {
		f.Fail(err)
		return
	}
	session.PrintPaper(f, "label-"+label.Number, session.Say("the label of sample %s", label.Number), pdf.Bytes())
}
