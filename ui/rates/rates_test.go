package rates

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/checker"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/examiner"
	"tenthpoint/internal/office/posting"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/settle/trial"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
)

func TestRatesList(t *testing.T) {
	r := NewRates(sessiontest.DemoRoom(t, 20).Session)
	r.Reload()
	rows := r.Rows()
	if len(rows) != len(r.session.Desk.Rates().All()) {
		t.Errorf("%d rows, %d editions", len(rows), len(r.session.Desk.Rates().All()))
	}
	stand := map[string]string{}
	used := 0
	for i, row := range rows {
		stand[row.Key] = row.Cells[3]
		if row.State == model.OK {
			used++
			if i >= len(r.session.Desk.Profile().Grains) {
				t.Errorf("%s is in use and stands at %d", row.Key, i)
			}
		}
		if row.Cells[2] != "EXAMPLE" {
			t.Errorf("%s has no mark: %q", row.Key, row.Cells)
		}
	}
	if used != len(r.session.Desk.Profile().Grains) {
		t.Errorf("%d editions are in use", used)
	}
	for id, want := range map[string]string{
		"corn-main-2025-b": "used here", "corn-main-2025": "corrected", "corn-river-2025": "in force", "corn-main-2026": "from 2026-08-01",
	} {
		if stand[id] != want {
			t.Errorf("%s is %q, want %q", id, stand[id], want)
		}
	}
	if r.Chosen() != rows[0].Key || !r.HasEdition() {
		t.Errorf("current is %q", r.Chosen())
	}
}

// An edition whose file was changed under its id is marked once tickets use the old text.
func TestRewrittenRates(t *testing.T) {
	r := NewRates(sessiontest.DemoRoom(t, 20).Session)
	var all []*rates.Edition
	for _, e := range r.session.Desk.Rates().All() {
		if e.ID == "corn-main-2025-b" {
			changed, err := rates.Read("corn.toml", append([]byte("# a remark\n"), e.Text...))
			sessiontest.Must(t, err)
			e = changed
		}
		all = append(all, e)
	}
	set, problems := rates.NewSet(all...)
	sessiontest.Must(t, problems.Err())
	r.session.Desk.UseRates(set)
	r.Reload()
	for _, row := range r.Rows() {
		if marked := row.Cells[3] == "text changed"; marked != (row.Key == "corn-main-2025-b") {
			t.Errorf("%s is %q", row.Key, row.Cells[3])
		}
	}
	room := r.session.Window.(*sessiontest.Room)
	SayRewritten(r.session)
	sessiontest.WantSaid(t, room, model.Warn, "corn-main-2025-b was changed")
	r.Choose("corn-main-2025-b")
	if h := r.Headline(); h.State != model.Warn || !strings.Contains(h.Text, "another text of corn-main-2025-b") {
		t.Errorf("the headline is %+v", h)
	}
}

func TestRatesSay(t *testing.T) {
	r := NewRates(sessiontest.DemoRoom(t, 0).Session)
	r.Reload()
	r.Choose("corn-main-2025-b")
	h := r.Headline()
	if h.State != model.Warn || !strings.HasPrefix(h.Text, "EXAMPLE, not for trade") || !strings.Contains(h.Text, "Corrects corn-main-2025.") {
		t.Errorf("the headline is %+v", h)
	}
	text := sessiontest.TextOf(r.Paper())
	e := r.edition()
	for _, l := range e.Lines() {
		if !strings.Contains(text, l.Label.String()+" | ") || !strings.Contains(text, l.Value.String()) {
			t.Errorf("the rows leave out %q %q", l.Label, l.Value)
		}
	}
}

