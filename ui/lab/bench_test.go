package lab

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/title"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
	"tenthpoint/ui/yard"
)

// benchRoom is the bench of the invented elevator, with a waiting load of soybeans
// as the current one, on the dial meter.
func benchRoom(t testing.TB) (*sessiontest.Room, *Bench) {
	t.Helper()
	r := sessiontest.DemoRoom(t, 120)
	b := NewBench(r.Session)
	b.Begin()
	if b.current.load == nil {
		t.Fatal("no load waits for its test")
	}
	b.Type("method", string(meter.ByDial))
	return r, b
}

// fieldOf finds a field of the bench.
func (b *Bench) fieldOf(t testing.TB, id string) model.Field {
	t.Helper()
	f, found := session.Find(b.Result().Fields, func(f model.Field) bool { return f.ID == id })
	if !found {
		t.Fatalf("the bench has no field %s", id)
	}
	return f
}

// typeAll types into fields, "field text" each.
func (b *Bench) typeAll(lines ...string) {
	for _, line := range lines {
		id, text, _ := strings.Cut(line, " ")
		b.Type(id, text)
	}
}

// test makes a test at a dial reading with all else in order.
func (b *Bench) test(t testing.TB, dial string) {
	t.Helper()
	b.typeAll("mass 250", "temperature 65", "room 68", "dial "+dial)
	sessiontest.Must(t, b.Add())
}

// The message beside a field follows from the text in it.
func TestBenchSaysBesideItsFields(t *testing.T) {
	for name, c := range map[string]struct {
		typed       []string
		field, says string
		state       model.State
	}{
		"the mass asked for":             {nil, "mass", "the chart asks for 250 g", model.Plain},
		"another mass":                   {[]string{"mass 175"}, "mass", "wrong mass", model.Stop},
		"letters for a mass":             {[]string{"mass 2x"}, "mass", "Sample mass", model.Stop},
		"cold grain":                     {[]string{"temperature 36"}, "temperature", "too cold", model.Warn},
		"the other scale":                {[]string{"temperature 18c"}, "temperature", "18 °C", model.Plain},
		"grain and meter apart":          {[]string{"temperature 45", "room 85"}, "temperature", "meter and grain apart", model.Warn},
		"a hot room":                     {[]string{"room 120"}, "room", "room out of range", model.Warn},
		"hot from the dryer":             {[]string{"dryer on"}, "dryer", "hot from the dryer", model.Warn},
		"an overdue meter":               {nil, "meter", "meter overdue", model.Warn},
		"an invented chart":              {nil, "chart", "example chart", model.Warn},
		"the dial's own range":           {nil, "dial", "from 20 to 100", model.Plain},
		"a dial beyond the chart":        {[]string{"mass 250", "temperature 65", "dial 400"}, "dial", "400", model.Stop},
		"a dial on the chart":            {[]string{"mass 250", "temperature 65", "dial 58"}, "dial", "makes ", model.Plain},
		"a dial without its temperature": {[]string{"mass 250", "dial 58"}, "dial", "temperature is missing", model.Stop},
		"no grain of that name":          {[]string{"load none"}, "grain", "Which grain", model.Missing},
	} {
		t.Run(name, func(t *testing.T) {
			_, b := benchRoom(t)
			b.typeAll(c.typed...)
			f := b.fieldOf(t, c.field)
			text := session.OrElse(f.Note, f.Reading)
			if !strings.Contains(text, c.says) || f.State != c.state {
				t.Errorf("%s says %q (%d), want %q (%d)", c.field, text, f.State, c.says, c.state)
			}
		})
	}
}

// On a cell of the chart the test is the cell, to the last place: soybeans at
// dial 60 and 60 °F by the chart's own lines.
func TestBenchReadsTheChart(t *testing.T) {
	r, b := benchRoom(t)
	chart, err := r.Session.Desk.Charts().ByID("example-soybeans-250g")
	sessiontest.Must(t, err)
	row := slices.IndexFunc(chart.Dials(), func(a quantity.Amount) bool { return a.Figure() == "60" })
	column := slices.IndexFunc(chart.Temperatures(), func(a quantity.Amount) bool { return a.Figure() == "60" })
	b.typeAll("mass 250", "temperature 60", "room 65", "dial 60")
	sessiontest.Must(t, b.Add())
	got := b.current.found.testing.Result.Outcomes[0].Step.Value()
	if want := chart.Cell(row, column); !got.Equal(want) {
		t.Errorf("the test is %s, the cell says %s", got, want)
	}
	if w := b.Result().Working(r.Session.Language); len(w) < 10 {
		t.Errorf("the working has %d lines; it should hold the four cells and both parts", len(w))
	}
}

