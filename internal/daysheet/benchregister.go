package daysheet

import (
	"fmt"

	"tenthpoint/internal/elevator"
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

// SampleRegister lists the retained samples on the last day of a period, with the day each may be
// discarded.
func SampleRegister(p elevator.Profile, period Period, kept []KeptSample) report.Document {
	d := registerPaper(p, "Register of retained samples", period, false)
	d.About = "as of " + period.To.String()
	g := newGrid([]column[KeptSample, none]{
		{own("Sample"), func(k KeptSample) cell { return text(k.Number) }, nil, always},
		{own("Load"), func(k KeptSample) cell { return text(k.Load) }, nil, always},
		{figure("Ticket"), func(k KeptSample) cell { return number(k.Ticket) }, nil, always},
		{own("Grower"), func(k KeptSample) cell { return text(k.Grower) }, nil, always},
		{words("Commodity"), func(k KeptSample) cell { return text(k.Commodity) }, nil, always},
		{own("Where"), func(k KeptSample) cell { return text(k.Place) }, nil, always},
		{own("Taken"), func(k KeptSample) cell { return text(k.Taken.String()) }, nil, always},
		{own("Kept through"), func(k KeptSample) cell { return text(k.Until.String()) }, nil, always},
		{words("State"), func(k KeptSample) cell { return text(k.state(period)) }, nil, always},
	})
	due := 0
	for _, k := range kept {
		if k.isDue(period) {
			due++
		}
		g.add(k)
	}
	d.Blocks = []report.Block{report.Para{Text: fmt.Sprintf("Samples kept: %d. Kept long enough to go: %d.", len(kept), due)}, g.table("No retained sample is there.", "samples")}
	return d
}

// isDue reports whether a sample was kept long enough by the end of a period.
func (k KeptSample) isDue(period Period) bool { return k.Held == "" && k.Until.Before(period.To) }

func (k KeptSample) state(period Period) string {
	switch {
	case k.Held != "":
		return "held for " + k.Held
	case k.isDue(period):
		return "may go"
	}
	return "kept"
}

// MeterRecord is one meter with its checks of a period and its status at the end.
type MeterRecord struct {
	Meter    meter.Meter
	Checks   []meter.Check
	Standing meter.Status
}

// MeterRegister lists every check of every meter in a period.
func MeterRegister(p elevator.Profile, period Period, meters []MeterRecord) report.Document {
	d := registerPaper(p, "Register of meter checks", period, false)
	if len(meters) == 0 {
		d.Blocks = append(d.Blocks, report.Para{Text: "No moisture meter is written down at this elevator."})
	}
	g := newGrid([]column[meter.Check, none]{
		{own("Day"), func(c meter.Check) cell { return text(c.Day.String()) }, nil, always},
		{own("Meter"), func(c meter.Check) cell { return text(c.Meter) }, nil, always},
		{own("Calibration"), func(c meter.Check) cell { return text(c.Calibration) }, nil, always},
		{words("Grain"), func(c meter.Check) cell { return text(c.Crop) }, nil, always},
		{own("Reference"), func(c meter.Check) cell { return text(c.Name) }, nil, always},
		{figure("Oven %"), func(c meter.Check) cell { return amount(c.Reference.In(quantity.Percent)) }, nil, always},
		{figure("Meter %"), func(c meter.Check) cell { return amount(c.Reading.In(quantity.Percent)) }, nil, always},
		{figure("Error pt"), func(c meter.Check) cell { return amount(c.Error()) }, nil, always},
		{own("Read by"), func(c meter.Check) cell { return text(c.By) }, nil, always},
	})
	for _, m := range meters {
		d.Blocks = append(d.Blocks, report.Para{Text: m.Standing.Sentence})
		for _, c := range m.Checks {
			g.add(c)
		}
	}
	d.Blocks = append(d.Blocks, g.table("No reference sample was read in this period.", "checks"))
	return d
}