// The trial is the settlement's own, at every moisture of the grid.
func TestRatesTry(t *testing.T) {
	r := NewRates(sessiontest.DemoRoom(t, 200).Session)
	r.Reload()
	for _, id := range []string{"corn-main-2025-b", "corn-statute-2025", "soybeans-main-2025", "sorghum-main-2025"} {
		r.Choose(id)
		e := r.edition()
		tried := r.loads.on(e)
		want := trial.Of(e, tried.under(e), grid(e)).Records()[1:]
		rows := r.Trial().Rows
		if len(rows) != len(want) {
			t.Fatalf("%s: %d rows, want %d", id, len(rows), len(want))
		}
		taken := 0
		for i, row := range rows {
			record := want[i]
			if refused := record[len(record)-1]; refused != "" {
				if row.State != model.Stop || !strings.Contains(r.Trial().Said(row.Key), strings.SplitN(refused, "\n", 2)[0]) {
					t.Errorf("%s at %s is refused and says %q", id, row.Key, r.Trial().Said(row.Key))
				}
				continue
			}
			if len(row.Cells) != len(r.Trial().Columns) {
				t.Errorf("%s at %s: %d cells under %d headings", id, row.Key, len(row.Cells), len(r.Trial().Columns))
			}
			plain := strings.ReplaceAll(strings.Join(row.Cells, " "), ",", "")
			for _, column := range []int{5, 6, 8} { // dry, settled, charges
				if !strings.Contains(plain, record[column]) {
					t.Errorf("%s at %s: %q lacks %q", id, row.Key, plain, record[column])
				}
			}
			if row.Cells[2] != session.NoFigure {
				taken++
			}
		}
		if taken == 0 || taken == len(rows) {
			t.Errorf("%s: water is taken at %d of %d moistures; the grid must show both", id, taken, len(rows))
		}
		if !strings.Contains(r.Tried(), "ticket ") {
			t.Errorf("%s: %s", id, r.Tried())
		}
	}
}

// What is taken from the owner has a minus in a trial, and what is added a plus.
func TestRatesTryHasTheOwnersSigns(t *testing.T) {
	r := NewRates(sessiontest.DemoRoom(t, 0).Session)
	r.Reload()
	r.Choose("wheat-hrw-main-2025") // a premium for protein, drying for wet wheat
	e := r.edition()
	facts := r.loads.on(e).under(e)
	facts.Findings = append(facts.Findings, settle.Finding{Factor: "protein", Amount: quantity.Of("13.4", quantity.Percent)})
	rows := slices.DeleteFunc(trial.Of(e, facts, grid(e)).Rows, func(row trial.Row) bool { return row.Settlement == nil })
	if dry, wet := offAndOn(rows[0]), offAndOn(rows[len(rows)-1]); !strings.HasPrefix(dry, "+") || !strings.HasPrefix(wet, "-") {
		t.Errorf("dry wheat has %q, wet wheat %q", dry, wet)
	}
}

func TestRatesTryWithoutTickets(t *testing.T) {
	r := NewRates(sessiontest.DemoRoom(t, 0).Session)
	r.Reload()
	r.Choose("corn-main-2025-b")
	if !strings.Contains(r.Tried(), "ordinary truck") || !strings.Contains(r.Tried(), "17 %") {
		t.Errorf("without tickets: %s", r.Tried())
	}
	if rows := r.Trial().Rows; len(rows) < 20 || rows[len(rows)-1].State == model.Stop {
		t.Errorf("%d rows, the last %+v", len(rows), rows[len(rows)-1])
	}
}

// Every shipped edition can be tried before the first truck of its grain has
// come, and at least at the driest moisture it turns nothing away.
func TestRatesTryEveryEdition(t *testing.T) {
	r := NewRates(sessiontest.DemoRoom(t, 0).Session)
	r.Reload()
	for _, row := range r.Rows() {
		r.Choose(row.Key)
		if first := r.Trial().Rows[0]; first.State == model.Stop {
			t.Errorf("%s: %s", row.Key, r.Trial().Said(first.Key))
		}
	}
}

func TestRatesAskLoad(t *testing.T) {
	room := sessiontest.DemoRoom(t, 0)
	r := NewRates(room.Session)
	r.Reload()
	r.Choose("corn-main-2026")
	r.AskLoad()
	for field, typed := range map[string]string{"net": "some", "moisture": "120", "price": "-1", "test-weight": "heavy"} {
		if wrong := room.Answer(map[string]string{field: typed}); wrong[field] == "" {
			t.Errorf("%s %q is taken", field, typed)
		}
	}
	room.Answer(map[string]string{"net": "28,180", "moisture": "17.2", "price": "4.15", "test-weight": "53.6"})
	if !strings.Contains(r.Tried(), "net 28,180 lb, 17.2 %, $4.15/bu") {
		t.Errorf("tried: %s", r.Tried())
	}
	// The figures of the load worked in the handbook.
	cells := map[string]string{}
	for _, row := range r.Compared().Rows {
		cells[row.Key] = row.Cells[1]
	}
	for id, want := range map[string]string{"net": "28,180 lb", "shrink.water": "729 lb", "handling": "141 lb", "quantity": "487.68 bu", "drying": "$56.61", "payable": "$1,957.51"} {
		if cells[id] != want {
			t.Errorf("%s is %s, want %s", id, cells[id], want)
		}
	}
	if said := r.Compared().Said(""); !strings.Contains(said, "141 lb, which is 0.50 %") || !strings.Contains(said, "0 lb in the shrink itself, 141 lb as handling") {
		t.Errorf("beyond the water: %s", said)
	}
}

