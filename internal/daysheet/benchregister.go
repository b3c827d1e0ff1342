package daysheet

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
)

// KeptSample is a retained sample as the register shows it.
type KeptSample struct {
	Number, Load, Grower, Commodity, Place string
	Held                                   message.Text // what it is held for, beyond its day
	Ticket                                 int64
	Taken, Until                           quantity.Date
}

// SampleRegister lists the retained samples on the last day of a period, with the day each may be
// discarded.
func SampleRegister(p elevator.Profile, period Period, kept []KeptSample) report.Document {
	d := registerPaper(p, message.New("Register of retained samples"), period, false)
	d.About = message.New("as of %s", period.To)
	g := newGrid([]column[KeptSample, none]{
		{wordsColumn("Sample"), func(k KeptSample) cell { return name(k.Number) }, nil, always},
		{wordsColumn("Load"), func(k KeptSample) cell { return name(k.Load) }, nil, always},
		{figureColumn("Ticket"), func(k KeptSample) cell { return number(k.Ticket) }, nil, always},
		{wordsColumn("Grower"), func(k KeptSample) cell { return name(k.Grower) }, nil, always},
		{wordsColumn("Commodity"), func(k KeptSample) cell { return said(k.Commodity) }, nil, always},
		{wordsColumn("Where"), func(k KeptSample) cell { return name(k.Place) }, nil, always},
		{wordsColumn("Taken"), func(k KeptSample) cell { return date(k.Taken) }, nil, always},
		{wordsColumn("Kept through"), func(k KeptSample) cell { return date(k.Until) }, nil, always},
		{wordsColumn("State"), func(k KeptSample) cell { return text(k.state(period)) }, nil, always},
	})
	due := 0
	for _, k := range kept {
		if k.isDue(period) {
			due++
		}
		g.add(k)
	}
	d.Blocks = []report.Block{report.Para{Text: message.New("Samples kept: %d. Kept long enough to go: %d.", len(kept), due)}, g.table(message.New("samples"), message.New("No retained sample is there."))}
	return d
}

// isDue reports whether a sample was kept long enough by the end of a period.
func (k KeptSample) isDue(period Period) bool { return k.Held.IsZero() && k.Until.Before(period.To) }

func (k KeptSample) state(period Period) message.Text {
	switch {
	case !k.Held.IsZero():
		return message.New("held for %s", k.Held)
	case k.isDue(period):
		return message.New("discard due")
	}
	return message.New("kept")
}

// MeterRecord is one meter with its checks of a period and its status at the end.
type MeterRecord struct {
	Meter    meter.Meter
	Checks   []meter.Check
	Standing meter.Status
}

// MeterRegister lists every check of every meter in a period.
func MeterRegister(p elevator.Profile, period Period, meters []MeterRecord) report.Document {
	d := registerPaper(p, message.New("Register of meter checks"), period, false)
	if len(meters) == 0 {
		d.Blocks = append(d.Blocks, report.Para{Text: message.New("No moisture meter is written down at this elevator.")})
	}
	g := newGrid([]column[meter.Check, none]{
		{wordsColumn("Day"), func(c meter.Check) cell { return date(c.Day) }, nil, always},
		{wordsColumn("Meter"), func(c meter.Check) cell { return name(c.Meter) }, nil, always},
		{wordsColumn("Calibration"), func(c meter.Check) cell { return name(c.Calibration) }, nil, always},
		{wordsColumn("Grain"), func(c meter.Check) cell { return said(c.Crop) }, nil, always},
		{wordsColumn("Reference"), func(c meter.Check) cell { return name(c.Name) }, nil, always},
		{unitColumn("Oven", quantity.Percent), func(c meter.Check) cell { return amount(c.Reference.In(quantity.Percent)) }, nil, always},
		{unitColumn("Meter", quantity.Percent), func(c meter.Check) cell { return amount(c.Reading.In(quantity.Percent)) }, nil, always},
		{unitColumn("Error", quantity.Point), func(c meter.Check) cell { return amount(c.Error()) }, nil, always},
		{wordsColumn("Read by"), func(c meter.Check) cell { return name(c.By) }, nil, always},
	})
	for _, m := range meters {
		d.Blocks = append(d.Blocks, report.Para{Text: m.Standing.Sentence})
		for _, c := range m.Checks {
			g.add(c)
		}
	}
	d.Blocks = append(d.Blocks, g.table(message.New("checks"), message.New("No reference sample was read in this period.")))
	return d
}
