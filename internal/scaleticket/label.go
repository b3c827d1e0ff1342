package scaleticket

import (
	"image"
	"strings"
	"time"

	"tenthpoint/internal/scaleticket/barcode"
)

// Label is what goes on the bag or can of a retained sample: enough to find it
// on its shelf, and to know when it may go.
type Label struct {
	Title    string // "Retained sample"
	Business string
	Number   string // the sample's number, also as a barcode
	Until    string // until when it is kept
	Mark     string // EXAMPLE - NOT FOR TRADE, or nothing
	// Lines are what the sample is of and where it is kept.
	Lines []string

	Made time.Time   // the date of the paper
	Bars image.Image // the number as a barcode, one pixel to a module
}

// SampleLabel makes the label of a ticket's sample. A sample without a number,
// or with one that no barcode holds, has none.
func SampleLabel(t Ticket) (Label, error) {
	t.fillIn()
	c := &composer{Ticket: t, w: t.Words, l: t.Load, s: t.Settlement}
	s := t.Load.Sample
	bars, err := barcode.Code128(s.Number)
	if err != nil {
		return Label{}, err
	}
	l := Label{
		Title: c.w.SampleLabel, Business: t.House.Business, Number: strings.TrimSpace(s.Number),
		Until: c.w.NoDiscard, Made: c.made(), Bars: bars,
		Lines: []string{c.labelOf(), c.labelFrom()},
	}
	if !s.Until.IsZero() {
		l.Until = c.w.Discard + " " + c.date(s.Until)
	}
	if c.isExample() {
		l.Mark = c.w.MarkExample
	}
	return l, nil
}

// labelOf says what the sample is of.
func (c *composer) labelOf() string {
	moisture := c.w.NotTested
	if c.l.Sample.Moisture != nil {
		moisture = c.moistureFigure()
	}
	return Joined(", ", c.commodity(), c.w.Moisture+" "+moisture, c.l.Sample.Kept)
}

// labelFrom says which load it is from.
func (c *composer) labelFrom() string {
	return Joined(", ", c.w.Ticket+" "+c.ticketNumber(), c.l.Details.Grower.Name, c.date(c.l.Details.Day))
}
