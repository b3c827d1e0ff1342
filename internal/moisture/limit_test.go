package moisture

import (
	"strings"
	"testing"

	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/worksheet"
)

func TestClassLimits(t *testing.T) {
	limits, err := ClassLimits("Corn - Canada Western Yellow/White/Mixed")
	if err != nil {
		t.Fatal(err)
	}
	want := []struct{ name, at string }{{"the end of straight", "15.5"}, {"the end of tough", "17.5"}, {"the end of damp", "21"}, {"the end of moist", "25"}}
	if len(limits) != len(want) {
		t.Fatalf("%d limits, want %d", len(limits), len(want))
	}
	for i, l := range limits {
		if l.Name.String() != want[i].name || !l.At.Equal(pct(want[i].at)) || l.Source.String() == "" {
			t.Errorf("%s at %s [%s], want %s at %s", l.Name, l.At, l.Source, want[i].name, want[i].at)
		}
	}
	if _, err := ClassLimits("Rice"); err == nil {
		t.Error("rice was given classes")
	}
}

// Within 0.5 of a class limit: test three times (Canadian grading guide).
func TestNearAClassLimitThreeTestsAreAskedFor(t *testing.T) {
	h := house()
	h.Limits, _ = ClassLimits("Wheat - Canada Western Red Spring")
	var s worksheet.Sheet
	r, err := Tests{Readings: directs("14.2")}.Determine(&s, atBench(t), h)
	if err != nil || r.More != 2 || len(r.Near) != 1 {
		t.Fatalf("%+v, %v", r, err)
	}
	const want = "14.2 % is within 0.5 pt of the end of straight 14.5 %. A tenth may decide what is charged. Test 2 times more and take the mean of 3."
	if got := r.Flags[0].Sentence(); got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestWordsOfTheBench(t *testing.T) {
	var methods []string
	for _, m := range meter.Methods() {
		methods = append(methods, m.String())
	}
	if got := strings.Join(methods, "; "); got != "dial and chart; direct-reading meter; oven; typed by hand" {
		t.Errorf("methods %q", got)
	}
	if got := BandOf(pct("14.2"), pt("0.5")).String(); got != "14.2 %, 13.7 % to 14.7 %" {
		t.Errorf("band %q", got)
	}
}
