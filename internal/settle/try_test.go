package settle_test

import (
	"flag"
	"os"
	"strings"
	"testing"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

var update = flag.Bool("update", false, "write the golden files anew")

func golden(t *testing.T, name, got string) {
	t.Helper()
	name = "../../testdata/rates/golden/" + name
	if *update {
		if err := os.WriteFile(name, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if want := readText(t, name); got != want {
		t.Errorf("%s\ngot:\n%s\nwant:\n%s", name, got, want)
	}
}

func grid(first, last, step string) []quantity.Amount {
	return settle.Grid(quantity.Of(first, quantity.Percent), quantity.Of(last, quantity.Percent), quantity.Of(step, quantity.Percent))
}

// What an edition does to a grid of moistures, as a table and as rows for a
// spreadsheet. The last moisture is beyond the edition's bands.
func TestTrialOfAnEdition(t *testing.T) {
	f := corn("56000", "15.0", with("test-weight", "55.0 lb/bu"), at("4.00 $/bu"))
	trial := settle.Try(shipped(t, "corn-river-2025"), f, grid("14.5", "32.5", "1.5"))
	golden(t, "trial-corn-river.txt", trial.Text())
	var csv strings.Builder
	for _, row := range trial.Records() {
		csv.WriteString(strings.Join(row, " | ") + "\n")
	}
	golden(t, "trial-corn-river.rows", csv.String())
	golden(t, "trial-corn-river.working", trial.Sheet.Text(76))
}

// Without a price the last column is the charge on a unit.
func TestTrialWhileThePriceComesLater(t *testing.T) {
	trial := settle.Try(shipped(t, "canola-metric-2025"), corn("50000", "9.0", with("distinctly-green", "1.0 %"), with("dockage", "1.0 %")), grid("9.0", "14.0", "0.5"))
	golden(t, "trial-canola-metric.txt", trial.Text())
}

// A row of the trial is the load settled at that moisture.
func TestTrialRowsAreSettlements(t *testing.T) {
	e := shipped(t, "corn-main-2026")
	for _, row := range settle.Try(e, corn("52300", "15.0"), grid("15.0", "25.0", "0.1")).Rows {
		f := corn("52300", plainFigure(row.Moisture))
		if s := mustSettle(t, f, e); !s.Dry.Value().Equal(row.Settlement.Dry.Value()) || !s.ToOwner().Equal(row.Settlement.ToOwner()) {
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
