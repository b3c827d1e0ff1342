package settle_test

import (
	"encoding/csv"
	"math/big"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

// publishedSource is the entry of a table in SOURCE.toml.
type publishedSource struct {
	Title, Publisher, Year, Address string
	HowRead                         string `toml:"how_read"`
	Printing                        string
	Exception                       []struct{ Rows, Reason string }
}

// publishedCase is one printed figure.
type publishedCase struct {
	id, printed, printing, place, between string
	method, arguments, read               string
}

// TestPublishedFigures works every transcribed figure again and holds the
// result, unrounded, against what was printed: within half a unit of the last
// place where the source rounds half-up, less than a whole unit below where it
// truncates. Exceptions are listed by id with their reason, and must really be
// exceptions. Figures that were only remembered are worked and shown; they
// decide nothing.
func TestPublishedFigures(t *testing.T) {
	held := map[string]int{}
	for _, folder := range publishedFolders(t) {
		source, cases := readPublished(t, folder)
		for _, c := range cases {
			t.Run(c.id, func(t *testing.T) { held[holdPublished(t, source, c)]++ })
		}
	}
	t.Logf("%v", held)
	if held["agrees"] < 95 || held["exception"] < 10 {
		t.Errorf("too few figures were held: %v", held)
	}
}

func publishedFolders(t *testing.T) []string {
	t.Helper()
	names, err := filepath.Glob("../../testdata/published/*/cases.csv")
	if err != nil || len(names) < 30 {
		t.Fatalf("%d tables: %v", len(names), err)
	}
	for i, name := range names {
		names[i] = filepath.Dir(name)
	}
	return names
}

func readPublished(t *testing.T, folder string) (publishedSource, []publishedCase) {
	t.Helper()
	var source publishedSource
	meta, err := toml.DecodeFile(filepath.Join(folder, "SOURCE.toml"), &source)
	if err != nil {
		t.Fatal(err)
	}
	if extra := meta.Undecoded(); len(extra) > 0 || slices.Contains([]string{source.Title, source.Publisher, source.Year, source.Address, source.HowRead, source.Printing}, "") {
		t.Errorf("%s: a source lacks title, publisher, year, address, how_read or printing, or has more: %v", folder, extra)
	}
	file, err := os.Open(filepath.Join(folder, "cases.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []publishedCase
	for _, line := range lines[1:] {
		cell := func(name string) string { return line[slices.Index(lines[0], name)] }
		out = append(out, publishedCase{
			id: cell("id"), printed: cell("printed"), printing: cell("printing"), place: cell("place"), between: cell("between"),
			method: cell("method"), arguments: cell("arguments"), read: cell("read"),
		})
	}
	return source, out
}

func (s publishedSource) isException(id string) bool {
	for _, e := range s.Exception {
		if e.Rows == id {
			return e.Reason != ""
		}
	}
	return false
}

// holdPublished says what became of a case: "agrees", "exception", "no figure"
// or "from memory".
func holdPublished(t *testing.T, source publishedSource, c publishedCase) string {
	excepted := source.isException(c.id)
	if c.method == "none" {
		if !excepted {
			t.Errorf("%s is not worked, and SOURCE.toml does not say why", c.id)
		}
		return "no figure"
	}
	exact := work(t, c)
	agrees := c.agrees(exact)
	switch {
	case c.read == "from memory":
		t.Logf("from memory, no verdict: printed %s, worked %s, agrees: %v", c.printed, exact.FloatString(6), agrees)
		return "from memory"
	case agrees && excepted:
		t.Errorf("%s is listed as an exception, and agrees: printed %s, worked %s", c.id, c.printed, exact.FloatString(6))
	case !agrees && !excepted:
		t.Errorf("%s: printed %s (%s), worked %s", c.id, c.printed, c.printing, exact.FloatString(8))
	case excepted:
		return "exception"
	}
	return "agrees"
}

// agrees compares the exact result with the printed one.
func (c publishedCase) agrees(exact *big.Rat) bool {
	if c.printing == "words" {
		low, high, _ := strings.Cut(c.between, " ")
		return exact.Cmp(figure(low)) > 0 && exact.Cmp(figure(high)) < 0
	}
	unit := c.unitInLastPlace()
	off := minus(exact, figure(c.printed))
	if c.printing == "truncated" {
		return off.Sign() >= 0 && off.Cmp(unit) < 0
	}
	return new(big.Rat).Abs(off).Cmp(times(unit, rat(1, 2))) <= 0
}

func (c publishedCase) unitInLastPlace() *big.Rat {
	if c.place != "" {
		return figure(c.place)
	}
	_, decimals, _ := strings.Cut(c.printed, ".")
	return figure("1e-" + string(rune('0'+len(decimals))))
}

// One table truncates where its neighbors round: every figure of the corn
// column lies at or below the exact one, and many of them would be printed a
// hundredth higher if they were rounded.
func TestCornColumnIsTruncated(t *testing.T) {
	source, cases := readPublished(t, "../../testdata/published/mu-crop-weights")
	higher := 0
	for _, c := range cases {
		if source.isException(c.id) {
			continue
		}
		exact := work(t, c)
		if down := roundTo(exact, "0.01 down"); down.Cmp(figure(c.printed)) != 0 {
			t.Errorf("%s: printed %s, truncated %s", c.id, c.printed, down.FloatString(2))
		}
		if roundTo(exact, "0.01 half-up").Cmp(figure(c.printed)) != 0 {
			higher++
		}
	}
	if higher < 15 {
		t.Errorf("only %d of %d figures tell truncating from rounding", higher, len(cases))
	}
}
