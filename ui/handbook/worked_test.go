package handbook

import (
	"strings"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/schedules"
)

// The load calculated in the chapter on shrink is settled here; every figure of the settlement must
// be in the chapter as printed.
func TestTheWorkedLoad(t *testing.T) {
	set, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	e, ok := set.ByID("corn-main-2026")
	if !ok {
		t.Fatal("the edition of the example is not shipped")
	}
	s, err := settle.Settle(settle.Facts{
		Drafts:   []settle.Draft{{Gross: quantity.Int(52300, quantity.Lb), Tare: quantity.Int(24120, quantity.Lb)}},
		Moisture: settle.Reading{Percent: quantity.Of("17.2", quantity.Percent), Source: message.Words("meter")},
		Findings: []settle.Finding{{Factor: grain.TestWeight, Amount: quantity.Of("53.6", quantity.LbPerBushel)}},
		Deal:     settle.Deal{Price: &settle.Price{Amount: quantity.Of("4.15", quantity.DollarsPerBu)}},
	}, e)
	if err != nil {
		t.Fatal(err)
	}
	chapter, _ := In(English).ByID("shrink")
	for _, id := range []string{"gross", "tare", "net", "moisture", "shrink.water", "handling", "dry", "quantity", "drying", "discount.test-weight", "services", "value", "payable"} {
		step, ok := s.Sheet.Step(id)
		if !ok {
			t.Fatalf("the settlement has no step %s", id)
		}
		if figure := strings.TrimSuffix(step.Printed(), " %"); !strings.Contains(chapter.Text, figure) {
			t.Errorf("%s is %s; the chapter does not say so", step.Label(), figure)
		}
	}
	if e.Status != rates.Example || !strings.Contains(chapter.Text, "not for trade") {
		t.Error("the chapter does not say that the edition is an example")
	}
}

func figure(text string) quantity.Amount { return quantity.Of(text, quantity.Plain) }

// The other figures of the chapters, each recalculated.
func TestFiguresInTheChapters(t *testing.T) {
	hundred := figure("100")
	factor := func(to string) quantity.Amount { return hundred.Div(hundred.Sub(figure(to))) }
	beyond := func(points string) quantity.Amount { return figure("1.4").Sub(factor("15")).Mul(figure(points)) }
	wet := figure("56000")
	water := wet.Mul(figure("10")).Div(figure("85"))
	for name, c := range map[string]struct {
		chapter, want, step string
		got                 quantity.Amount
	}{
		"factor to 15.5":      {"shrink", "1.1834", "0.0001", factor("15.5")},
		"factor to 15":        {"shrink", "1.1765", "0.0001", factor("15")},
		"factor to 14":        {"shrink", "1.1628", "0.0001", factor("14")},
		"factor to 13":        {"shrink", "1.1494", "0.0001", factor("13")},
		"1.4 over 5 points":   {"shrink", "1.12", "0.01", beyond("5")},
		"1.4 over 10 points":  {"shrink", "2.24", "0.01", beyond("10")},
		"handling added":      {"shrink", "49,131.76", "0.01", wet.Sub(water).Sub(wet.Mul(figure("0.005")))},
		"handling multiplied": {"shrink", "49,164.71", "0.01", wet.Sub(water).Mul(figure("0.995"))},
		"dry corn":            {"shrink", "9,467", "1", figure("8000").Div(figure("0.845"))},
		"a percent":           {"shrink", "9,240", "1", figure("8000").Mul(figure("1.155"))},
		"ten samples":         {"bench", "0.12", "0.01", quantity.Sqrt(figure("0.39").Mul(figure("0.39")).Div(figure("10")), quantity.To("0.01", quantity.HalfUp))},
	} {
		rounding := quantity.To(c.step, quantity.HalfUp)
		if got := rounding.Apply(c.got).Fixed(rounding.Places()); got != c.want {
			t.Errorf("%s is %s, not %s", name, got, c.want)
		}
		if chapter, _ := In(English).ByID(c.chapter); !strings.Contains(chapter.Text, c.want) {
			t.Errorf("%s: %s does not stand in the chapter %s", name, c.want, c.chapter)
		}
	}
}
