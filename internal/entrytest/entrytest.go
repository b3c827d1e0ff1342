// Package entrytest checks every client that enters loads against one table of typed texts: the
// same texts must give the same facts and the same outcome, whether they are typed on a form, given
// as flags, or read off a list.
//
// The table is testdata/entry/parity.txt, written by hand; the facts of each line are in
// parity.facts beside it. A client types each line on a desk of [Open], and [Table.Check] compares.
package entrytest

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
)

// Now is the time of all entries.
var Now = time.Date(2025, 10, 14, 12, 0, 0, 0, time.UTC)

// Text is a text typed into a field.
type Text struct{ Field, Typed string }

// Case is one line of the table: texts that replace those of its elevator's usual load.
type Case struct {
	Line    int
	House   string
	Outcome string // "ok", or "refused", "stopped", "asked", "warned" and the field
	Typed   []Text
}

// Texts returns the usual load of the elevator with the texts of the case in their places.
func (c Case) Texts() []Text {
	var out []Text
	for _, usual := range usualLoads[c.House] {
		if !c.types(usual.Field) {
			out = append(out, usual)
		}
	}
	return append(out, c.Typed...)
}

func (c Case) types(field string) bool {
	for _, t := range c.Typed {
		if t.Field == field {
			return true
		}
	}
	return false
}

// Table is the table with the facts that belong to each line.
type Table struct {
	Cases []Case
	facts map[int]string
	root  string
}

// Read reads the table under the root of the repository.
func Read(t testing.TB, root string) *Table {
	t.Helper()
	table := &Table{root: root, facts: map[int]string{}, Cases: cases(t, root, "parity.txt")}
	for _, line := range lines(t, filepath.Join(root, factsFile)) {
		var number int
		if head, facts, ok := strings.Cut(line, "\t"); ok {
			if _, err := fmt.Sscanf(head, "%d", &number); err == nil {
				table.facts[number] = facts
			}
		}
	}
	return table
}

// Absurd reads the table of absurd texts.
func Absurd(t testing.TB, root string) []Case {
	t.Helper()
	return cases(t, root, "absurd.txt")
}

// cases are the lines of a table.
func cases(t testing.TB, root, name string) []Case {
	t.Helper()
	var out []Case
	for i, line := range lines(t, filepath.Join(root, "testdata/entry", name)) {
		if line = strings.TrimSpace(line); line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		c, err := parseCase(line)
		if err != nil {
			t.Fatalf("%s:%d: %v", name, i+1, err)
		}
		c.Line = i + 1
		out = append(out, c)
	}
	return out
}

const factsFile = "testdata/entry/parity.facts"

func lines(t testing.TB, path string) []string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil && !os.IsNotExist(err) {
		t.Fatal(err)
	}
	return strings.Split(string(text), "\n")
}

// parseCase reads "house | outcome | field=text | field=text". A quoted text is parsed as a Go
// string.
func parseCase(line string) (Case, error) {
	cells := strings.Split(line, "|")
	if len(cells) < 3 {
		return Case{}, fmt.Errorf("write house | outcome | field=text")
	}
	c := Case{House: strings.TrimSpace(cells[0]), Outcome: strings.TrimSpace(cells[1])}
	if _, known := usualLoads[c.House]; !known {
		return c, fmt.Errorf("there is no house %q", c.House)
	}
	for _, cell := range cells[2:] {
		field, typed, ok := strings.Cut(strings.TrimSpace(cell), "=")
		if !ok {
			return c, fmt.Errorf("%q is no field=text", cell)
		}
		if strings.HasPrefix(typed, `"`) {
			if err := json.Unmarshal([]byte(typed), &typed); err != nil {
				return c, err
			}
		}
		c.Typed = append(c.Typed, Text{field, typed})
	}
	return c, nil
}