// The policy asks for three tests near the trigger, says why, and the focus stays on the dial until
// they are made.
func TestBenchAsksForMoreTests(t *testing.T) {
	_, b := benchRoom(t)
	b.typeAll("mass 250", "temperature 65", "room 68", "dial 57")
	if next := b.Enter("dial"); next != "dial" {
		t.Fatalf("after one test near the trigger Enter goes to %q; the bench says %v", next, b.Result().Statuses)
	}
	if f := b.Result().Figures[2]; f.Value != "1 of 3" || f.State != model.Warn {
		t.Errorf("tests are shown as %+v", f)
	}
	if !saysWord(b, "near a limit") {
		t.Errorf("why there must be more is not said: %v", b.Result().Statuses)
	}
	b.Type("dial", "57.5")
	b.Enter("dial")
	b.Type("dial", "56.5")
	if next := b.Enter("dial"); next != "" {
		t.Errorf("after the third test Enter goes to %q, want on", next)
	}
	if saysWord(b, "near a limit") {
		t.Error("more tests are asked for after the third")
	}
}

func saysWord(b *Bench, word string) bool {
	return slices.ContainsFunc(b.Result().Statuses, func(s model.Status) bool { return strings.HasPrefix(s.Word, word) })
}

// After the last test the focus goes through what is still empty, field by field, and past what is
// filled, to the button that writes.
func TestBenchGoesOnToWhatIsEmpty(t *testing.T) {
	_, b := benchRoom(t)
	b.test(t, "66")
	texts := map[string]string{"test-weight": "57.5", "number": "N-1", "probes": "4", "place": "B-2"}
	seen := map[string]bool{}
	for at := b.First(); at != "write"; at = b.First() {
		if seen[at] {
			t.Fatalf("the keyboard goes to %s again, though it holds %q", at, b.fieldOf(t, at).Value)
		}
		seen[at] = true
		b.Type(at, session.OrElse(texts[at], "n"))
		if b.fieldOf(t, at).State == model.Stop {
			b.Type(at, "0.5")
		}
	}
	if !seen["test-weight"] || !seen["place"] {
		t.Errorf("the keyboard went to %v", seen)
	}
}

// A test is left out only by a rule that fits, and stays listed.
func TestBenchLeavesOutByRule(t *testing.T) {
	r, b := benchRoom(t)
	for _, dial := range []string{"57", "57.5", "66"} {
		b.test(t, dial)
	}
	if !saysWord(b, "tests differ") {
		t.Fatalf("the spread is not doubted: %v", b.Result().Statuses)
	}
	for _, c := range []struct {
		test   string
		answer map[string]string
		out    bool
	}{
		{"3", map[string]string{"rule": string(moisture.Spoiled)}, false}, // nothing was seen
		{"1", map[string]string{"rule": string(moisture.FarthestFromMiddle)}, false},
		{"3", map[string]string{"rule": string(moisture.FarthestFromMiddle)}, true},
	} {
		decisions{b}.leaveOut(c.test)
		r.Answer(c.answer)
		if got := len(b.current.tests.Exclusions) == 1; got != c.out {
			t.Errorf("leaving out test %s by %v: left out %v, want %v; said %q", c.test, c.answer, got, c.out, r.Last())
		}
	}
	rows := b.Result().Tests
	if len(rows) != 3 || !rows[2].Struck {
		t.Errorf("the tests are listed as %+v", rows)
	}
	if !slices.ContainsFunc(b.Result().Statuses, func(s model.Status) bool { return s.Word == "test 3" && strings.Contains(s.Text, demo.Manager) }) {
		t.Errorf("the test left out is not told with its rule: %v", b.Result().Statuses)
	}
	decisions{b}.leaveOut("3")
	if len(b.current.tests.Exclusions) != 0 {
		t.Error("the test does not count again")
	}
}

