package session_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
)

// sampleOf is a load of a grain with results, "test-weight 53.8 lb/bu".
func sampleOf(t *testing.T, commodity, moisture string, results ...string) *load.Load {
	t.Helper()
	l := &load.Load{Details: load.Details{Commodity: commodity}}
	if moisture != "" {
		l.Sample.Moisture = &load.Moisture{Percent: quantity.Of(moisture, quantity.Percent)}
	}
	for _, text := range results {
		factor, figure, _ := strings.Cut(text, " ")
		f := load.Finding{Factor: grain.FactorID(factor), Present: figure == "yes"}
		if figure != "yes" && figure != "no" {
			a := quantity.Zero(quantity.Count)
			if strings.Contains(figure, " ") {
				sessiontest.Must(t, a.UnmarshalText([]byte(figure)))
			} else {
				a = quantity.Of(figure, quantity.Count)
			}
			f.Amount = &a
		}
		l.Sample.Findings = append(l.Sample.Findings, f)
	}
	return l
}

// The grade of each sample (7 CFR 810.404, 810.1604), what kept it from a better
// one, what is open, and always that it is advice.
func TestGradeAdvice(t *testing.T) {
	f := sessiontest.DemoRoom(t, 0).Session
	for _, c := range []struct {
		name  string
		load  *load.Load
		grade string
		says  []string // on the working
		told  bool     // beside the tests of the bench
	}{
		{"whole corn", sampleOf(t, "corn", "15.2", "test-weight 57 lb/bu", "heat-damage 0 %", "damage 2.1 %", "bcfm 1.4 %"), "U.S. No. 1", []string{"Table: 7 CFR 810.404"}, true},
		{"light corn", sampleOf(t, "corn", "15.2", "test-weight 53.8 lb/bu", "damage 2.1 %", "bcfm 1.2 %"), "no better than U.S. No. 3",
			[]string{"Test weight 53.8 lb/bu is under 54.0 lb/bu, the least for U.S. No. 2.", "Not tested, and may lower it: Heat-damaged kernels."}, true},
		{"damaged soybeans", sampleOf(t, "soybeans", "13", "damage 3.4 %", "heat-damage 0.1 %", "foreign-material 0.8 %", "splits 4 %"), "no better than U.S. No. 3",
			[]string{"Damaged kernels, total 3.4 % is over 3.0 %, the most for U.S. No. 2."}, true},
		{"stony soybeans", sampleOf(t, "soybeans", "13", "stones 0.2 %", "stone-count 4"), "U.S. Sample grade",
			[]string{"Stones 4 is over 3, the most for U.S. No. 4, and Stones by weight 0.2 % is over 0.1 %."}, true},
		{"musty corn", sampleOf(t, "corn", "15.2", "musty yes"), "U.S. Sample grade", []string{"Musty odor: such grain is U.S. Sample grade (7 CFR 810.404"}, true},
		{"nothing but moisture", sampleOf(t, "corn", "15.2"), "not known: none of the results its table asks for is there", []string{"Not tested, and may lower it: Test weight"}, false},
		{"waxy corn", sampleOf(t, "corn", "", "waxy 96 %", "test-weight 57 lb/bu"), "no better than U.S. No. 1, Waxy", nil, true},
		{"peas", sampleOf(t, "peas", "15"), "not known: no grade table was read for Peas", nil, false},
	} {
		a := session.AdviseGrade(f, c.load)
		if a.Grade != c.grade {
			t.Errorf("%s would grade %q, want %q", c.name, a.Grade, c.grade)
		}
		paper := sessiontest.TextOf(a.Lines())
		for _, words := range append(c.says, "GRADE, ADVICE ONLY", "advisory, not official", grain.Advisory) {
			if !strings.Contains(paper, words) {
				t.Errorf("%s: the working does not say %q:\n%s", c.name, words, paper)
			}
		}
		says := a.Statuses()
		if len(says) > 0 != c.told || c.told && (says[0].State != model.Plain || !strings.Contains(says[0].Text, c.grade+" (advisory, not official)")) {
			t.Errorf("%s: at the bench %+v", c.name, says)
		}
	}
}

// No grain, and a result that is not of the grain, give no advice; an elevator under Canadian rules
// is told that those tables were not read.
func TestNoGradeAdvice(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	for name, l := range map[string]*load.Load{"no grain": sampleOf(t, "", "15"), "dockage of corn": sampleOf(t, "corn", "15", "dockage 1 %")} {
		if lines := session.GradeLines(r.Session, l); lines != nil {
			t.Errorf("%s: %s", name, sessiontest.TextOf(lines))
		}
	}
	p := r.Session.Desk.Profile()
	p.Rules = "canada"
	sessiontest.Must(t, scalehouse.SetProfile(t.Context(), r.Session.Desk, p))
	if a := session.AdviseGrade(r.Session, sampleOf(t, "corn", "15.2", "test-weight 57 lb/bu")); !strings.Contains(a.Grade, "Canadian grade tables were not read") || a.Statuses() != nil {
		t.Errorf("under Canadian rules: %+v", a)
	}
}

// A grade that an inspector gave is told beside the advice.
func TestGivenGradeIsTold(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	given := sampleOf(t, "corn", "15", "test-weight 57 lb/bu")
	given.Sample.Grade = "U.S. No. 2, certificate 17"
	lines := session.GradeLines(r.Session, given)
	if i, found := session.Find(lines, func(l model.CardLine) bool {
		return l.Right == given.Sample.Grade && l.Kind == model.CardPair
	}); !found {
		t.Errorf("the grade an inspector gave is not told: %v in\n%s", i, sessiontest.TextOf(lines))
	}
}
