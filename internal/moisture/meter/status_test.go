package meter

import (
	"strings"
	"testing"

	"tenthpoint/internal/law"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

func authority(t *testing.T, id string) CheckTolerance {
	t.Helper()
	a, ok := CheckToleranceByID(law.First(), id)
	if !ok {
		t.Fatalf("no authority %s", id)
	}
	return a
}

// on is a check of so many points on a 15 % reference.
func on(date, crop, off string) Check {
	return Check{Day: quantity.MustDate(date), Meter: "bench-1", Calibration: "A-2025", Crop: crop, Name: "R1",
		Reference: pct("15"), Reading: pct("15").Add(pct(off)), Sample: degC("20"), By: "A. Tester"}
}

func TestStanding(t *testing.T) {
	meter := Meter{ID: "bench-1", Model: "Example dial meter A", Calibration: "A-2025"}
	canada := CheckRule{Authority: authority(t, "canada"), WarnDays: 3}
	us := CheckRule{Authority: authority(t, "us-official"), EveryDays: 30, WarnDays: 3}
	cold, unknown, other, elsewhere := on("2025-10-20", "corn", "0"), on("2025-10-20", "corn", "0"), on("2025-10-20", "corn", "0"), on("2025-10-20", "corn", "0")
	cold.Sample, unknown.Sample, other.Calibration, elsewhere.Meter = degC("10.9"), quantity.Amount{}, "A-2020", "bench-2"
	for _, c := range []struct {
		name   string
		rule   CheckRule
		checks []Check
		day    string
		want   State
		words  string
	}{
		{"never", canada, nil, "2025-10-31", Never, "Meter bench-1 (Example dial meter A) has no check that counts under calibration A-2025."},
		{"fresh", canada, []Check{on("2025-10-20", "corn", "0.2")}, "2025-10-30", Good, "was checked on 2025-10-20 and is next due on 2025-11-03"},
		{"due in three days", canada, []Check{on("2025-10-20", "corn", "0")}, "2025-10-31", Due, "is due on 2025-11-03"},
		{"due today", canada, []Check{on("2025-10-20", "corn", "0")}, "2025-11-03", Due, "is due on 2025-11-03"},
		{"a day late", canada, []Check{on("2025-10-20", "corn", "0")}, "2025-11-04", Overdue, "was last checked on 2025-10-20 and was due on 2025-11-03"},
		{"0.2 is the limit", canada, []Check{on("2025-10-20", "corn", "-0.2")}, "2025-10-25", Good, ""},
		{"reads high", canada, []Check{on("2025-10-20", "corn", "0.21")}, "2025-10-25", Failed, "it read 15.21 % for corn R1 of 15 %: off by 0.21 pt, and Canadian Grain Commission allows 0.2 pt"},
		{"reads low", canada, []Check{on("2025-10-20", "corn", "-0.21")}, "2025-10-25", Failed, "off by -0.21 pt"},
		{"rechecked", canada, []Check{on("2025-10-20", "corn", "0.5"), on("2025-10-21", "corn", "0.1")}, "2025-10-25", Good, ""},
		{"rechecked, written down out of order", canada, []Check{on("2025-10-21", "corn", "0.1"), on("2025-10-20", "corn", "0.5")}, "2025-10-25", Good, ""},
		{"another crop does not mend it", canada, []Check{on("2025-10-20", "corn", "0.5"), on("2025-10-21", "soybeans", "0.1")}, "2025-10-25", Failed, "for corn"},
		{"failed and late is failed", canada, []Check{on("2025-10-20", "corn", "0.5")}, "2025-12-25", Failed, ""},
		{"not yet known that day", canada, []Check{on("2025-10-20", "corn", "0"), on("2025-10-28", "corn", "0.5")}, "2025-10-25", Good, ""},
		{"too cold to count", canada, []Check{cold}, "2025-10-25", Never, ""},
		{"temperature not recorded", canada, []Check{unknown}, "2025-10-25", Never, ""},
		{"another calibration", canada, []Check{other}, "2025-10-25", Never, ""},
		{"another meter", canada, []Check{elsewhere}, "2025-10-25", Never, ""},

		{"mean of the day within", us, []Check{on("2025-10-20", "corn", "0.35"), on("2025-10-20", "corn", "-0.05")}, "2025-10-25", Good, ""},
		{"mean of the day outside", us, []Check{on("2025-10-20", "corn", "0.35"), on("2025-10-20", "corn", "-0.04")}, "2025-10-25", Failed, "sum to 0.31 pt over 2 references"},
		{"only the last day counts", us, []Check{on("2025-10-19", "corn", "2"), on("2025-10-20", "corn", "0.1")}, "2025-10-25", Good, ""},
		{"house's own interval", us, []Check{on("2025-10-20", "corn", "0")}, "2025-11-20", Overdue, "was due on 2025-11-19"},
		{"no interval at all", CheckRule{Authority: us.Authority}, []Check{on("2025-10-20", "corn", "0")}, "2027-01-01", Good, "no date is set"},
		{"house may be stricter", CheckRule{Authority: canada.Authority, EveryDays: 7}, []Check{on("2025-10-20", "corn", "0")}, "2025-10-28", Overdue, "was due on 2025-10-27"},
		{"house may not be laxer", CheckRule{Authority: canada.Authority, EveryDays: 60}, []Check{on("2025-10-20", "corn", "0")}, "2025-11-04", Overdue, "was due on 2025-11-03"},
	} {
		got := StatusOn(meter, c.checks, c.rule, quantity.MustDate(c.day))
		if got.State != c.want || !strings.Contains(got.Sentence.String(), c.words) {
			t.Errorf("%s: %s, want %s: %s", c.name, got.State, c.want, got.Sentence)
		}
	}
	if got := StatusOn(meter, []Check{cold, unknown}, canada, quantity.MustDate("2025-10-31")); len(got.Ignored) != 2 || !strings.Contains(got.Ignored[0].String(), "10.9 °C") {
		t.Errorf("checks that do not count: %q", got.Ignored)
	}
}

// Handbook 44 has not been read here: what it would say is a hint.
func TestUnconfirmedRuleOnlyHints(t *testing.T) {
	meter := Meter{ID: "bench-1", Model: "Example dial meter A", Calibration: "A-2025"}
	rule := CheckRule{Authority: authority(t, "handbook-44")}
	got := StatusOn(meter, []Check{on("2025-10-20", "corn", "0.9")}, rule, quantity.MustDate("2025-10-31"))
	if got.State != Good || len(got.Failures) != 0 || len(got.Hints) != 1 || !strings.Contains(got.Hints[0].String(), "allows 0.8 pt") {
		t.Errorf("%s: failures %q, hints %q", got.State, got.Failures, got.Hints)
	}
}

func TestAllowedErrors(t *testing.T) {
	for _, c := range []struct{ authority, crop, reference, want string }{
		{"canada", "wheat-hrs", "14", "0.2 pt"},
		{"us-official", "corn", "14", "0.15 pt"},
		{"handbook-44", "corn", "14", "0.8 pt"},      // 0.05 x 14 = 0.70
		{"handbook-44", "corn", "20", "1 pt"},        // 0.05 x 20
		{"handbook-44", "wheat-hrs", "14", "0.7 pt"}, // 0.04 x 14 = 0.56
		{"handbook-44", "wheat-hrs", "20", "0.8 pt"}, // 0.04 x 20
	} {
		got, ok := authority(t, c.authority).Allowed(c.crop, pct(c.reference))
		if !ok || !got.Equal(quantity.Of(strings.Fields(c.want)[0], quantity.Point)) {
			t.Errorf("%s allows %s at %s %%: %s, want %s", c.authority, c.crop, c.reference, got, c.want)
		}
	}
	if _, ok := (CheckTolerance{Limits: []ErrorLimit{{Crops: []string{"corn"}, Fixed: pt("1")}}}).Allowed("oats", pct("14")); ok {
		t.Error("a crop the authority does not name was given a limit")
	}
	rules, err := CheckTolerances(law.First())
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range rules {
		if !strings.HasSuffix(a.Stated().String(), law.Confirm) {
			t.Errorf("%s: the rule is stated as %q", a.ID, a.Stated())
		}
		if a.Confirmed == strings.Contains(a.Source, "unconfirmed") {
			t.Errorf("%s: confirmed %v, source %q", a.ID, a.Confirmed, a.Source)
		}
	}
}

func TestCheckFaults(t *testing.T) {
	good := on("2025-10-20", "corn", "0.1")
	expectErrors(t, "good", good.Faults())
	expectErrors(t, "empty", Check{}.Faults(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid("reference"), errortest.Invalid("reading"))
	bad := good
	bad.Reference, bad.Sample = pct("100"), pct("20")
	expectErrors(t, "bad", bad.Faults(), errortest.Invalid("reference", "100 %"), errortest.Invalid("20 %"))
	if good.Error().String() != "0.1 pt" || on("2025-10-20", "corn", "-0.3").Error().String() != "-0.3 pt" {
		t.Errorf("errors %s", good.Error())
	}
	if got := OfCrop([]Check{on("2025-10-20", "corn", "0"), on("2025-10-20", "oats", "0")}, "oats"); len(got) != 1 || got[0].Crop != "oats" {
		t.Errorf("oats: %v", got)
	}
}
