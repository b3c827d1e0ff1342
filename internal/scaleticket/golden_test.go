package scaleticket

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden slips anew")

// TestText holds the roll and the page of every ticket against the slips kept
// in testdata.
func TestText(t *testing.T) {
	for _, c := range ticketTable {
		d := Compose(c.make(t))
		golden(t, c.name+".roll.txt", d.Text(RollColumns))
		golden(t, c.name+".page.txt", d.Text(PageColumns))
	}
}

// TestPaper does the same for what the screen shows.
func TestPaper(t *testing.T) {
	for _, c := range ticketTable {
		var b strings.Builder
		for _, l := range Paper(Compose(c.make(t))) {
			kind := fmt.Sprint(int(l.Kind))
			if l.Beside {
				kind += "+"
			}
			fmt.Fprintf(&b, "%s | %s | %s | %s | %s\n", kind, l.Field, l.Left, l.Right, strings.ReplaceAll(l.Note, "\n", " / "))
		}
		golden(t, c.name+".paper.txt", b.String())
	}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join(slips, name)
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s differs (-kept +now); run the test with -update if the change is meant:\n%s", name, diff)
	}
}

// angleBrackets is a translator that can be seen at work.
func angleBrackets(english string) string {
	switch english {
	case "m/d/y":
		return "d/m/y"
	case "%s: %s":
		return english
	}
	return "‹" + english + "›"
}
