package trial_test

import (
	"flag"
	"os"
	"strings"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/settle/trial"
)

var update = flag.Bool("update", false, "write the golden files anew")

func golden(t *testing.T, name, got string) {
	t.Helper()
	name = "../../../testdata/rates/golden/" + name
	if *update {
		if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s\ngot:\n%s\nwant:\n%s", name, got, want)
	}
}

// shipped reads an edition that the program ships with.
func shipped(t testing.TB, id string) *rates.Edition {
	t.Helper()
	name := "../../../schedules/editions/" + id + ".toml"
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	e, err := rates.Read(name, text)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// corn is a load with its net in pounds, tested for moisture and nothing else.
func corn(net, moisture string, found ...settle.Finding) settle.Facts {
	empty := quantity.Of("20000", quantity.Lb)
	return settle.Facts{
		Drafts:   []settle.Draft{{Gross: empty.Add(quantity.Of(net, quantity.Lb)), Tare: empty}},
		Moisture: settle.Reading{Percent: quantity.Of(moisture, quantity.Percent)}, Findings: found,
	}
}

func found(factor grain.FactorID, figure string, unit quantity.Unit) settle.Finding {
	return settle.Finding{Factor: factor, Amount: quantity.Of(figure, unit)}
}

func grid(first, last, step string) []quantity.Amount {
	return trial.Grid(quantity.Of(first, quantity.Percent), quantity.Of(last, quantity.Percent), quantity.Of(step, quantity.Percent))
}

// What an edition does to a grid of moistures, as a table and as rows for a
// spreadsheet. The last moisture is beyond the edition's bands.
func TestTrialOfAnEdition(t *testing.T) {
	f := corn("56000", "15.0", found("test-weight", "55.0", quantity.LbPerBushel))
	f.Price = &settle.Price{Amount: quantity.Of("4.00", quantity.DollarsPerBu)}
	got := trial.Of(shipped(t, "corn-river-2025"), f, grid("14.5", "32.5", "1.5"))
	golden(t, "trial-corn-river.txt", got.Text())
	var csv strings.Builder
	for _, row := range got.Records() {
		csv.WriteString(strings.Join(row, " | ") + "\n")
	}
	golden(t, "trial-corn-river.rows", csv.String())
	golden(t, "trial-corn-river.working", got.Sheet.Text(76))
}

// Without a price the last column is the charge on a unit.
func TestTrialWhileThePriceComesLater(t *testing.T) {
	got := trial.Of(shipped(t, "canola-metric-2025"), corn("50000", "9.0", found("distinctly-green", "1.0", quantity.Percent), found("dockage", "1.0", quantity.Percent)), grid("9.0", "14.0", "0.5"))
	golden(t, "trial-canola-metric.txt", got.Text())
}

// A row of the trial is the load settled at that moisture.
func TestTrialRowsAreSettlements(t *testing.T) {
	e := shipped(t, "corn-main-2026")
	for _, row := range trial.Of(e, corn("52300", "15.0"), grid("15.0", "25.0", "0.1")).Rows {
		f := corn("52300", plainFigure(row.Moisture))
		s, err := settle.Settle(f, e)
		if err != nil {
			t.Fatal(err)
		}
		if !s.Dry.Value().Equal(row.Settlement.Dry.Value()) || !s.ToOwner().Equal(row.Settlement.ToOwner()) {
			t.Errorf("at %s the row is not the settlement", row.Moisture)
		}
	}
}

func plainFigure(a quantity.Amount) string { return strings.TrimSuffix(a.Written(), " %") }

func TestGrid(t *testing.T) {
	if got := grid("14.0", "16.0", "0.5"); len(got) != 5 || got[4].String() != "16 %" {
		t.Errorf("grid: %v", got)
	}
	if got := grid("14.0", "13.0", "0.5"); len(got) != 0 {
		t.Errorf("a grid that runs down: %v", got)
	}
	if got := grid("14.0", "16.0", "0"); len(got) != 0 {
		t.Errorf("a grid that stands still: %v", got)
	}
	if got := grid("1.0", "99.0", "0.01"); len(got) != 1000 {
		t.Errorf("a grid without sense has %d rows", len(got))
	}
}
