package yard

import (
	"context"
	"strconv"

	"tenthpoint/internal/book"
	"tenthpoint/internal/load"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/session"
)

// scans open loads by the barcodes on labels.
type scans struct{ *Yard }

// openTruck opens the load of the truck whose label was put under a reader; of a truck that is not
// here, it begins one.
func (y scans) openTruck(code string) {
	truck, _ := scaleticket.TruckOf(code)
	y.Refresh()
	if l, here := session.Find(y.trucks, func(l *load.Load) bool { return l.Details.Truck.ID == truck }); here {
		y.Take(l.ID)
	} else {
		y.TakeNew()
		y.current.Type("truck", truck)
	}
	y.session.Go("yard")
	y.session.Window.Redraw()
}

// openSample opens the load whose sample has a number, and reports whether there is one: the barcode on
// a sample's label is its number, typed where the keyboard rests between two trucks. A load that has
// its ticket is shown among the tickets.
func (y scans) openSample(number string) bool {
	if _, known := y.session.Known().Grower(number); known || number == "" {
		return false
	}
	rows, err := y.session.Desk.Reader().Loads(context.Background(), book.LoadFilter{Sample: number, Newest: true, Limit: 1})
	switch {
	case err != nil || len(rows) == 0:
		return false
	case y.find(rows[0].ID) != nil:
		y.session.TakeUp(rows[0].ID)
	case rows[0].Ticket == 0:
		return false
	default:
		y.session.ShowTickets(strconv.FormatInt(rows[0].Ticket, 10))
	}
	return true
}
