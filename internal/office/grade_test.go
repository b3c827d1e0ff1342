package office_test

import (
	"slices"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse/housetest"
)

// The grade follows the sample of the load: what was tested holds it down, and
// what was not leaves it open (7 CFR 810.404).
func TestGradeOfALoad(t *testing.T) {
	s := housetest.New(t)
	l := s.Load(s.Whole())
	l.Sample = housetest.SampleOf("15.6", housetest.Found("test-weight", "53.8", quantity.LbPerBushel), load.Finding{Factor: grain.Musty})
	g, err := office.Grade(ctx, s.Desk, l)
	must(t, err)
	if g.US == nil || g.US.Best != "U.S. No. 3" || g.US.Complete || len(g.US.HeldDown) != 1 || len(g.US.Cautions) != 0 {
		t.Errorf("graded %+v", g.US)
	}
	if len(g.Canada) != 2 || g.Canada[0].Name != "tough" {
		t.Errorf("in Canada %v", g.Canada)
	}
	l.Sample.Findings[1].Present = true
	if g, err = office.Grade(ctx, s.Desk, l); err != nil || !g.US.Sample || len(g.US.Faults) != 1 || len(g.US.Cautions) != 0 {
		t.Errorf("a musty sample: %v, %v", g.US, err)
	}
	l.Sample = load.Sample{}
	if g, err = office.Grade(ctx, s.Desk, l); err != nil || g.US.Grade.String() != "not graded" || len(g.Canada) != 0 {
		t.Errorf("nothing tested: %+v, %v", g, err)
	}
}

func TestGradeOfAClass(t *testing.T) {
	wheat, err := grain.ByID("wheat-hrs")
	must(t, err)
	for class, want := range map[string]int{"": len(wheat.MoistureGrains()), "Wheat - Canada Western Red Spring": 1, "unheard of": len(wheat.MoistureGrains())} {
		g, err := office.GradeSample(grain.First(), wheat.ID, housetest.SampleOf("14.6"), class)
		must(t, err)
		isTough := func(c grain.MoistureClass) bool { return c.Name == "tough" }
		if len(g.Canada) != want || slices.IndexFunc(g.Canada, isTough) != 0 {
			t.Errorf("class %q: %v", class, g.Canada)
		}
	}
	_, err = office.GradeSample(grain.First(), wheat.ID, housetest.SampleOf("14.6", housetest.Found("bcfm", "2", quantity.Percent)), "")
	refused(t, err, errortest.NotFound())
}
