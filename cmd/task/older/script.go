package older

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"time"

	"tenthpoint/internal/transcript"
)

// linesOfWork is the number of acts and questions of a script after its set-up.
const linesOfWork = 24

// house is a kind of elevator for a script: its set-up, and its grains.
type house struct {
	setup  []string
	metric bool
	grains []string
}

var houses = []house{
	{
		setup:  []string{"--scale", "1=20lb,120000lb", "--grain", "corn=main-then", "--grain", "soybeans=main-then", "--grain", "wheat-hrw=main-then", "--grain", "sorghum=main-then"},
		grains: []string{"corn", "soybeans", "wheat-hrw", "sorghum"},
	},
	{
		setup:  []string{"--scale", "1=20lb,120000lb", "--grain", "corn=river-then", "--grain", "soybeans=statute-then", "--retain", "5"},
		grains: []string{"corn", "soybeans"},
	},
	{
		setup:  []string{"--scale", "1=10kg,60000kg", "--grain", "canola=metric-then", "--grain", "wheat-hrw=metric-then", "--grain", "barley=metric-then"},
		metric: true,
		grains: []string{"canola", "wheat-hrw", "barley"},
	},
	{
		setup:  []string{"--scale", "1=20lb,120000lb", "--grain", "corn=statute-then", "--grain", "oats=main-then"},
		grains: []string{"corn", "oats"},
	},
}

// typedWeights is the reason of every weight that is typed.
var typedWeights = []string{"--manual", "read from the indicator"}

// testedFor lists the factors a load of each grain is tested for in scripts.
var testedFor = map[string][]string{
	"corn":      {"test-weight", "damage", "bcfm", "musty"},
	"soybeans":  {"test-weight", "foreign-material", "splits", "damage"},
	"wheat-hrw": {"test-weight", "dockage", "protein"},
	"sorghum":   {"test-weight", "bkfm"},
	"canola":    {"dockage", "distinctly-green"},
	"barley":    {"test-weight", "dockage", "thin"},
	"oats":      {"test-weight", "foreign-material"},
}

// typedTexts generates texts that may be typed at a kind of elevator.
type typedTexts struct {
	*rand.Rand
	house
}

// A typist draws the lines of a script. It counts loads and tickets as if
// everything succeeded; where it did not, the refusals are compared.
type typist struct {
	typedTexts
	clock   time.Time
	loads   int
	tickets int
	stored  bool // some load of the script may be
	lines   []transcript.Entry
}

// randomScript is the work of some days at a new elevator.
func randomScript(r *rand.Rand) []transcript.Entry {
	t := &typist{typedTexts: typedTexts{r, houses[r.IntN(len(houses))]}, clock: time.Date(2026, 10, 1, 7, 30, 0, 0, time.UTC)}
	t.setUp()
	acts := []struct {
		weight int
		do     func()
	}{
		{9, t.receive}, {4, t.open}, {4, t.weigh}, {4, t.sample}, {4, t.issue}, {2, t.void}, {3, t.correct}, {1, t.reissue},
		{1, t.refuse}, {3, t.dispute}, {2, t.closeDay}, {3, t.benchTest}, {2, t.benchSample}, {2, t.settle}, {1, t.change}, {8, t.look},
	}
	total := 0
	for _, a := range acts {
		total += a.weight
	}
	for range linesOfWork {
		n := t.IntN(total)
		for _, a := range acts {
			if n -= a.weight; n < 0 {
				a.do()
				break
			}
		}
		t.clock = t.clock.Add(time.Duration(1+t.IntN(170)) * time.Minute)
	}
	t.lookAtAll()
	return t.lines
}

func (t *typist) line(args ...string) {
	t.lines = append(t.lines, transcript.Entry{Now: t.clock.Format("2006-01-02 15:04"), Args: args})
}

// asManager types a line as a manager, or rarely as somebody who may not.
func (t *typist) asManager(args ...string) {
	if t.IntN(15) > 0 {
		args = append(args, "--who", "Mae Orton")
	}
	t.line(args...)
}

