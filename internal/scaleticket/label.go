package scaleticket

import (
	"image"
	"strings"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/scaleticket/barcode"
)

// Label is the text on the bag or can of a retained sample: enough to find it on its shelf, and the
// day it may be discarded.
type Label struct {
	Title    string // "Retained sample"
	Business string
	Number   string // the sample's number, also as a barcode
	Until    string // until when it is kept
	Mark     string // EXAMPLE - NOT FOR TRADE, or nothing
	// Lines say what the sample is of and where it is kept.
	Lines []string

	Made time.Time   // the date of the paper
	Bars image.Image // the number as a barcode, one pixel to a module
}

// SampleLabel makes the label of a ticket's sample. A sample without a number,
// or with one that no barcode holds, has none.
func SampleLabel(ticket Ticket) (Label, error) {
	t := factsOf(ticket)
	s := t.l.Sample
	bars, err := barcode.Code128(s.Number)
	if err != nil {
		return Label{}, err
	}
	l := Label{
		Title: t.w.SampleLabel, Business: t.House.Business, Number: strings.TrimSpace(s.Number),
		Until: t.w.NoDiscard, Made: made(t), Bars: bars,
		Lines: []string{labelOf(t), labelFrom(t)},
	}
	if !s.Until.IsZero() {
		l.Until = t.w.Discard + " " + t.date(s.Until)
	}
	if t.isExample() {
		l.Mark = t.w.MarkExample
	}
	return l, nil
}

// labelOf describes the grain of the sample.
func labelOf(t *facts) string {
	moisture := t.w.NotTested
	if t.l.Sample.Moisture != nil {
		moisture = moistureFigure(t)
	}
	return Joined(", ", commodityName(t), t.w.Moisture+" "+moisture, t.l.Sample.Kept)
}

// labelFrom describes the load it is from.
func labelFrom(t *facts) string {
	_, label := t.called()
	return Joined(", ", label+" "+t.ticketNumber(), t.l.Details.Grower.Name, t.date(t.l.Details.Day))
}

// TruckMark begins the barcode on a truck's label, so that a reader that types it is told from a person
// who types the truck's number.
const TruckMark = "TPT:"

// TruckLabel makes the label that is stuck to a truck's windshield, with its number large and as a
// barcode, in the language of its house. The owner is the name of the grower it belongs to, or empty.
// A number that no barcode holds is refused.
func TruckLabel(house elevator.Profile, truck elevator.Truck, owner string, made time.Time) (Label, error) {
	bars, err := barcode.Code128(TruckMark + truck.ID)
	if err != nil {
		return Label{}, err
	}
	w := WordsIn(house.Language)
	l := Label{Title: w.Truck, Business: house.Business, Number: truck.ID, Until: truck.Plate, Made: made, Bars: bars}
	if of := Joined(", ", owner, truck.Trailer); of != "" {
		l.Lines = []string{of}
	}
	if house.Demo {
		l.Mark = w.MarkExample
	}
	return l, nil
}

// TruckOf is the truck of a barcode on a label; is tells whether it is one.
func TruckOf(code string) (truck string, is bool) {
	truck, is = strings.CutPrefix(strings.TrimSpace(code), TruckMark)
	return truck, is && truck != ""
}