// A sample is in the book as it was tested: every test, the other results, and where
// the retained part is kept.
func TestBenchWritesToTheLoad(t *testing.T) {
	r, b := benchRoom(t)
	id := b.current.load.ID
	b.test(t, "66")
	b.typeAll("test-weight 57.5", "probes 4", "place Shelf B-2")
	sessiontest.Must(t, b.Write())
	l, err := office.Load(t.Context(), r.Session.Desk, id)
	sessiontest.Must(t, err)
	m := l.Sample.Moisture
	if m == nil || m.Bench == nil || len(m.Bench.Tests.Readings) != 1 || m.Meter != "D1" {
		t.Fatalf("the book has the moisture %+v", m)
	}
	if l.Sample.Number == "" || l.Sample.Kept != "Shelf B-2" || l.Sample.Until.IsZero() || l.Sample.Probes != "4" {
		t.Errorf("the book has the sample %+v", l.Sample)
	}
	if len(l.Sample.Findings) != 1 || l.Sample.Findings[0].Amount.Figure() != "57.5" {
		t.Errorf("the book has the results %+v", l.Sample.Findings)
	}
	if b.current.id() == id {
		t.Error("the sample is still in hand though others wait")
	}
	b.Take(id)
	if !b.CanPrintLabel() {
		t.Fatal("the sample has no label")
	}
	b.PrintLabel()
	if len(r.Papers) != 1 {
		t.Errorf("printed %d papers; said %q", len(r.Papers), r.Last())
	}
}

// A sample taken from the yard's form goes back there once it is written, and
// the form then shows the bench's moisture.
func TestBenchGoesBackToTheYard(t *testing.T) {
	r := sessiontest.DemoRoom(t, 120)
	y := yard.NewYard(r.Session)
	b := NewBench(r.Session)
	waiting := b.loads[slices.IndexFunc(b.loads, isUntested)]
	y.Take(waiting.ID)
	b.TakeFromYard(y.Form())
	b.Type("method", string(meter.Typed))
	b.typeAll("percent 15.2", "reason certificate 88")
	if next := b.Enter("reason"); next != "" {
		t.Errorf("Enter after the reason goes to %q; said %q", next, r.Last())
	}
	sessiontest.Must(t, b.Write())
	if r.Screen != "yard" {
		t.Errorf("the bench leads to %q, want the yard", r.Screen)
	}
	y.Refresh()
	if got := y.Form().Text("moisture"); got != "15.2" {
		t.Errorf("the yard's form shows the moisture %q", got)
	}
}

// A doubt that the elevator stops tickets for is let through by a manager with a reason; both are
// in the book.
func TestBenchLetsThrough(t *testing.T) {
	r, b := benchRoom(t)
	setup, err := office.BenchSetup(t.Context(), r.Session.Desk)
	sessiontest.Must(t, err)
	setup.Trust.Blocks = append(setup.Trust.Blocks, moisture.Cold)
	sessiontest.Must(t, scalehouse.SetBench(t.Context(), r.Session.Desk, setup))
	sessiontest.Must(t, r.Session.Desk.SignIn(demo.Tester))
	b.Refresh()
	id := b.current.load.ID
	b.typeAll("mass 250", "temperature 36", "room 50", "dial 66")
	sessiontest.Must(t, b.Add())
	if !(decisions{b}).canLetThrough() || b.Result().Figures[0].State != model.Stop {
		t.Fatalf("cold grain does not stop the ticket: %v", b.Result().Statuses)
	}
	decisions{b}.askManager()
	if wrong := r.Answer(map[string]string{"who": demo.Manager}); wrong["reason"] == "" {
		t.Error("let through without a reason")
	}
	r.Answer(map[string]string{"who": demo.Manager, "reason": "grower agrees"})
	l, err := office.Load(t.Context(), r.Session.Desk, id)
	sessiontest.Must(t, err)
	if len(l.Sample.Stops) != 0 || l.Sample.Tester != demo.Tester {
		t.Fatalf("the book has the sample %+v; said %q", l.Sample, r.Last())
	}
	o := l.Sample.Moisture.Bench.Tests.Overrides
	if len(o) != 1 || o[0].By != demo.Manager || o[0].Reason != "grower agrees" {
		t.Errorf("the book has the overrides %+v", o)
	}
	if who := r.Session.Desk.Who().Name; who != demo.Tester {
		t.Errorf("%s is signed in afterwards", who)
	}
	b.Take(id)
	if (decisions{b}).canLetThrough() {
		t.Error("the doubt still asks for a manager")
	}
}

