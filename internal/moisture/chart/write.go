package chart

import (
	"bytes"
	"encoding/csv"

	"tenthpoint/internal/quantity"
)

// Lines writes the chart as comma-separated values, so that it can be opened in a spreadsheet,
// compared with the printed chart and read again. Its text and hash differ then; its content is the
// same.
func (c *Chart) Lines() []byte {
	w := &lineWriter{}
	w.csv = csv.NewWriter(&w.text)
	w.head(c)
	w.cells(c)
	if k := c.testWeight; k != nil {
		w.line(testWeightHeading+" "+k.weights[0].Unit().String(), "add "+quantity.Point.String())
		for i, weight := range k.weights {
			w.line(bare(weight), bare(k.adds[i]))
		}
	}
	w.csv.Flush()
	return w.text.Bytes()
}

// lineWriter writes into memory, which never fails.
type lineWriter struct {
	text bytes.Buffer
	csv  *csv.Writer
}

func (w *lineWriter) line(fields ...string) { _ = w.csv.Write(fields) }

// given leaves out empty values.
func (w *lineWriter) given(table, key, value string) {
	if value != "" {
		w.line(table, key, value)
	}
}

func (w *lineWriter) head(c *Chart) {
	for _, k := range [][2]string{
		{"id", c.ID}, {"title", c.Title}, {"example", yes(c.Example)}, {"crop", c.Crop},
		{"meter", c.Meter}, {"calibration", c.Calibration}, {"from", c.From.String()}, {"until", c.Until.String()},
		{"mass", c.Mass.Written()}, {"max_meter_to_grain", c.MaxDifference.Written()}, {"uneven_steps", c.uneven},
	} {
		w.given("chart", k[0], k[1])
	}
	w.span("moisture", c.Moisture)
	w.span("ambient", c.Ambient)
	w.given("origin", "issued", c.Origin.Issued.String())
	w.given("origin", "by", c.Origin.By)
	w.given("origin", "document", c.Origin.Document)
	w.given("origin", "note", c.Origin.Note)
}

func yes(b bool) string {
	if b {
		return "true"
	}
	return "false"
}

func (w *lineWriter) span(table string, s quantity.Span) {
	w.line(table, "low", s.Low.Written())
	w.line(table, "high", s.High.Written())
}

func (w *lineWriter) cells(c *Chart) {
	heading := []string{"dial"}
	for _, t := range c.temperatures {
		heading = append(heading, t.Written())
	}
	w.line(heading...)
	for i, dial := range c.dials {
		row := []string{bare(dial)}
		for _, m := range c.cells[i] {
			row = append(row, bare(m))
		}
		w.line(row...)
	}
}

// bare is a figure as it was written, without its unit.
func bare(a quantity.Amount) string { return a.In(quantity.Plain).Written() }