func (t *typist) setUp() {
	t.line(append([]string{"setup", "--business", "Our Elevator", "--street", "1 Siding Road", "--town", "Nowhere", "--phone", "555-0100", "--who", "Mae Orton"}, t.house.setup...)...)
	t.line("person", "add", "Cal Reyes", "--who", "Mae Orton")
	t.line("setup", "--weigher", "Cal Reyes", "--who", "Mae Orton")
	t.line("grower", "add", "901", "Estate of R. Pomfret")
	t.line("grower", "add", "102", "Beatrix Holloway", "--share", "102=2/3", "--share", "901=1/3")
	t.line("grower", "add", "103", "Cobb Hollow Farm")
	t.line("truck", "add", "7", "--plate", "ABC 123", "--tare", t.pick("24300", "24000", "12000"))
	t.line("bin", "add", "P1", "Pit 1")
	t.line("bench", "setup", "--authority", "us-official", "--who", "Mae Orton")
	t.line("bench", "meter", "bench-1", "--model", "Example dial meter A", "--method", "dial", "--calibration", "A-2025", "--tolerance", "0.5", "--who", "Mae Orton")
	t.line("bench", "check", "bench-1", "--crop", "corn", "--reference", "16.02", "--reading", t.pick("16.1", "16.0", "17.2"), "--at", "70F", "--name", "R7")
}

func (t typedTexts) pick(words ...string) string { return words[t.IntN(len(words))] }

// some returns the words about one time in n, else none.
func (t typedTexts) some(n int, words ...string) []string {
	if t.IntN(n) > 0 {
		return nil
	}
	return words
}

// load and ticket name one there probably is, mostly the latest.
func (t *typist) load() string   { return "L" + strconv.Itoa(t.near(t.loads)) }
func (t *typist) ticket() string { return strconv.Itoa(t.near(t.tickets)) }

func (t *typist) near(last int) int {
	if t.IntN(3) == 0 {
		return 1 + t.IntN(last+2)
	}
	return max(last-t.IntN(2), 1)
}

func (t *typist) day() string {
	return t.clock.AddDate(0, 0, -t.IntN(3)).Format(time.DateOnly)
}

func (t typedTexts) weight(least int) string {
	if t.metric {
		return fmt.Sprintf("%dkg", (least+t.IntN(least))/20*10)
	}
	if t.IntN(20) == 0 {
		return strconv.Itoa(least + t.IntN(least))
	}
	return strconv.Itoa((least + t.IntN(least)) / 20 * 20)
}

// storedTare is in the unit of the scale and a whole number of its divisions: another the program
// before the rebuild took, and the one after refuses.
func (t typedTexts) storedTare(least int) string {
	text := t.weight(least)
	pounds, err := strconv.Atoi(text)
	if err != nil { // metric, which is whole
		return text
	}
	return strconv.Itoa(pounds / 20 * 20)
}

// results are the tests of a load, sometimes one of them left out.
func (t typedTexts) results(grain string) []string {
	var out []string
	for i, f := range testedFor[grain] {
		if i == 0 && t.IntN(12) > 0 || i > 0 && t.IntN(2) == 0 {
			out = append(out, "--factor", f+"="+t.mild(f))
		}
	}
	return out
}

// mild is a result that most rates take.
func (t typedTexts) mild(factor string) string {
	switch factor {
	case "test-weight":
		if t.metric {
			return fmt.Sprintf("%d.%d", 62+t.IntN(18), t.IntN(10))
		}
		return fmt.Sprintf("%d.%d", 50+t.IntN(10), t.IntN(10))
	case "musty":
		return t.pick("no", "yes", "maybe")
	case "protein":
		return fmt.Sprintf("%d.%d", 10+t.IntN(4), t.IntN(10))
	}
	return fmt.Sprintf("%d.%d", t.IntN(6), t.IntN(10))
}

func (t typedTexts) moisture() string {
	if t.IntN(30) == 0 {
		return t.pick("15,3", "wet", "153")
	}
	return moisture(t.Rand)
}
