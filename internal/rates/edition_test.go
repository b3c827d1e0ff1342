package rates_test

import (
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/handling"
	"tenthpoint/internal/rates/shrink"
)

func fixture(t *testing.T, name string) *rates.Edition {
	t.Helper()
	e, err := readFixture(t, filepath.Join(fixtures, name))
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// A ticket keeps the hash of the text it was settled under; a comment moved is
// another text.
func TestEditionKeepsItsText(t *testing.T) {
	e := fixture(t, "good/corn-plain.toml")
	text, err := os.ReadFile(filepath.Join(fixtures, "good/corn-plain.toml"))
	if err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256(text)
	if string(e.Text) != string(text) || e.Hash != hex.EncodeToString(sum[:]) {
		t.Error("the edition's text or hash is not the file's")
	}
	other, err := rates.Read("other", append(text, "# posted again\n"...))
	if err != nil || other.Hash == e.Hash {
		t.Errorf("a changed text has the same hash: %v", err)
	}
}

// Every cell is quoted by its place.
func TestCellsNameTheirPlace(t *testing.T) {
	e := fixture(t, "good/barley-full.toml")
	lines := strings.Split(string(e.Text), "\n")
	for _, c := range []struct {
		source message.Text
		want   string
	}{
		{e.Shrink.Trigger.Source, `trigger = "14.8 %"`},
		{e.Shrink.Rows[1].Cell.Source, `shrink = "3.0 %"`},
		{e.Drying.Bands[1].Cell.Source, `rate = "0.06 $/bu/pt"`},
		{e.Discounts[1].Rows[2].Cell.Source, `premium = "2 %"`},
		{e.Discounts[2].RefuseUnder.Source, `refuse_under = "50.0 kg/hL"`},
		{e.Discounts[4].Source, "[[discount]]"},
		{e.Shares.Source, `remainder = "largest"`},
		{message.New("%v: %s", e.ID, message.New("%v, line %d", "x", 1)), "# Every form of rule, in metric units."},
		{e.Discounts[0].Cap.Source, `cap = "5 %"`},
		{e.Discounts[3].Cell.Source, `discount = "4.00 $/t"`},
		{e.Shrink.CreditFloor.Source, `over_dry_floor = "12.0 %"`},
		{e.Drying.Step.Source, `step = "0.5 up"`},
		{e.Handling.Source, "[handling]"},
		{e.Discounts[0].RefuseOver.Source, `refuse_over = "28.0 %"`},
		{e.Dockage.Source, "[dockage]"},
		{e.Discounts[1].Source, "[[discount]]"},
		{e.Drying.Minimum.Source, `minimum = "12.50 $"`},
		{e.Shrink.Source, "[shrink]"},
	} {
		n, _ := e.LineOf(c.source)
		if n < 1 || n > len(lines) || lines[n-1] != c.want {
			t.Errorf("%s does not lead to %s", c.source, c.want)
		}
	}
}

func TestDiffNamesEveryLine(t *testing.T) {
	plain, points := fixture(t, "good/corn-plain.toml"), fixture(t, "good/corn-points.toml")
	if d := rates.Diff(plain, plain); len(d) != 0 {
		t.Errorf("an edition differs from itself: %v", d)
	}
	got := map[string][2]string{}
	for _, c := range rates.Diff(plain, points) {
		got[c.Key] = [2]string{c.Before.String(), c.After.String()}
	}
	for key, want := range map[string][2]string{
		"edition.id":              {"corn-plain", "corn-points"},
		"edition.corrects":        {"", "corn-earlier"},
		"shrink.trigger":          {"15.0 %", "15.5 %"},
		"shrink.rate":             {"", "1.4 %/pt"},
		"handling.rate":           {"", "0.5 %"},
		"drying.band over 20.0 %": {"", "$0.05/bu/pt"},
	} {
		if got[key] != want {
			t.Errorf("%s: %q, want %q", key, got[key], want)
		}
	}
	if _, same := got["units.bushel"]; same {
		t.Error("the bushel weight is the same in both and is listed")
	}
	// The other way round the two sides change places and nothing else.
	back := rates.Diff(points, plain)
	if len(back) != len(got) {
		t.Errorf("%d lines one way, %d the other", len(got), len(back))
	}
	for _, c := range back {
		if (c.BeforeAt > 0) != (!c.Before.IsZero()) || (c.AfterAt > 0) != (!c.After.IsZero()) {
			t.Errorf("%s is said to stand on lines %d and %d", c.Key, c.BeforeAt, c.AfterAt)
		}
		if got[c.Key] != [2]string{c.After.String(), c.Before.String()} {
			t.Errorf("%s is not the same the other way round", c.Key)
		}
	}
}

func TestPureWaterTakesNothingElse(t *testing.T) {
	points := fixture(t, "good/corn-points.toml")
	bare := rates.PureWater(points)
	if bare.Shrink.Method != shrink.Water || bare.Handling.Method != handling.None || bare.Hash != "" || bare.Text != nil {
		t.Errorf("bare edition: %+v", bare)
	}
	if !bare.Shrink.Trigger.Amount.Equal(points.Shrink.Trigger.Amount) || !bare.Shrink.To.Amount.Equal(points.Shrink.To.Amount) {
		t.Error("trigger or shrink-to changed")
	}
	if points.Shrink.Method != shrink.PerPoint || points.Handling.Method != handling.OfWet {
		t.Error("the edition itself was changed")
	}
}

func TestOnTakesTheLatestCorrection(t *testing.T) {
	files := os.DirFS(filepath.Join(fixtures, "sets/one-after-another"))
	set, err := rates.Load(files)
	if err != nil {
		t.Fatal(err)
	}
	for day, want := range map[string]string{
		"2025-08-01": "first-corrected", "2025-09-30": "first-corrected",
		"2025-10-01": "first-corrected-again", "2025-12-31": "first-corrected-again",
		"2026-01-01": "first-corrected", "2026-07-31": "first-corrected",
		"2026-08-01": "second", "2099-01-01": "second",
	} {
		if e, err := set.On("plain", "corn", quantity.MustDate(day)); err != nil || e.ID != want {
			t.Errorf("on %s: %v, want %s", day, err, want)
		}
	}
	for _, none := range [][3]string{{"plain", "corn", "2025-07-31"}, {"plain", "oats", "2026-01-01"}, {"river", "corn", "2026-01-01"}} {
		if _, err := set.On(none[0], none[1], quantity.MustDate(none[2])); !errortest.NotFound(none[1]).Met(err) {
			t.Errorf("%v: %v", none, err)
		}
	}
	if got := set.Schedules("corn"); len(got) != 1 || got[0] != "plain" || len(set.Schedules("oats")) != 0 {
		t.Errorf("schedules of corn: %v", got)
	}
	if e, ok := set.ByID("first"); !ok || e.Days().String() != "2025-08-01 to 2026-07-31" || len(set.All()) != 4 {
		t.Error("the corrected edition is no longer there")
	}
}

func TestLoadReportsEveryFile(t *testing.T) {
	plain := fixture(t, "good/corn-plain.toml").Text
	_, err := rates.Load(fstest.MapFS{
		"a.toml": {Data: []byte("x = 1\n")}, "b.toml": {Data: plain}, "c.toml": {Data: plain}, "d.toml/e": {},
	})
	if !errortest.Invalid("a.toml", "a.toml:1", "x").Met(err) || strings.Contains(err.Error(), "two editions") {
		t.Errorf("broken file: %v", err)
	}
	if !strings.Contains(err.Error(), "d.toml") {
		t.Errorf("a folder in place of a file: %v", err)
	}
	_, err = rates.Load(fstest.MapFS{"b.toml": {Data: plain}, "c.toml": {Data: plain}})
	if !errortest.Invalid("c.toml:4", "corn-plain", "b.toml").Met(err) {
		t.Errorf("one edition twice: %v", err)
	}
	set, err := rates.Load(fstest.MapFS{})
	if err != nil || len(set.All()) != 0 {
		t.Errorf("an empty folder: %v", err)
	}
}

func TestCautions(t *testing.T) {
	for _, quiet := range []string{"good/corn-plain.toml", "good/barley-full.toml"} {
		if c := fixture(t, quiet).Cautions(); len(c) != 0 {
			t.Errorf("%s: %v", quiet, c)
		}
	}
	plain := string(fixture(t, "good/corn-plain.toml").Text)
	other := strings.Replace(plain, `"56 lb/bu"`, `"54 lb/bu"`, 1)
	other = strings.Replace(other, "[handling]\nmethod = \"none\"", "[handling]\nmethod = \"wet\"\nrate = \"2.0 %\"\nalways = false", 1)
	e, err := rates.Read("other.toml", []byte(other))
	if err != nil {
		t.Fatal(err)
	}
	c := e.Cautions()
	if len(c) != 2 || !strings.HasPrefix(c[0].String(), "A bushel of Corn is 54 lb/bu here and 56 lb/bu by law") || c[1].String() != "Handling of 2.0 % is more than the largest loss measured, 1.71 % of the wet weight." {
		t.Errorf("cautions: %q", c)
	}
	// 14 % less 11.76 % of water at ten points.
	c = fixture(t, "good/corn-points.toml").Cautions()
	if len(c) != 1 || c[0].String() != "Shrink of 1.4 %/pt takes 2.24 % of the weight beyond the water at 10 points: handling by another name, and more than the largest loss measured, 1.71 %." {
		t.Errorf("cautions: %q", c)
	}
}

// Minnesota Statutes 17B.0451 as read asks for a premium beside each discount: rates that cite the
// bushel of that state and have none are told so, each rule by its name; those of another are not.
func TestDiscountsWithoutPremiumInMinnesota(t *testing.T) {
	text, err := os.ReadFile("../../schedules/editions/wheat-hrw-main-2025.toml")
	if err != nil {
		t.Fatal(err)
	}
	told := func(source string) string {
		e, err := rates.Read("wheat.toml", []byte(strings.Replace(string(text), "Minnesota Statutes 239.32", source, 1)))
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range e.Cautions() {
			if strings.Contains(c.String(), "17B.0451") {
				return c.String()
			}
		}
		return ""
	}
	said := told("Minnesota Statutes 239.32")
	for name, want := range map[string]bool{"Test weight discount": true, "Foreign material discount": true, "Protein": false, "Smut odor": false} {
		if strings.Contains(said, name) != want {
			t.Errorf("%s is named %v: %q", name, !want, said)
		}
	}
	if other := told("Indiana Code 24-6-1-1"); other != "" {
		t.Errorf("rates of Indiana: %q", other)
	}
}

// The Government of Alberta prints 64.842 bushels of oats to the tonne, which is 34 lb each; the 32 lb
// of the states are a mistake in rates that pay Canadian dollars, and the law of the states is none there.
func TestBushelOfOatsInCanada(t *testing.T) {
	main, err := os.ReadFile("../../schedules/editions/oats-main-2025.toml")
	if err != nil {
		t.Fatal(err)
	}
	told := func(currency, bushel string) bool {
		text := strings.Replace(string(main), `"USD"`, `"`+currency+`"`, 1)
		e, err := rates.Read("oats.toml", []byte(strings.Replace(text, `bushel = "32 lb/bu"`, `bushel = "`+bushel+`"`, 1)))
		if err != nil {
			t.Fatal(err)
		}
		return slices.ContainsFunc(e.Cautions(), func(c message.Text) bool { return strings.HasPrefix(c.String(), "A bushel of Oats") })
	}
	for _, c := range []struct {
		currency, bushel string
		want             bool
	}{{"CAD", "32 lb/bu", true}, {"CAD", "34 lb/bu", false}, {"USD", "34 lb/bu", true}, {"USD", "32 lb/bu", false}} {
		if told(c.currency, c.bushel) != c.want {
			t.Errorf("%s a bushel in %s: warned %v, want %v", c.bushel, c.currency, !c.want, c.want)
		}
	}
}

// What is typed without a unit is in the unit that the rates are written in.
func TestFactorsAsTheRatesTakeThem(t *testing.T) {
	for name, want := range map[string]quantity.Unit{"good/barley-full.toml": quantity.KgPerHL, "good/corn-plain.toml": quantity.LbPerBushel} {
		f, ok := fixture(t, name).Factor("test-weight")
		if !ok || f.Unit != want {
			t.Errorf("%s takes the test weight in %s", name, f.Unit)
		}
	}
	if f, ok := fixture(t, "good/barley-full.toml").Factor("plump"); !ok || f.Unit != quantity.Percent {
		t.Errorf("plump barley in %s", f.Unit)
	}
	if _, ok := fixture(t, "good/corn-plain.toml").Factor("plump"); ok {
		t.Error("corn has plump kernels")
	}
}
