// Package emergency answers about the pads of printed tickets that are written on while the power is out,
// and makes the pads.
package emergency

import (
	"context"
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// Account is every pad and every ticket of them that is accounted for, by number; Skipped are those that
// are not, though a later one of the pad is.
type Account struct {
	Pads    []numbering.Pad
	Used    []numbering.Emergency
	Skipped []int64
}

// Read is the account as the book has it.
func Read(ctx context.Context, d office.Desk) (a Account, err error) {
	if a.Pads, err = office.RecordsOf[numbering.Pad](ctx, d.Reader()); err != nil {
		return a, err
	}
	if a.Used, err = office.RecordsOf[numbering.Emergency](ctx, d.Reader()); err != nil {
		return a, err
	}
	slices.SortFunc(a.Used, func(a, b numbering.Emergency) int { return int(a.Number - b.Number) })
	a.Skipped = numbering.Skipped(a.Pads, a.Used)
	return a, nil
}

// mostPrinted is the most emergency tickets in one file.
const mostPrinted = 200

// Slips are blank emergency tickets of some numbers, to be printed and written on by hand.
func Slips(house elevator.Profile, first, last int64, day quantity.Date) (report.Document, error) {
	if first < 1 || last < first || last-first >= mostPrinted {
		return report.Document{}, message.Invalid.Errorf("%d emergency tickets are printed at once at most; got %d to %d", mostPrinted, first, last)
	}
	d := report.Of(house, day)
	d.Title, d.About = message.New("Emergency tickets"), message.New("numbers %d to %d", first, last)
	for n := first; n <= last; n++ {
		if n > first {
			d.Blocks = append(d.Blocks, report.NewPage{})
		}
		d.Blocks = append(d.Blocks,
			report.Heading{Text: message.New("Emergency ticket %s", elevator.Lettered(house.Letters, n))},
			report.Para{Text: message.New("Weigh, write every figure with its unit, and sign. Nothing is settled on this paper: it is entered in the book when the power is back, and the ticket of the book names this number.")},
			report.Para{Text: message.New("See the deck clear of trucks and people before weighing. Nobody climbs on a load.")},
			report.Signing{Names: []message.Text{
				message.New("Day and hour"), message.New("Grower"), message.New("Grain"), message.New("Truck and trailer"), message.New("Gross, and scale"), message.New("Tare, and scale"),
				message.New("Moisture, test weight, other results"), message.New("Pit or bin"), message.New("Sold or stored"), message.New("Weigher, full name and signature"), message.New("Driver"),
			}})
	}
	d.Footer = message.New("A spoiled paper is kept, and declared spoiled in the book.")
	return d, nil
}
