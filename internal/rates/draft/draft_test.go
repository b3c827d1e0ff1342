package draft

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/rates"
	"tenthpoint/schedules"
)

var head = Head{ID: "barley-own-2026", From: "2026-08-01", Issued: "2026-07-30", By: "Our Elevator", Document: "board of 30 July"}

func example(t *testing.T, id string) *rates.Edition {
	t.Helper()
	all, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	e, found := all.ByID(id)
	if !found {
		t.Fatalf("no edition %s", id)
	}
	return e
}

func find(t *testing.T, d Draft, table, key string, row int) Figure {
	t.Helper()
	for _, f := range d.Figures() {
		if f.Table == table && f.Key == key && (row < 0 || f.Row == row) {
			return f
		}
	}
	t.Fatalf("no %s in %s", key, table)
	return Figure{}
}

// Every example becomes an edition of the house that reads without a mistake, with its own head and
// the same figures.
func TestEveryExampleCanBeMadeMine(t *testing.T) {
	all, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	for _, from := range all.All() {
		d := MakeMine(from, head)
		e, problems := d.Check("own.toml")
		if e == nil {
			t.Errorf("%s: %v", from.ID, problems)
			continue
		}
		if e.ID != head.ID || e.Status != rates.House || e.From.String() != head.From || e.Origin.By != head.By || !e.Until.IsZero() || e.Corrects != "" {
			t.Errorf("%s: head %s %s from %s until %s by %s", from.ID, e.ID, e.Status, e.From, e.Until, e.Origin.By)
		}
		if !d.SameFigures() {
			t.Errorf("%s: figures differ before anybody changed one", from.ID)
		}
		for _, c := range rates.Diff(from, e) {
			if !strings.HasPrefix(c.Key, "edition.") && !strings.HasPrefix(c.Key, "origin.") {
				t.Errorf("%s: %s became %s", from.ID, c.Before, c.After)
			}
		}
		if strings.Contains(string(d.Text()), "Example - not for trade") {
			t.Errorf("%s: the text still says that it is an example", from.ID)
		}
	}
}

func TestAFigureIsChanged(t *testing.T) {
	d := MakeMine(example(t, "barley-main-2025"), head)
	rate := find(t, d, "drying", "rate", -1)
	changed := d.Set(rate.Line, " 0.05 $/bu/pt ")
	e, problems := changed.Check("")
	if e == nil || e.Drying.Rate.Amount.Figure() != "0.05" {
		t.Fatalf("the rate: %v", problems)
	}
	if changed.SameFigures() || !d.SameFigures() {
		t.Error("a changed rate counts as the same, or changed the draft it was made from")
	}
	wrong := changed.Set(rate.Line, "five cents")
	if e, problems := wrong.Check(""); e != nil || len(problems) != 1 || problems[0].Line != rate.Line {
		t.Errorf("five cents: %v", problems)
	}
	quoted := d.Set(find(t, d, "edition", "title", -1).Line, `Our "own" barley`)
	if got := find(t, quoted, "edition", "title", -1).Value; got != `Our "own" barley` {
		t.Errorf("the title is %s", got)
	}
}

// All mistakes are told at once, each at its figure.
func TestMistakesAtTheirFigures(t *testing.T) {
	d := MakeMine(example(t, "barley-main-2025"), head)
	lines := []int{find(t, d, "edition", "from", -1).Line, find(t, d, "shrink.row", "shrink", 2).Line, find(t, d, "drying", "rate", -1).Line}
	for _, line := range lines {
		d = d.Set(line, "nonsense")
	}
	_, problems := d.Check("")
	var at []int
	for _, p := range problems {
		at = append(at, p.Line)
	}
	for _, line := range lines {
		if !slices.Contains(at, line) {
			t.Errorf("nothing is said of line %d: %v", line, problems)
		}
	}
}

func TestRowsAreAddedAndRemoved(t *testing.T) {
	d := MakeMine(example(t, "barley-main-2025"), head)
	count := func(d Draft) (n int) {
		for _, f := range d.Figures() {
			if f.Table == "shrink.row" && f.Key == "shrink" {
				n++
			}
		}
		return n
	}
	before := count(d)
	last := find(t, d, "shrink.row", "shrink", before-1)
	if !d.CanChangeRows(last.Line) || d.CanChangeRows(find(t, d, "drying", "rate", -1).Line) {
		t.Error("rows may be changed where there are none, or not where there are some")
	}
	more, line := d.AddRow(last.Line)
	if count(more) != before+1 {
		t.Fatalf("%d rows after %d", count(more), before)
	}
	if e, _ := more.Check(""); e != nil {
		t.Error("two rows for the same moisture are no mistake")
	}
	for _, f := range more.Figures() {
		if f.Line < line || f.Table != "shrink.row" {
			continue
		}
		more = more.Set(f.Line, map[string]string{"over": "20.0 %", "upto": "21.0 %", "shrink": "9.1 %"}[f.Key])
	}
	if e, problems := more.Check(""); e == nil {
		t.Errorf("a row more: %v", problems)
	}
	less := more.RemoveRow(line)
	if e, problems := less.Check(""); count(less) != before || e == nil || !less.SameFigures() {
		t.Errorf("%d rows, %v", count(less), problems)
	}
}
