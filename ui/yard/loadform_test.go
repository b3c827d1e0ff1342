package yard

import (
	"context"
	"strings"
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// wholeCorn is everything a load of corn needs, in working order.
var wholeCorn = [][2]string{
	{"grower", "123"}, {"commodity", "corn"}, {"truck", "77"}, {"gross", "52300"}, {"moisture", "17.2"},
	{"test-weight", "56.4"}, {"tare", "24120"}, {"bin", "P1"}, {"terms", "sold"}, {"price", "4.15"},
}

// fillIn types fields into a form.
func fillIn(f *LoadForm, fields [][2]string) {
	for _, field := range fields {
		f.Type(field[0], field[1])
	}
}

// corn is a form on which a load of corn has been typed, but for a field left out.
func corn(r *sessiontest.Room, without ...string) *LoadForm {
	f := NewLoadForm(r.Session, nil)
	for _, field := range wholeCorn {
		if len(without) == 0 || field[0] != without[0] {
			f.Type(field[0], field[1])
		}
	}
	return f
}

// A typed text is answered beside its field at once: how it was understood, or what
// is wrong with it.
func TestEveryTypedTextIsAnswered(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	tests := []struct {
		field, text string
		state       model.State
		want        string // part of what is said beside the field
	}{
		{"gross", "52,300", model.Plain, "typed by hand"},
		{"gross", "52300 lb", model.Plain, "typed by hand"},
		{"gross", "52,30", model.Stop, "does not part thousands"},
		{"gross", "52310", model.Stop, "not a whole number of divisions of 20 lb"},
		{"gross", "130000", model.Stop, "105 %"},
		{"gross", "-52300", model.Stop, "Gross"},
		{"gross", "truck", model.Stop, "is not a number"},
		{"gross", "52300 kg", model.Stop, "is in kg, not in lb"},
		{"tare", "54320", model.Stop, "Net would be -2,020 lb (gross 52,300 - tare 54,320)"},
		{"tare", "52300", model.Stop, "Net would be 0 lb"},
		{"tare", "51800", model.Warn, "under the smallest load of 1,000 lb"},
		{"moisture", "17.25", model.Plain, "recorded as 17.3 %"},
		{"moisture", "17.2", model.Plain, "typed at the desk"},
		{"moisture", "17,2", model.Stop, "write a decimal with a point, such as 17.2"},
		{"moisture", "1.72", model.Stop, "outside 3 % to 60 %"},
		{"moisture", "", model.Plain, ""},
		{"test-weight", "56.44", model.Plain, "recorded as 56.4 lb/bu"},
		{"test-weight", "564", model.Stop, "outside 10 lb/bu to 90 lb/bu"},
		{"test-weight", "40", model.Stop, "under the limit of 42.0 lb/bu"},
		{"musty", "n", model.Plain, "not present"},
		{"musty", "yes", model.Plain, "present"},
		{"musty", "maybe", model.Stop, "yes or no"},
		{"heating", "y", model.Stop, "let a manager accept it"},
		{"price", "4.15", model.Plain, "typed at the desk"},
		{"price", "", model.Plain, "price not set"},
		{"price", "$4.15", model.Plain, "typed at the desk"},
		{"price", "4.15 $/cwt", model.Stop, "$/cwt"},
		{"price", "0", model.Stop, "Price"},
		{"grower", "winifred", model.Plain, "123 Winifred Aske"},
		{"grower", "holl", model.Stop, "Type the code of one: 102 Beatrix Holloway, 103 Cobb Hollow Farm"},
		{"bin", "ZZ", model.Stop, `There is no pit or bin "ZZ" here`},
		{"bin", "p1", model.Plain, ""},
		{"grower", "nobody", model.Stop, `No grower has the code or name "nobody"`},
		{"commodity", "rye", model.Stop, `"rye" is not taken here`},
		{"terms", "C-0000", model.Stop, `There is no contract "C-0000"`},
		{"truck", "99", model.Plain, "not seen before"},
	}
	for _, tt := range tests {
		t.Run(tt.field+" "+tt.text, func(t *testing.T) {
			f := corn(r)
			f.Type(tt.field, tt.text)
			got := sessiontest.FieldOf(t, f, tt.field)
			said := got.Note
			if said == "" {
				said = got.Reading
			}
			if got.Value != tt.text {
				t.Errorf("the field shows %q, not what was typed", got.Value)
			}
			if got.State != tt.state || !strings.Contains(said, tt.want) {
				t.Errorf("said %d %q, want %d with %q", got.State, said, tt.state, tt.want)
			}
			if stops := tt.state == model.Stop || got.Missing || len(f.Now.asked) > 0; f.Now.CanIssue() == stops {
				t.Errorf("the ticket can be issued: %v", f.Now.CanIssue())
			}
		})
	}
}

// A load lacks what the slip lacks, field by field, until it is whole.
func TestWhatIsMissingIsNamed(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	for _, id := range []string{"grower", "commodity", "truck", "gross", "moisture", "tare"} {
		f := corn(r, id)
		f.Type(id, "") // it may have been offered from what was typed before
		if got := f.Now.FirstMissing(); got != id {
			t.Errorf("without %s the first field missing is %q", id, got)
		}
		if !sessiontest.FieldOf(t, f, id).Missing || f.Now.CanIssue() || f.Now.WhyNotIssue() == "" {
			t.Errorf("without %s: missing %v, can issue %v, why not %q", id, sessiontest.FieldOf(t, f, id).Missing, f.Now.CanIssue(), f.Now.WhyNotIssue())
		}
	}
	if f := corn(r); f.Now.FirstMissing() != "" || !f.Now.CanIssue() || f.Now.WhyNotIssue() != "" {
		t.Errorf("a whole load lacks %q: %s", f.Now.FirstMissing(), f.Now.WhyNotIssue())
	}
}

// The fields of a load follow the work, and those of the grain follow its
// rates.
func TestFieldsFollowTheGrain(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	for commodity, want := range map[string]string{
		"":          "grower commodity truck gross moisture test-weight tare bin terms price remark",
		"corn":      "grower commodity truck gross moisture test-weight damage bcfm musty heating tare bin terms price remark",
		"soybeans":  "grower commodity truck gross moisture test-weight damage heat-damage splits foreign-material tare bin terms price remark",
		"wheat-hrw": "grower commodity truck gross moisture test-weight damage foreign-material shrunken-broken protein smut-odor dockage tare bin terms price remark",
	} {
		f := NewLoadForm(r.Session, nil)
		f.Type("commodity", commodity)
		got := map[string]bool{}
		var ids []string
		for _, field := range f.Fields() {
			ids = append(ids, field.ID)
			got[field.ID] = true
		}
		for _, id := range strings.Fields(want) {
			if !got[id] {
				t.Errorf("the form of %q does not ask for %s: %v", commodity, id, ids)
			}
		}
		if len(ids) != len(strings.Fields(want)) {
			t.Errorf("the form of %q asks for %v, want %s", commodity, ids, want)
		}
		if i := strings.Index(strings.Join(ids, " "), "gross moisture test-weight"); i < 0 {
			t.Errorf("the form of %q is not in working order: %v", commodity, ids)
		}
	}
}

// A text is in the book once its field is left: another desk on the same book has
// the load half entered. Texts that are not valid were not written.
func TestDraftsAreInTheBook(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := NewLoadForm(r.Session, nil)
	sessiontest.Must(t, f.Commit())
	if f.ID() != "" {
		t.Fatal("a blank form was written down")
	}
	fillIn(f, [][2]string{{"grower", "123"}, {"commodity", "corn"}, {"gross", "52300"}, {"tare", "12"}, {"moisture", "17.2"}})
	sessiontest.Must(t, f.Commit())
	l, err := office.Load(context.Background(), r.Session.Desk, f.ID())
	sessiontest.Must(t, err)
	gross, _ := l.Weight(load.Gross, "")
	_, hasTare := l.Weight(load.Tare, "")
	if l.Details.Grower.Name != "Winifred Aske" || gross.Weight.Figure() != "52,300" || hasTare || l.Sample.Moisture == nil {
		t.Errorf("the book has %+v", l)
	}
	if gross.Source != load.ByHand || l.Sample.Tester != demo.Manager {
		t.Errorf("source %q, tester %q", gross.Source, l.Sample.Tester)
	}
	if got := sessiontest.FieldOf(t, f, "tare"); got.Value != "12" || got.State != model.Stop || !f.IsTyped("tare") {
		t.Errorf("what could not stand is %+v", got)
	}
	facts := len(mustFacts(t, r, f.ID()))
	sessiontest.Must(t, f.Commit())
	if again := len(mustFacts(t, r, f.ID())); again != facts {
		t.Errorf("leaving a field that has not changed wrote %d facts", again-facts)
	}
}

// A weight once taken can be replaced, which strikes the first, and never removed.
// Escape puts back what the book has.
func TestWeightsAreReplacedNotRemoved(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	f := corn(r)
	sessiontest.Must(t, f.Commit())
	f.Type("gross", "")
	if got := sessiontest.FieldOf(t, f, "gross"); got.State != model.Stop || !strings.Contains(got.Note, "can be replaced, not taken away") {
		t.Errorf("an emptied weight says %q", got.Note)
	}
	if !f.Restore("gross") || f.Text("gross") != "52,300" || f.Restore("gross") {
		t.Errorf("Escape put back %q", f.Text("gross"))
	}
	f.Type("gross", "52,320")
	sessiontest.Must(t, f.Commit())
	if struck := f.inBook().Struck; len(struck) != 1 || struck[0].Weight.Figure() != "52,300" {
		t.Errorf("struck %+v", struck)
	}
}

func mustFacts(t *testing.T, r *sessiontest.Room, id string) []string {
	t.Helper()
	facts, err := r.Session.Desk.Book().FactsOf(context.Background(), "load "+id)
	sessiontest.Must(t, err)
	kinds := make([]string, len(facts))
	for i, f := range facts {
		kinds[i] = f.Kind
	}
	return kinds
}

// Stored grain takes no price: the form says so at the price, and the load is not
// issued.
func TestStoredGrainTakesNoPrice(t *testing.T) {
	f := corn(sessiontest.EmptyDemo(t))
	f.Type("terms", "stored")
	f.Type("price", "5")
	if f.Now.CanIssue() || f.Now.FirstMissing() != "price" || !strings.Contains(f.Now.WhyNotIssue(), "Stored grain has no price") {
		t.Errorf("can issue %v, keyboard on %q: %s", f.Now.CanIssue(), f.Now.FirstMissing(), f.Now.WhyNotIssue())
	}
	f.Type("price", "")
	if !f.Now.CanIssue() {
		t.Errorf("stored without a price: %s", f.Now.WhyNotIssue())
	}
}

// Why there are no rates is said beside the commodity from the first, not only
// when the load is whole.
func TestNoRatesAreSaidBesideTheCommodity(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	p := r.Session.Desk.Profile()
	p.Grains = append(p.Grains, elevator.GrainRule{Commodity: "rye", Schedule: "unwritten"})
	sessiontest.Must(t, scalehouse.SetProfile(context.Background(), r.Session.Desk, p))
	f := NewLoadForm(r.Session, nil)
	f.Type("commodity", "rye")
	if got := sessiontest.FieldOf(t, f, "commodity"); got.State != model.Stop || !strings.Contains(got.Note, "no rates are in force for rye") {
		t.Errorf("beside the commodity stands %d %q", got.State, got.Note)
	}
}

// The reason why no ticket is issued names the wrong field once.
func TestTheWrongFieldIsNamedOnce(t *testing.T) {
	r := sessiontest.EmptyDemo(t)
	f := NewYard(r.Session).Form()
	fillIn(f, [][2]string{{"grower", "123"}, {"commodity", "corn"}, {"truck", "A"}, {"gross", "52300"}, {"tare", "2"}})
	if why := f.Now.WhyNotIssue(); strings.Count(why, "Tare") != 1 {
		t.Errorf("F12 says %q", why)
	}
}
