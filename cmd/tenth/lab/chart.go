package lab

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/quantity"
)

// wanted is a search for a chart; empty fields do not restrict.
type wanted struct {
	crop, meter, calibration string
	mass                     quantity.Amount
	day                      quantity.Date
}

// chartFor finds the only chart that fits. Two charts of a meter may differ only in the mass of the
// sample, so none is guessed.
func chartFor(set *chart.Set, w wanted) (*chart.Chart, error) {
	var fit []*chart.Chart
	for _, c := range set.All() {
		if c.Crop == w.crop && c.InForce(w.day) && (w.meter == "" || c.Meter == w.meter) && (w.calibration == "" || c.Calibration == w.calibration) &&
			(w.mass.Unit() == quantity.Plain || c.Mass.Equal(w.mass)) {
			fit = append(fit, c)
		}
	}
	switch len(fit) {
	case 1:
		return fit[0], nil
	case 0:
		return nil, terminal.Refusal("Look with \"tenth bench charts list\", or put the meter's chart into the folder of charts", "no chart is in force for %s", w)
	}
	var names []string
	for _, c := range fit {
		names = append(names, c.ID+" ("+c.Mass.String()+", "+c.Meter+")")
	}
	return nil, terminal.Refusal("Name one with --chart: "+strings.Join(names, ", "), "%d charts are in force for %s", len(fit), w)
}

// String returns the search in words.
func (w wanted) String() string {
	text := w.crop
	if w.mass.Unit() != quantity.Plain {
		text += ", " + w.mass.String()
	}
	if w.meter != "" {
		text += " on " + w.meter
	}
	if w.calibration != "" {
		text += ", calibration " + w.calibration
	}
	return text + " on " + w.day.String()
}
