package chart

import (
	"slices"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Read reads one chart file, TOML or comma-separated lines. A non-nil error is a
// [tomlfile.Problems] with every mistake in the file.
func Read(name string, text []byte) (*Chart, error) {
	file, form := tomlfile.Parse, tomlChart
	if isLines(name, text) {
		file, form = linesFile, csvChart
	}
	return readChart(file(name, text), form, text)
}

func readChart(file *tomlfile.File, form chartForm, text []byte) (*Chart, error) {
	c := &Chart{File: file.Name, Text: slices.Clone(text), Hash: digest.Of(text)}
	r := chartReader{chart: c, file: file, root: file.Root(), form: form}
	if err := file.Read(func(*tomlfile.Table) { r.read() }); err != nil {
		return nil, err
	}
	return c, nil
}

// chartReader fills a chart from a file, table by table.
type chartReader struct {
	chart *Chart
	file  *tomlfile.File
	root  *tomlfile.Table
	form  chartForm
	// moisture is the table of the range the chart answers for.
	moisture *tomlfile.Table
}

func (r *chartReader) read() {
	head, _ := r.root.Table("chart", true)
	r.identity(head)
	r.limits(head)
	r.chart.Origin = r.file.Origin()
	r.temperatures(head)
	rows := r.root.Tables("row")
	r.rows(rows)
	r.testWeights()
	if r.isWhole() {
		r.order(rows)
		r.reach()
	}
}

func (r *chartReader) identity(t *tomlfile.Table) {
	c := r.chart
	c.ID, c.Title = t.Text("id"), t.Text("title")
	c.Meter, c.Calibration = t.Text("meter"), t.Text("calibration")
	c.Example = t.Bool("example")
	if c.Crop = t.Text("crop"); c.Crop != "" {
		if _, err := grain.ByID(c.Crop); err != nil {
			t.AddProblem("crop", message.New("chart.crop: %s", err), message.New("Write one of the known ids; a class of wheat is a crop of its own."))
		}
	}
	c.From, c.Until = t.Date("from"), t.OptionalDate("until")
	if !c.Until.IsZero() && c.Until.Before(c.From) {
		t.AddProblem("until", message.New("the chart ends on %s, before it begins on %s", c.Until, c.From), message.New("Swap the two days, or leave until out for a chart without an end."))
	}
}

func (r *chartReader) limits(t *tomlfile.Table) {
	c := r.chart
	c.Mass = above(t, "mass", message.New("Write the grain weighed into the meter, such as \"250 g\"."), quantity.Gram)
	c.MaxDifference = above(t, "max_meter_to_grain", message.New("Write the most the grain may differ from the meter, such as \"20 °F\"."), quantity.Fahrenheit, quantity.Celsius)
	c.Moisture, r.moisture = r.span("moisture", quantity.Percent)
	c.Ambient, _ = r.span("ambient", quantity.Fahrenheit, quantity.Celsius)
	c.uneven = t.OptionalText("uneven_steps")
}

// above is a required figure over zero.
func above(t *tomlfile.Table, key string, remedy message.Text, units ...quantity.Unit) quantity.Amount {
	if !t.Has(key) {
		return t.Amount(key, units...) // reports that it is missing
	}
	a, read := t.OptionalAmount(key, units...)
	if read && a.Sign() <= 0 {
		t.AddProblem(key, message.New("%v.%v is %s, which is not above zero", t.Path(), key, a), remedy)
	}
	return a
}

// span is a table with low and high, in one unit.
func (r *chartReader) span(key string, units ...quantity.Unit) (quantity.Span, *tomlfile.Table) {
	t, ok := r.root.Table(key, true)
	if !ok {
		return quantity.Span{}, t
	}
	s := quantity.Span{Low: t.Amount("low", units...), High: t.Amount("high", units...)}
	switch {
	case s.Low.Unit() != s.High.Unit():
		t.AddProblem("high", message.New("%v.low is in %s and %v.high in %s", key, s.Low.Unit(), key, s.High.Unit()), message.New("Write both in one unit."))
		s.High = quantity.Zero(s.Low.Unit())
	case t.Has("low") && t.Has("high") && !s.High.More(s.Low):
		t.AddProblem("high", message.New("%v.high %s is not above %v.low %s", key, s.High, key, s.Low), message.New("Swap the two, or mend the figure."))
	}
	return s, t
}
