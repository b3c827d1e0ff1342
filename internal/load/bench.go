package load

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/worksheet"
)

// Bench is everything a moisture was worked out from, as of the day: the tests, the meters and
// their status, the elevator's policy, and the charts by the hash of their text. With the charts it
// always gives the same moisture.
type Bench struct {
	Tests     moisture.Tests          `json:"tests"`
	Meters    []meter.Meter           `json:"meters,omitempty"`
	Standings map[string]meter.Status `json:"standings,omitempty"`
	House     moisture.Procedure      `json:"house"`
	Charts    []ChartText             `json:"charts,omitempty"`
}

// ChartText names a chart and the SHA-256 of its text, which the book keeps.
type ChartText struct {
	ID   string `json:"id"`
	Hash string `json:"hash"`
}

// Equipment returns the equipment at the bench, with its charts attached.
func (b Bench) Equipment(charts *chart.Set) moisture.Equipment {
	return moisture.Equipment{Charts: charts, Meters: b.Meters, Statuses: b.Standings}
}

// UseCharts attaches the charts its tests were looked up in, which its facts name but do not
// contain. [Load.SettleFacts] needs them.
func (l *Load) UseCharts(charts *chart.Set) { l.charts = charts }

// ChartTexts names the charts of the load's moisture; empty for a typed moisture.
func (l *Load) ChartTexts() []ChartText {
	if m := l.Sample.Moisture; m != nil && m.Bench != nil {
		return m.Bench.Charts
	}
	return nil
}

// benchMoisture works the bench's tests out on the settlement's own sheet, so
// that the slip explains the moisture as well as the shrink.
type benchMoisture struct {
	bench  Bench
	charts *chart.Set
}

var _ settle.Moisture = benchMoisture{}

// Work writes every test and their mean, rounded once to the edition's place. All engines so far
// calculate the bench the same way; its steps are frozen with them.
func (b benchMoisture) Work(s *worksheet.Sheet, recorded quantity.Rounding, _ settle.Engine) *worksheet.Step {
	house := b.bench.House
	house.Rounding = recorded
	result, err := b.bench.Tests.Determine(s, b.bench.Equipment(b.charts), house)
	if result.Moisture != nil {
		return result.Moisture
	}
	// The desk refuses tests that give no figure when they are recorded. A chart missing since then
	// leaves zero, which no settlement accepts.
	return s.Skip("moisture", message.Words("Moisture"), quantity.Percent, recorded, message.Of(err), worksheet.Unsourced)
}
