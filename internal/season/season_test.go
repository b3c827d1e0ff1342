package season

import (
	"strings"
	"testing"

	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/internal/settle"
)

var day = quantity.MustDate

func lb(n int64) quantity.Amount          { return quantity.Int(n, quantity.Lb) }
func usd(text string) quantity.Amount     { return quantity.Of(text, quantity.Dollar) }
func percent(text string) quantity.Amount { return quantity.Of(text, quantity.Percent) }
func bushels(text string) quantity.Amount { return quantity.Of(text, quantity.Bushel) }
func perBushel(text string) *quantity.Amount {
	a := quantity.Of(text, quantity.Dollar.Per(quantity.Bushel))
	return &a
}

// corn is a priced load in force: 56,000 lb settled are 1,000 bu at $4.
func corn(moisture string, water int64, drying string) Load {
	m := percent(moisture)
	return Load{Commodity: "corn", InForce: true, Came: day("2026-10-01"), Hour: "08", Summary: settle.Summary{
		Moisture: &m, Water: lb(water), Handling: lb(0),
		Part: settle.Part{
			Settled: lb(56_000), Quantity: bushels("1000"), Price: perBushel("4"), Value: usd("4000"),
			Drying: usd(drying), Services: usd(drying), Discounts: usd("0"), Premiums: usd("0"), Charges: usd(drying),
		},
	}}
}

func facts() *Facts {
	none := usd("0")
	return &Facts{
		From: day("2026-06-01"), To: day("2026-10-03"), Day: day("2026-10-02"), Weight: quantity.Lb,
		Triggers: map[string]quantity.Amount{"corn": percent("15")}, Kept: KeptMoney{Storage: none, Interest: none},
	}
}

func stacks(p report.Picture) string {
	var out []string
	for _, s := range p.Stacks {
		out = append(out, s.Label.String()+"="+s.Value.String())
	}
	return strings.Join(out, " ")
}

// near reports whether two heights differ by rounding alone.
func near(a, b int) bool { return a-b <= 3 && b-a <= 3 }

func TestIntakeByDay(t *testing.T) {
	f := facts()
	f.Intake = []Intake{
		{day("2026-10-01"), "corn", lb(30_000)}, {day("2026-10-01"), "soybeans", lb(10_000)}, {day("2026-10-01"), "corn", lb(20_000)},
		{day("2026-10-03"), "corn", quantity.Int(10_000, quantity.Kg)}, // a bin kept in kilograms: 22,046.226 lb
	}
	f.Before = []Intake{{day("2025-10-02"), "corn", lb(40_000)}}
	p := intake{f}.picture()
	if got, want := stacks(p), "10-01=60,000 10-02= 10-03=22,046"; got != want {
		t.Errorf("columns %s, want %s", got, want)
	}
	first := p.Stacks[0]
	if len(first.Parts) != 2 || !near(first.Parts[0].Height, 5*first.Parts[1].Height) {
		t.Errorf("50,000 lb of corn and 10,000 of soybeans are drawn %v high", first.Parts)
	}
	if first.Opens != "2026-10-01" || p.Stacks[1].Opens != "" {
		t.Errorf("opens %q and %q", first.Opens, p.Stacks[1].Opens)
	}
	if !p.Stacks[1].Now || p.Stacks[0].Now {
		t.Error("the day looked at is not marked alone")
	}
	if !near(p.Stacks[1].Stroke, 4*first.Parts[1].Height) || !p.Stacks[1].HasStroke {
		t.Errorf("40,000 lb a year before are a stroke at %d", p.Stacks[1].Stroke)
	}
	if got, want := p.Says.String(), "82,046 lb so far, 0 lb of it on 2026-10-02; 40,000 lb by this day the year before."; got != want {
		t.Errorf("says %q, want %q", got, want)
	}
}