// Two editions beside each other and the pure water formula: every difference
// is the second figure less the first.
func TestRatesCompare(t *testing.T) {
	room := sessiontest.DemoRoom(t, 200)
	r := NewRates(room.Session)
	r.Reload()
	r.Choose("corn-main-2025-b")
	if r.otherEdition().ID != "corn-main-2025" {
		t.Errorf("it is set beside %s, not the one it corrects", r.otherEdition().ID)
	}
	r.AskOther()
	room.Answer(map[string]string{"other": "corn-statute-2025"})
	if r.Shows() != RatesCompare || r.Compared().Columns[2].Title != "corn-statute-2025" {
		t.Errorf("shown is %d, %+v", r.Shows(), r.Compared().Columns)
	}
	mine, theirs := r.edition(), r.otherEdition()
	tried := r.loads.on(mine)
	a, err := settle.Settle(tried.under(mine), mine)
	sessiontest.Must(t, err)
	b, err := settle.Settle(tried.under(theirs), theirs)
	sessiontest.Must(t, err)
	lines, says := settle.Compare(a, b).Lines, 0
	for _, row := range r.Compared().Rows {
		if strings.HasPrefix(row.Key, "says ") {
			says++
			if full := r.Compared().Said(row.Key); !strings.Contains(full, row.Cells[1]) || !strings.Contains(full, row.Cells[2]) {
				t.Errorf("%s is said as %q", row.Key, full)
			}
			continue
		}
		if len(lines) == 0 {
			continue // only under the water formula
		}
		l := lines[0]
		lines = lines[1:]
		if row.Key != l.ID || row.Cells[1] != stepCell(room.Session.Language, l.Before) || row.Cells[2] != stepCell(room.Session.Language, l.After) || (row.State == model.Warn) != (l.Change != nil && !l.Change.Value().IsZero()) {
			t.Errorf("line %s shows %q", l.ID, row.Cells)
		}
	}
	if len(lines) > 0 || says == 0 {
		t.Errorf("%d lines are left out, %d rules differ", len(lines), says)
	}
	if said := r.Compared().Said(""); !strings.Contains(said, "Beyond the pure water formula corn-main-2025-b takes") {
		t.Errorf("beyond the water: %s", said)
	}
}

// What cannot be settled says why in place of figures.
func TestRatesCompareRefused(t *testing.T) {
	room := sessiontest.DemoRoom(t, 0)
	r := NewRates(room.Session)
	r.Reload()
	r.Choose("corn-main-2026")
	r.AskLoad()
	room.Answer(map[string]string{"test-weight": "40"})
	if said := r.Compared().Said(""); len(r.Compared().Rows) != 0 || !strings.Contains(said, "Under corn-main-2026: ") {
		t.Errorf("%d rows, %s", len(r.Compared().Rows), said)
	}
}

func TestRatesSchedule(t *testing.T) {
	room := sessiontest.DemoRoom(t, 0)
	sessiontest.Must(t, room.Session.Desk.SignIn(demo.Clerk))
	r := NewRates(room.Session)
	r.Reload()
	r.Choose("corn-river-2025")
	r.AskSchedule()
	if wrong := room.Answer(map[string]string{"schedule": "river"}); wrong["who"] == "" {
		t.Error("a clerk changes the schedule")
	}
	room.Answer(map[string]string{"schedule": "river", "who": demo.Manager})
	if schedule, _ := room.Session.Desk.Profile().Schedule("corn"); schedule != "river" {
		t.Errorf("corn is settled under %s", schedule)
	}
	sessiontest.WantSaid(t, room, model.OK, "Corn is settled under schedule river")
	if statusOf(r.session, r.edition()) != usedToday || room.Session.Desk.Who().Name != demo.Clerk {
		t.Error("the edition is not in use, or somebody else is at the desk")
	}
}

