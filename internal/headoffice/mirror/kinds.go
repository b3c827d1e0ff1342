package mirror

import (
	"bytes"
	"encoding/json"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/confirmation"
	"tenthpoint/internal/dispute"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/numbering"
	"tenthpoint/internal/office"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/published"
	"tenthpoint/internal/receipt"
	"tenthpoint/internal/scalehouse/intake"
	"tenthpoint/internal/shipment"
	"tenthpoint/internal/signing"
	"tenthpoint/internal/truckscale"
)

// readers say of each kind of fact, but those of loads, whether this program can read it.
var readers = map[string]func(journal.Fact) error{}

func init() {
	for _, known := range []reader{
		of[elevator.Profile](), of[elevator.Grower](), of[elevator.Truck](), of[elevator.Person](), of[elevator.Bin](),
		of[elevator.ContractTerms](), of[elevator.PostedPrice](), of[elevator.PIN](), of[elevator.OwnEdition](),
		of[truckscale.Zeroed](), of[truckscale.Weighed](), of[truckscale.Compared](), of[truckscale.Certificate](), of[truckscale.Service](),
		of[office.DayClosed](), of[office.DayExplained](), of[office.SampleDiscarded](), of[office.Bench](), of[office.MeterRecord](),
		of[bin.Movement](), of[paysheet.Sheet](), of[paysheet.Payment](), of[paysheet.Handover](), of[paysheet.Lien](), of[receipt.Receipt](), of[confirmation.Round](), of[shipment.Arrived](), of[opening.Opening](), of[intake.ListTaken](), of[published.Publication](), of[published.Received](), of[published.Following](), of[journal.ClockAnswered](), of[numbering.Passed](), of[numbering.Lost](), of[numbering.Pad](), of[numbering.Emergency](),
		of[dispute.Raised](), of[dispute.Sent](), of[dispute.Resulted](), of[dispute.Decided](),
		of[signing.HouseKey](), of[signing.Certificate](), of[signing.Ended](), of[signing.Signed](),
	} {
		readers[known.kind] = known.read
	}
	for kind, read := range readMeters {
		readers[kind] = func(f journal.Fact) error {
			d := json.NewDecoder(bytes.NewReader(f.Body))
			d.DisallowUnknownFields()
			return d.Decode(read())
		}
	}
}

// readMeters are the facts of meters, whose bodies do not know their kind.
var readMeters = map[string]func() any{
	office.MeterCheckKind:     func() any { return new(meter.Check) },
	office.MeterWithdrawnKind: func() any { return new(meter.Withdrawal) },
	office.MeterStartKind:     func() any { return new(meter.StartCheck) },
}

type reader struct {
	kind string
	read func(journal.Fact) error
}

// of is the reader of a kind of fact.
func of[F journal.Kinded]() reader {
	var f F
	return reader{f.Kind(), func(f journal.Fact) error {
		_, err := journal.ReadBody[F](f.Body)
		return err
	}}
}

// readable reports whether this program can read a fact.
func readable(f journal.Fact) bool {
	read, known := readers[f.Kind]
	return known && read(f) == nil
}