func TestWhatWaterTook(t *testing.T) {
	f := facts()
	unpriced := corn("17.0", 1_400, "60")
	unpriced.Price, unpriced.Value = nil, usd("0")
	void := corn("30", 9_000, "900")
	void.InForce = false
	f.Loads = []Load{corn("14.2", 0, "0"), corn("15.0", 0, "0"), corn("15.4", 280, "18.5"), corn("16.9", 1_120, "75"), unpriced, void}
	p := water{f}.picture("corn")
	if got, want := stacks(p), "14.0=1 14.5= 15.0=2 15.5= 16.0= 16.5=1 17.0=1"; got != want {
		t.Errorf("columns %s, want %s", got, want)
	}
	// 280 of 56,000 lb are worth 1/200 of $4,000, and 1,120 lb 1/50: $20 and $80.
	cost := water{f}.above("corn")
	if cost.loads != 3 || !cost.value.Equal(usd("100")) || !cost.drying.Equal(usd("153.5")) || !cost.shrink.Equal(lb(2_800)) || cost.unpriced != 1 {
		t.Errorf("above the trigger: %+v", cost)
	}
	if p.Edge.At != 286 { // two of seven classes
		t.Errorf("the trigger stands at %d", p.Edge.At)
	}
	if got := p.Stacks[5].Opens; got != "grain corn 2026-06-01..2026-10-03 issued moisture 16.5..17.0" {
		t.Errorf("opens %q", got)
	}
}

// The trigger is outside of what came: shaded from the edge, or not at all.
func TestTriggerOutside(t *testing.T) {
	f := facts()
	f.Loads = []Load{corn("12.1", 0, "0"), corn("13.9", 0, "0")}
	if p := (water{f}).picture("corn"); p.Edge.At != 1000 || p.Says.String() != "No load was above 15.0 %." {
		t.Errorf("all dry: %d, %s", p.Edge.At, p.Says)
	}
	f.Triggers["corn"] = percent("11")
	if p := (water{f}).picture("corn"); p.Edge.At != 0 {
		t.Errorf("all wet: %d", p.Edge.At)
	}
	delete(f.Triggers, "corn")
	if p := (water{f}).picture("corn"); !p.Edge.IsZero() {
		t.Errorf("without a trigger: %v", p.Edge)
	}
	if p := (water{f}).picture("oats"); len(p.Stacks) != 0 || p.Empty.IsZero() {
		t.Errorf("no oats: %v", p.Stacks)
	}
}

func truck(on, hour string, waited int) Load {
	l := corn("14", 0, "0")
	l.Came, l.Hour, l.Waited, l.Timed = day(on), hour, waited, waited > 0
	return l
}

func TestHoursAgainstTheUsual(t *testing.T) {
	f := facts()
	again := truck("2026-10-02", "07", 3)
	again.Again = true
	f.Loads = []Load{
		truck("2026-09-30", "07", 10), truck("2026-09-30", "07", 20), truck("2026-09-30", "09", 30), truck("2026-10-01", "09", 40),
		truck("2026-10-02", "07", 12), truck("2026-10-02", "07", 4), truck("2026-10-02", "07", 50), again,
		truck("2026-10-03", "05", 1), // after the day
	}
	p := gate{f}.hoursPicture()
	if got, want := stacks(p), "07=3 08= 09="; got != want {
		t.Errorf("columns %s, want %s", got, want)
	}
	if got, want := p.Says.String(), "3 trucks on 2026-10-02; usually 2 a day."; got != want {
		t.Errorf("says %q, want %q", got, want)
	}
	if !near(p.Stacks[0].Stroke*3, p.Stacks[0].Parts[0].Height) {
		t.Errorf("1 truck at 7 is usual, 3 came: a stroke at %d of %d", p.Stacks[0].Stroke, p.Stacks[0].Parts[0].Height)
	}
	w := gate{f}.waitsPicture()
	if got, want := stacks(w), "07=12 08= 09="; got != want {
		t.Errorf("waits %s, want %s", got, want)
	}
	if got, want := w.Says.String(), "Half of the trucks waited no longer than 12 min, the longest 50 min; usually 20 min."; got != want {
		t.Errorf("says %q, want %q", got, want)
	}
	if w.Stacks[0].Opens != "2026-10-02 hour 07" || w.Stacks[1].HasStroke {
		t.Errorf("opens %q; a stroke at eight: %v", w.Stacks[0].Opens, w.Stacks[1].HasStroke)
	}
}