// House files: mistakes are named by file and line and change nothing; files
// without mistakes put the examples of their line out of force.
func TestRatesReadAgain(t *testing.T) {
	room := sessiontest.DemoRoom(t, 0)
	folder := t.TempDir()
	room.Session.RatesFolder = folder
	r := NewRates(room.Session)
	r.Reload()
	example, _ := room.Session.Desk.Rates().ByID("corn-main-2026")
	house := strings.NewReplacer(`id = "corn-main-2026"`, `id = "corn-house-1"`, `status = "example"`, `status = "house"`, `from = "2026-08-01"`, `from = "2025-08-01"`).Replace(string(example.Text))
	broken := strings.Replace(house, `trigger = "15.0 %"`, `trigger = "15.0"`, 1)
	sessiontest.Must(t, os.WriteFile(filepath.Join(folder, "corn.toml"), []byte(broken), 0o600))
	before := len(room.Session.Desk.Rates().All())
	r.ReadAgain()
	sessiontest.WantSaid(t, room, model.Stop, "mistakes")
	text := sessiontest.TextOf(r.Paper())
	line := 1 + strings.Count(broken[:strings.Index(broken, `trigger = "15.0"`)], "\n")
	if r.Shows() != RatesProblems || !strings.Contains(text, "corn.toml:"+quantity.Int(int64(line), quantity.Plain).Figure()) {
		t.Errorf("the mistake in line %d is told as:\n%s", line, text)
	}
	if len(room.Session.Desk.Rates().All()) != before {
		t.Error("a file with a mistake changed what is in force")
	}
	sessiontest.Must(t, os.WriteFile(filepath.Join(folder, "corn.toml"), []byte(house), 0o600))
	r.ReadAgain()
	sessiontest.WantSaid(t, room, model.OK, "1 of them your own")
	if _, still := room.Session.Desk.Rates().ByID("corn-main-2025-b"); still {
		t.Error("the example is in force beside the house's own")
	}
	if text := sessiontest.TextOf(r.Paper()); !strings.Contains(text, "corn-house-1 | house") || !strings.Contains(text, "no mistake") {
		t.Errorf("afterward the sheet says:\n%s", text)
	}
}

func TestRatesWithoutAny(t *testing.T) {
	room := sessiontest.EmptyRoom(t)
	room.Session.RatesWrong = []message.Text{message.Name("corn.toml:3: x is not a key")}
	r := NewRates(room.Session)
	r.Choose("nothing")
	if r.Shows() != RatesProblems || !strings.Contains(sessiontest.TextOf(r.Paper()), "corn.toml:3") {
		t.Error("the mistakes are not in front")
	}
	if r.HasEdition() || len(r.Trial().Rows) != 0 || len(r.Compared().Rows) != 0 || r.Headline().Text != "" {
		t.Error("an edition that is not there says something")
	}
}

// The page for growers posts the rates in use, and keeps those that tickets were settled under.
func TestPageForGrowers(t *testing.T) {
	room := sessiontest.DemoRoom(t, 40)
	r := NewRates(room.Session)
	savePage(r)
	sessiontest.WantSaid(t, room, model.Warn, "no folder")
	files := drawer{}
	room.Session.Files = files
	used, err := room.Session.Desk.Reader().EditionHashes(t.Context())
	sessiontest.Must(t, err)
	all := room.Session.Desk.Rates().All()
	old := slices.IndexFunc(all, func(e *rates.Edition) bool { return slices.Contains(used[e.ID], e.Hash) })
	rest := append(slices.Clone(all[:old]), all[old+1:]...)
	set, problems := rates.NewSet(rest...)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	room.Session.Desk.UseRates(set)

	savePage(r)
	sessiontest.WantSaid(t, room, model.OK, "the page for growers")
	if text := files[growersPage]; !bytes.Contains(text, []byte("wasm")) {
		t.Errorf("the page has %d bytes and no engine", len(text))
	}
	posted, err := posting.House(t.Context(), room.Session.Desk)
	sessiontest.Must(t, err)
	kept := func(e *rates.Edition) bool {
		return slices.ContainsFunc(posted.Kept, func(f checker.File) bool { return f.Text == string(e.Text) })
	}
	if len(posted.Editions) != len(rest) || !kept(all[old]) || slices.ContainsFunc(rest, kept) {
		t.Errorf("the page posts %d editions and keeps %d; the one taken out is kept: %v", len(posted.Editions), len(posted.Kept), kept(all[old]))
	}
}

// drawer keeps files in memory. Nobody puts a set of them in.
type drawer map[string][]byte

func (drawer) SaveSet(context.Context, string, []examiner.File) (string, error) {
	return "", errors.ErrUnsupported
}

func (d drawer) Save(_ context.Context, name string, data []byte) (string, error) {
	d[name] = data
	return name, nil
}