// Check compares a client's result for a case.
func (table *Table) Check(t testing.TB, c Case, outcome string, l *load.Load) {
	t.Helper()
	if outcome != c.Outcome {
		t.Errorf("parity.txt:%d: %v is %s, want %s", c.Line, c.Typed, outcome, c.Outcome)
	}
	if got, want := Facts(t, l), table.facts[c.Line]; got != want {
		t.Errorf("parity.txt:%d: %v gives\n%s\nwant\n%s", c.Line, c.Typed, got, want)
	}
}

// Update writes the facts again.
func (table *Table) Update(t testing.TB, facts map[int]string) {
	t.Helper()
	var b strings.Builder
	for _, c := range table.Cases {
		fmt.Fprintf(&b, "%d\t%s\n", c.Line, facts[c.Line])
	}
	if err := os.WriteFile(filepath.Join(table.root, factsFile), []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}

// Facts returns what the book has of a load after it was entered: details, weights in force, sample
// and what was accepted, as canonical JSON. It leaves out where a figure was typed: only in that do
// clients differ.
func Facts(t testing.TB, l *load.Load) string {
	t.Helper()
	if l == nil {
		return "nothing"
	}
	details, sample := l.Details, l.Sample
	if strings.HasPrefix(details.PriceSource, "typed") {
		details.PriceSource = "typed"
	}
	details.Shares = slices.Clone(details.Shares)
	for i, owner := range details.Shares {
		if owner.Own != nil && strings.HasPrefix(owner.Own.PriceSource, "typed") {
			own := *owner.Own
			own.PriceSource = "typed"
			details.Shares[i].Own = &own
		}
	}
	if sample.Moisture != nil {
		m := *sample.Moisture
		if strings.HasPrefix(m.Method, "typed at") {
			m.Method = "typed"
		}
		sample.Moisture = &m
	}
	weighed := []load.Weighing{}
	for _, w := range l.Weighings {
		weighed = append(weighed, w.Weighing)
	}
	accepted := []load.Accepted{}
	for _, a := range l.Accepted {
		accepted = append(accepted, a.Accepted)
	}
	text, err := journal.Canonical(map[string]any{"details": details, "sample": sample, "weighed": weighed, "accepted": accepted})
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// Outcome returns a form's response to texts: the first invalid one, else the first field that
// stops the ticket, else the first with a question or a warning.
func Outcome(f *entry.Form) string {
	if field, err := f.FirstRefused(); err != nil {
		return "refused " + field
	}
	tried := f.Tried()
	for _, kind := range []struct {
		kind entry.Severity
		word string
	}{{entry.Stop, "stopped"}, {entry.Ask, "asked"}, {entry.Warn, "warned"}} {
		for _, field := range f.Fields() {
			if tried.Messages[field.ID].Severity == kind.kind {
				return kind.word + " " + field.ID
			}
		}
		if tried.Messages[entry.WholeLoad].Severity == kind.kind {
			return kind.word + " load"
		}
	}
	return "ok"
}

// AbsurdOutcome returns a form's response to absurd texts: the first invalid one, else the first
// question, else the first field that stops the ticket.
func AbsurdOutcome(f *entry.Form) string {
	if field, err := f.FirstRefused(); err != nil {
		return "refused " + field
	}
	if asked := f.Tried().Asked; len(asked) > 0 {
		return "asked " + asked[0].ID
	}
	return Outcome(f)
}

// Enter writes a form's facts into the book, and returns the load; nil if there were none.
func Enter(t testing.TB, d *scalehouse.Desk, f *entry.Form) *load.Load {
	t.Helper()
	facts := f.Facts()
	if facts.IsEmpty() {
		return nil
	}
	ctx, id := context.Background(), ""
	must(t, d.Batch(ctx, func(w *scalehouse.Batch) (err error) {
		id, err = scalehouse.Enter(ctx, w, "", facts)
		return err
	}))
	l, err := office.Load(ctx, d, id)
	must(t, err)
	return l
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}
