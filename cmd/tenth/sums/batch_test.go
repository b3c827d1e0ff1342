package sums

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/ratefiles"
)

func batchTerminal(t testing.TB) (*terminal.Terminal, *bytes.Buffer) {
	var out bytes.Buffer
	return &terminal.Terminal{
		Context: t.Context(), Stdout: &out, Stderr: &out, Place: time.UTC,
		Clock: func() time.Time { return time.Date(2026, 10, 1, 12, 0, 0, 0, time.UTC) },
	}, &out
}

func batchFile(t testing.TB, rows int) string {
	var b strings.Builder
	b.WriteString("load,gross,tare,moisture,price,factor.test-weight,factor.bcfm\n")
	for i := range rows {
		fmt.Fprintf(&b, "%d,%d,24300,%d.%d,4.12,%d.5,%d.2\n", i, 52000+20*(i%400), 13+i%9, i%10, 52+i%5, i%4)
	}
	path := filepath.Join(t.TempDir(), "loads.csv")
	if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// exampleRates reads loads under the example rates.
func exampleRates(t testing.TB) reader {
	t.Helper()
	set, err := ratefiles.ReadRates("")
	if err != nil {
		t.Fatal(err)
	}
	laws, err := terminal.RuleSetFlags{Rules: "us"}.ReadLaws("")
	if err != nil {
		t.Fatal(err)
	}
	return reader{set, laws, quantity.MustDate("2026-10-01"), message.Figures{}}
}

// Rows do not depend on each other: every row comes out as it does alone.
func TestBatchRowsAreIndependent(t *testing.T) {
	loads := exampleRates(t)
	c := Settle{Commodity: "corn", Schedule: "main"}
	settled := func(path string) [][]string {
		term, out := batchTerminal(t)
		c.Batch = path
		if err := c.batch(term, loads); err != nil {
			t.Fatal(err)
		}
		rows, err := csv.NewReader(out).ReadAll()
		if err != nil {
			t.Fatal(err)
		}
		return rows
	}
	path := batchFile(t, 40)
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	together := settled(path)
	lines := strings.Split(strings.TrimSpace(string(text)), "\n")
	for i := 1; i < len(lines); i += 7 {
		one := filepath.Join(t.TempDir(), "one.csv")
		if err := os.WriteFile(one, []byte(lines[0]+"\n"+lines[i]+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
		if alone := settled(one)[1]; strings.Join(alone, "|") != strings.Join(together[i], "|") {
			t.Errorf("row %d alone is %v, among others %v", i, alone, together[i])
		}
	}
}

// BenchmarkBatch is per load: read, settled with its whole working, written.
func BenchmarkBatch(b *testing.B) {
	const rows = 5000
	loads := exampleRates(b)
	c := Settle{Commodity: "corn", Schedule: "main", Batch: batchFile(b, rows)}
	b.ResetTimer()
	for done := 0; done < b.N; done += rows {
		term, _ := batchTerminal(b)
		if err := c.batch(term, loads); err != nil {
			b.Fatal(err)
		}
	}
}

// A place that cannot be written to is told by the name that was typed, with
// what to do, and nothing is left there.
func TestBatchTellsWhereItCannotWrite(t *testing.T) {
	loads := exampleRates(t)
	folder := t.TempDir()
	if err := os.MkdirAll(filepath.Join(folder, "taken", "inside"), 0o755); err != nil {
		t.Fatal(err)
	}
	for out, why := range map[string]string{filepath.Join(folder, "missing", "out.csv"): " cannot be written", filepath.Join(folder, "taken"): " is a folder"} {
		term, _ := batchTerminal(t)
		c := Settle{Commodity: "corn", Schedule: "main", Batch: batchFile(t, 1), Out: out}
		told := terminal.Complaints(c.batch(term, loads))
		if len(told) != 1 || !strings.Contains(told[0].What, out+why) || told[0].Hint == "" {
			t.Errorf("%s: %+v", out, told)
		}
		if left, err := os.ReadDir(folder); err != nil || len(left) != 1 {
			t.Errorf("%s: %d entries are left, %v", out, len(left), err)
		}
	}
}