// Grain without a load is only converted: nothing is written, and it can start
// over.
func TestBenchWithoutALoad(t *testing.T) {
	r, b := benchRoom(t)
	b.typeAll("load "+withoutLoad, "grain corn")
	b.test(t, "66")
	if len(b.Result().Tests) != 1 || len(b.Result().Ruler.Marks) == 0 {
		t.Fatalf("no test was made: %q", r.Last())
	}
	if err := b.Write(); !errortest.Incomplete().Met(err) {
		t.Errorf("writing without a load says %v", err)
	}
	sessiontest.Must(t, b.StartOver())
	if len(b.Result().Tests) != 0 || b.current.crop() != "corn" {
		t.Error("starting over keeps tests or forgets the grain")
	}
	b.Type("load", b.loads[0].ID)
	if err := b.StartOver(); err == nil {
		t.Error("the tests of a load were forgotten")
	}
}

// Once a load is whole the bench says what a tenth of a point is worth on it.
func TestBenchSaysWhatATenthIsWorth(t *testing.T) {
	r, b := benchRoom(t)
	d := r.Session.Desk
	id := b.current.load.ID
	details := b.current.load.Details
	details.Bin, details.Under, details.Price, details.PriceSource = "P1", title.OpenStorage, nil, ""
	sessiontest.Must(t, scalehouse.Amend(t.Context(), d, id, details))
	l, err := office.Load(t.Context(), d, id)
	sessiontest.Must(t, err)
	gross, _ := l.Weight(load.Gross, "")
	sessiontest.Must(t, scalehouse.Weigh(t.Context(), d, id, load.Weighing{Which: load.Tare, Weight: quantity.Int(24_120, quantity.Lb), Source: load.ByHand, Reason: "test"}))
	b.Refresh()
	b.test(t, "66")
	if !saysWord(b, "worth") {
		t.Fatalf("gross %s: the worth is not told: %v", gross.Weight, b.Result().Statuses)
	}
}

// An empty house says what to do first.
func TestBenchOfAnEmptyHouse(t *testing.T) {
	r := sessiontest.EmptyRoom(t)
	b := NewBench(r.Session)
	if hint := b.Hint(); !strings.Contains(hint, "No meter is set up") {
		t.Errorf("the hint is %q", hint)
	}
	if b.First() != "load" || b.current.typed.method() != meter.Typed {
		t.Errorf("the bench begins on %s by %s", b.First(), b.current.typed.method())
	}
	if len(b.Result().Statuses) == 0 {
		t.Error("nothing says what to do")
	}
}

// At the bench the advice follows what is typed, before it is recorded.
func TestGradeAdviceFollowsTheBench(t *testing.T) {
	_, b := benchRoom(t)
	b.test(t, "62")
	if saysWord(b, "would grade") {
		t.Errorf("graded by nothing: %+v", b.Result().Statuses)
	}
	b.typeAll("foreign-material 2.4")
	saying, found := session.Find(b.Result().Statuses, func(s model.Status) bool { return s.Word == "would grade" })
	if !found || !strings.Contains(saying.Text, "no better than U.S. No. 3 (advisory, not official)") || !strings.Contains(saying.Text, "Foreign material 2.4 % is over 2.0 %, the most for U.S. No. 2.") {
		t.Errorf("the bench says %+v", b.Result().Statuses)
	}
	if !strings.Contains(sessiontest.TextOf(b.Result().Working(b.session.Language)), "GRADE, ADVICE ONLY") {
		t.Errorf("the working says\n%s", sessiontest.TextOf(b.Result().Working(b.session.Language)))
	}
}

// While the tests of a sample differ, the next figure is another test: the keyboard
// stays in the dial, where it would otherwise pass for a test weight.
func TestTheKeyboardStaysInTheDialWhileTestsDiffer(t *testing.T) {
	_, b := benchRoom(t)
	for i, dial := range []string{"50", "66", "50", "66"} {
		b.typeAll("mass 250", "temperature 65", "room 68", "dial "+dial)
		next := b.Enter("dial")
		if differ := i > 0; differ && next != "dial" {
			t.Errorf("after test %d the keyboard goes to %q: %+v", i+1, next, b.current.found.testing.Result.Flags)
		}
	}
	if !b.current.found.isComplete() || b.current.found.isSettled() {
		t.Errorf("tests of 50 and 66: complete %v, settled %v", b.current.found.isComplete(), b.current.found.isSettled())
	}
	if first := b.First(); first != "dial" {
		t.Errorf("whoever comes back begins at %q", first)
	}
}
