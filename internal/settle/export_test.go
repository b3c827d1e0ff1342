package settle

import (
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// Meddle changes a copy of an engine for the rest of a test, as somebody might
// change it for good.
func Meddle(t testing.TB, n Engine, change func(e *Meddled)) {
	t.Helper()
	was := engines[n]
	is := Meddled(*was)
	change(&is)
	changed := engine(is)
	engines[n] = &changed
	t.Cleanup(func() { engines[n] = was })
}

// Meddled is an engine to be changed.
type Meddled engine

// AddStep adds a step at the end of the money.
func (m *Meddled) AddStep() {
	before := m.money
	m.money = func(d *calculation) {
		before(d)
		d.sheet.Work("extra", message.Words("Extra"), worksheet.Same(d.out.Drying), quantity.Unrounded, worksheet.Unsourced)
	}
}

// ChangeDigest records the working in another way.
func (m *Meddled) ChangeDigest() {
	before := m.digest
	m.digest = func(s *worksheet.Sheet) string { return before(s) + "\n" }
}

// RefuseMore refuses a load without a price.
func (m *Meddled) RefuseMore() {
	before := m.check
	m.check = func(c *checker) {
		before(c)
		if c.facts.Price == nil {
			c.wrong("price", "no price, no ticket")
		}
	}
}

// SwapStages records the sample before the weights.
func (m *Meddled) SwapStages() {
	m.weights, m.sample = m.sample, m.weights
}

// RoundOtherwise records every result to a whole unit.
func (m *Meddled) RoundOtherwise() {
	m.record = func(grain.Factor, quantity.Amount) quantity.Rounding { return quantity.To("1", quantity.Down) }
}

// RecordMore writes one more line down with each load.
func (m *Meddled) RecordMore() {
	before := m.figure
	m.figure = func(id string) bool { return id == "bushel" || before(id) }
}
