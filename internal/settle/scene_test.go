package settle_test

import (
	"os"
	"strings"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// plainCorn is the shortest edition there is; scenes change a table of it at a
// time.
const plainCorn = "../../testdata/rates/good/corn-plain.toml"

func readText(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// shipped reads an edition that the program ships with.
func shipped(t testing.TB, id string) *rates.Edition {
	t.Helper()
	return edition(t, readText(t, editionsFolder+"/"+id+".toml"))
}

func edition(t testing.TB, text string) *rates.Edition {
	t.Helper()
	e, err := rates.Read("test.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// scene is the plain edition with other tables in the place of its own: each
// table begins with its heading, and further tables are added at the end.
func scene(t testing.TB, tables ...string) *rates.Edition {
	t.Helper()
	text := readText(t, plainCorn)
	for _, table := range tables {
		text = withTable(text, strings.TrimSpace(table)+"\n\n")
	}
	return edition(t, text)
}

func withTable(text, table string) string {
	heading, _, _ := strings.Cut(table, "\n")
	from := strings.Index(text, "\n"+heading+"\n")
	if from < 0 || strings.HasPrefix(heading, "[[") {
		return text + "\n" + table
	}
	to := strings.Index(text[from+2:], "\n[")
	if to < 0 {
		return text[:from+1] + table
	}
	return text[:from+1] + table + text[from+2+to+1:]
}

// ordered changes the order of deductions of a scene's text.
func ordered(t testing.TB, e *rates.Edition, order string) *rates.Edition {
	t.Helper()
	text := string(e.Text)
	from := strings.Index(text, "order = [")
	to := from + strings.Index(text[from:], "\n")
	return edition(t, text[:from]+"order = ["+order+"]"+text[to:])
}

// corn is a load of corn: net in pounds and moisture.
func corn(net, moisture string, more ...func(*settle.Facts)) settle.Facts {
	f := settle.Facts{
		Drafts:   []settle.Draft{{Gross: quantity.Of("20000", quantity.Lb).Add(quantity.Of(net, quantity.Lb)), Tare: quantity.Of("20000", quantity.Lb)}},
		Moisture: settle.Reading{Percent: quantity.Of(moisture, quantity.Percent)},
	}
	for _, change := range more {
		change(&f)
	}
	return f
}

func at(price string) func(*settle.Facts) {
	return func(f *settle.Facts) {
		a, err := quantity.ParseAmount(price)
		if err != nil {
			panic(err)
		}
		f.Price = &settle.Price{Amount: a}
	}
}

// with adds a result: a figure with its unit, or "yes" or "no".
func with(factor grain.FactorID, value string) func(*settle.Facts) {
	return func(f *settle.Facts) {
		found := settle.Finding{Factor: factor, Present: value == "yes"}
		if value != "yes" && value != "no" {
			a, err := quantity.ParseAmount(value)
			if err != nil {
				panic(err)
			}
			found.Amount = a
		}
		f.Findings = append(f.Findings, found)
	}
}

func accepting(ids ...string) func(*settle.Facts) {
	return func(f *settle.Facts) { f.Accepted = ids }
}

// owners are named A, B, … with parts of a whole.
func owners(of int64, parts ...int64) func(*settle.Facts) {
	return func(f *settle.Facts) {
		for i, p := range parts {
			f.Shares = append(f.Shares, settle.Share{
				Owner: string(rune('A' + i)), Parts: quantity.Int(p, quantity.Plain), Of: quantity.Int(of, quantity.Plain),
			})
		}
	}
}

func mustSettle(t testing.TB, f settle.Facts, e *rates.Edition) *settle.Settlement {
	t.Helper()
	s, err := settle.Settle(f, e)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// shows holds steps of a settlement against what is printed for them.
func shows(t *testing.T, s *settle.Settlement, want map[string]string) {
	t.Helper()
	for id, printed := range want {
		step, ok := s.Sheet.Step(id)
		switch {
		case !ok && printed != "":
			t.Errorf("there is no step %s; it should show %s", id, printed)
		case ok && step.Printed() != printed:
			t.Errorf("%s shows %q, want %q\n%s", id, step.Printed(), printed, strings.Join(step.Explain(), "\n"))
		}
	}
}

// refused holds that a load is refused with exactly these sentences, each given
// by a part of it.
func refused(t *testing.T, f settle.Facts, e *rates.Edition, parts ...string) settle.Problems {
	t.Helper()
	s, err := settle.Settle(f, e)
	problems, ok := err.(settle.Problems)
	if s != nil || !ok || len(problems) != len(parts) {
		t.Errorf("want %d sentences, got %v", len(parts), err)
		return nil
	}
	for i, part := range parts {
		if !strings.Contains(problems[i].Sentence.String(), part) {
			t.Errorf("sentence %d does not say %q: %s", i+1, part, problems[i].Sentence.String())
		}
	}
	return problems
}
