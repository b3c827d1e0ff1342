package law

import (
	"flag"
	"os"
	"slices"
	"strings"
	"tenthpoint/internal/quantity"
	"testing"
)

var freeze = flag.Bool("freeze", false, "write the list of the first law; done once")

// The first law never changes: tickets of old books are read by it.
func TestFirstLawIsFrozen(t *testing.T) {
	if *freeze {
		s, problems := NewSet(Shipped()...)
		if err := problems.Err(); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile("../../schedules/law/first.txt", []byte(newLaw(s.files).Manifest()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if n := len(First().Files()); n < 20 {
		t.Errorf("the first law has %d files", n)
	}
}

// TestRulesOfEquipmentAreNoTickets: what a ticket is not settled by is found on its day, and is not
// kept with it: the law of tickets stays what it was.
func TestRulesOfEquipmentAreNoTickets(t *testing.T) {
	set, problems := NewSet(Shipped()...)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	for _, rules := range []string{"us", "canada"} {
		l := set.For(rules).On(quantity.MustDate("2026-10-01"))
		f, found := l.Find(rules, "scale-tolerances", "")
		if !found {
			t.Fatalf("%s has no tolerances of scales", rules)
		}
		if strings.Contains(l.Manifest(), f.ID) || slices.Contains(l.OfTickets(), f) || len(l.OfTickets()) >= len(l.Files()) {
			t.Errorf("%s is kept with tickets", f.ID)
		}
	}
}

// A house that keeps copies of the program's files beside its rates has the same law; a file that says
// anything else under the same name is a mistake.
func TestCopiesOfFilesCountOnce(t *testing.T) {
	alone, problems := NewSet(Shipped()...)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	copied, problems := NewSet(append(Shipped(), Shipped()...)...)
	if err := problems.Err(); err != nil {
		t.Fatal(err)
	}
	day := quantity.MustDate("2026-10-01")
	if a, b := alone.For("us").On(day).Hash(), copied.For("us").On(day).Hash(); a != b {
		t.Errorf("the law is %s, with copies %s", a, b)
	}
	one := Shipped()[0]
	other, err := Open("other.toml", append([]byte("# ours\n"), one.Text...))
	if err != nil {
		t.Fatal(err)
	}
	if _, problems := NewSet(one, other); len(problems) != 2 {
		t.Errorf("another file of the same name: %v", problems)
	}
}
