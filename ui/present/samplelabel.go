package present

import (
	"bytes"
	"context"

	"tenthpoint/internal/load"
	"tenthpoint/internal/slip"
	"tenthpoint/ui/model"
)

// CanPrintLabel reports whether the sample in hand has a number in the book.
func (b *Bench) CanPrintLabel() bool { return b.hand.load != nil && b.hand.load.Sample.Number != "" }

// PrintLabel prints the label for the can of the sample in hand.
func (b *Bench) PrintLabel() { b.frame.PrintLabel(b.hand.load) }

// PrintLabel prints the label of a load's sample.
func (f *Frame) PrintLabel(l *load.Load) {
	t := f.ticket(l, nil, slip.Draft, nil)
	label, err := slip.SampleLabel(t)
	if err != nil {
		f.Fail(err)
		return
	}
	var pdf bytes.Buffer
	if err := label.PDF(&pdf); err != nil {
		f.Fail(err)
		return
	}
	f.printPaper("label-"+label.Number, Say("the label of sample %s", label.Number), pdf.Bytes())
}

// printPaper prints a paper that is no ticket, and says where it went.
func (f *Frame) printPaper(name, what string, pdf []byte) {
	if f.Printer == nil {
		f.Say(model.Warn, Say("no printer is set up. Choose one under Gear."))
		return
	}
	where := ""
	f.Run(model.Job{
		Topic: "print " + name, Title: Say("Printing %s", what),
		Do: func(ctx context.Context, _ func(int, int)) (err error) {
			where, err = f.Printer.Print(ctx, name, pdf)
			return err
		},
		Done: func(err error) {
			if err != nil {
				f.Say(model.Warn, Say("%s was not printed: %s", what, sentence(err)))
				return
			}
			f.Say(model.OK, Say("%s is printed: %s", what, where))
		},
	})
}