func TestIncomeFromTheHousesSide(t *testing.T) {
	f := facts()
	l := corn("17", 0, "30")
	l.Services, l.Handling = usd("42"), lb(560)
	l.Discounts, l.Premiums = usd("7.25"), usd("12")
	f.Loads = []Load{l}
	f.Kept.Storage = usd("5")
	p := earned{f}.picture()
	if got, want := stacks(p), "=30 =12 =40 =7 =5 =-12"; got != want {
		t.Errorf("columns %s, want %s", got, want)
	}
	if p.Legend[0].Name.String() != "Drying" || p.Legend[5].Name.String() != "Premiums" {
		t.Errorf("named %v", p.Legend)
	}
	last := p.Stacks[5]
	if last.Parts[0].Height >= 0 || p.Base != -last.Parts[0].Height || last.Opens != "2026-06-01..2026-10-03 issued with premiums" {
		t.Errorf("premiums go down to %d from a ground at %d and open %q", last.Parts[0].Height, p.Base, last.Opens)
	}
	if p.Stacks[4].Opens != "" {
		t.Error("storage is on settlement sheets, not on tickets")
	}
	if sum := (earned{f}).table().Rows[6].Cells[1].String(); sum != "82.25" {
		t.Errorf("together %s", sum)
	}
}

func checked(on, error string) meter.ErrorPoint {
	return meter.ErrorPoint{
		Check: meter.Check{Day: day(on), Reference: percent("15"), Reading: percent("15").Add(percent(error))},
		Limit: quantity.Int(1, quantity.Point), Limited: true,
	}
}

func TestMetersByRound(t *testing.T) {
	f := facts()
	f.Meters = []Meter{
		{ID: "D1", Log: meter.ErrorLog{Points: []meter.ErrorPoint{checked("2026-05-01", "3"), checked("2026-09-01", "0.2"), checked("2026-09-01", "0.3"), checked("2026-09-15", "-0.4")}}},
		{ID: "M1", Log: meter.ErrorLog{Points: []meter.ErrorPoint{checked("2026-09-01", "0")}}},
	}
	p := bench{f}.picture()
	if got, want := stacks(p), "09-01=+0.25 09-01=0 09-15=-0.4"; got != want {
		t.Errorf("rounds %s, want %s", got, want)
	}
	if heights := []int{p.Stacks[0].Parts[0].Height, p.Stacks[2].Parts[0].Height}; heights[0] != 125 || heights[1] != -200 {
		t.Errorf("of one point up or down: %v", heights)
	}
	if len((bench{facts()}).picture().Stacks) != 0 {
		t.Error("a house without meters has rounds")
	}
}

func TestScale(t *testing.T) {
	for _, c := range []struct{ most, lines string }{
		{"3", "1 2 3"}, {"7", "2 4 6"}, {"11", "5 10"}, {"40", "10 20 30 40"}, {"41", "20 40"}, {"987654", "500,000 1,000,000"},
	} {
		var lines []string
		for _, g := range scaleFor(quantity.Plain, quantity.Of(c.most, quantity.Plain)).guides() {
			lines = append(lines, g.Label.String())
		}
		if got := strings.Join(lines, " "); got != c.lines {
			t.Errorf("up to %s: %s, want %s", c.most, got, c.lines)
		}
	}
}

func TestBegan(t *testing.T) {
	for on, want := range map[string]string{"2025-10-07": "2025-06-01", "2026-05-31": "2025-06-01", "2026-06-01": "2026-06-01"} {
		if got := Began(day(on)).String(); got != want {
			t.Errorf("on %s the season began %s, want %s", on, got, want)
		}
	}
}
