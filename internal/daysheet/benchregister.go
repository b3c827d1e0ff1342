package daysheet

import (
	"fmt"

	"tenthpoint/internal/house"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// KeptSample is a retained sample as the register shows it.
type KeptSample struct {
	Number, Load, Grower, Commodity, Place, Held string
	Ticket                                       int64
	Taken, Until                                 quantity.Date
}

// SampleRegister lists the retained samples that are there on the last day of a
// period, and says of each until when it is kept.
func SampleRegister(p house.Profile, period Period, kept []KeptSample) report.Document {
	d := registerPaper(p, "Register of retained samples", period, false)
	d.About = "as of " + period.To.String()
	g := newGrid(own("Sample"), own("Load"), figure("Ticket"), own("Grower"), words("Commodity"), own("Where"), own("Taken"), own("Kept through"), words("State"))
	due := 0
	for _, k := range kept {
		state := "kept"
		switch {
		case k.Held != "":
			state = "held for " + k.Held
		case k.Until.Before(period.To):
			state, due = "may go", due+1
		}
		g.add(text(k.Number), text(k.Load), number(k.Ticket), text(k.Grower), text(k.Commodity), text(k.Place), text(k.Taken.String()), text(k.Until.String()), text(state))
	}
	d.Blocks = []report.Block{report.Para{Text: fmt.Sprintf("Samples kept: %d. Kept long enough to go: %d.", len(kept), due)}, g.table("No retained sample is there.", "samples")}
	return d
}

// MeterRecord is one meter with its checks of a period and how it stood at its
// end.
type MeterRecord struct {
	Meter    meter.Meter
	Checks   []meter.Check
	Standing meter.Status
}

// MeterRegister lists every check of every meter in a period.
func MeterRegister(p house.Profile, period Period, meters []MeterRecord) report.Document {
	d := registerPaper(p, "Register of meter checks", period, false)
	if len(meters) == 0 {
		d.Blocks = append(d.Blocks, report.Para{Text: "No moisture meter is written down at this elevator."})
	}
	g := newGrid(own("Day"), own("Meter"), own("Calibration"), words("Grain"), own("Reference"), figure("Oven %"), figure("Meter %"), figure("Error pt"), own("Read by"))
	for _, m := range meters {
		d.Blocks = append(d.Blocks, report.Para{Text: m.Standing.Sentence})
		for _, c := range m.Checks {
			g.add(text(c.Day.String()), text(c.Meter), text(c.Calibration), text(c.Crop), text(c.Name), amount(c.Reference.In(quantity.Percent)),
				amount(c.Reading.In(quantity.Percent)), amount(c.Error()), text(c.By))
		}
	}
	d.Blocks = append(d.Blocks, g.table("No reference sample was read in this period.", "checks"))
	return d
}
