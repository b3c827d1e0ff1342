package grain

import (
	"strings"
	"testing"
)

// TestSpecialGradesAtTheirEdges earns and misses every special grade just
// below, on and just above its figures (7 CFR 810, as the tables name).
func TestSpecialGradesAtTheirEdges(t *testing.T) {
	for _, c := range []struct{ commodity, results, special string }{
		{"wheat-hrw", "ergot 0.05", ""},
		{"wheat-hrw", "ergot 0.06", "Ergoty"},
		{"wheat-hrw", "garlic 2", ""},
		{"wheat-hrw", "garlic 3", "Garlicky"},
		{"wheat-hrw", "smut 5", ""},
		{"wheat-hrw", "smut 6", "Light smutty"},
		{"wheat-hrw", "smut 30", "Light smutty"},
		{"wheat-hrw", "smut 31", "Smutty"},
		{"wheat-hrw", "smut 0 smut-odor yes", "Light smutty"},
		{"wheat-hrw", "smut 31 smut-odor yes", "Smutty"},
		{"wheat-hrw", "smut 0 smut-odor no", ""},
		{"wheat-hrw", "ergot 0.10 garlic 5 smut 40", "Ergoty Garlicky Smutty"},
		{"rye", "ergot 0.30", ""},
		{"rye", "ergot 0.31", "Ergoty"},
		{"rye", "garlic 1", ""},
		{"rye", "garlic 2", "Light garlicky"},
		{"rye", "garlic 6", "Light garlicky"},
		{"rye", "garlic 7", "Garlicky"},
		{"rye", "smut 14", ""},
		{"rye", "smut 15", "Light smutty"},
		{"rye", "smut 31", "Smutty"},
		{"rye", "thin 5.0", "Plump"},
		{"rye", "thin 5.1", ""},
		{"barley", "fungus-mold-damage 4.0", ""},
		{"barley", "fungus-mold-damage 4.1", "Blighted"},
		{"barley-malting-two", "ergot 0.10", ""},
		{"barley-malting-two", "ergot 0.11", "Ergoty"},
		{"barley", "garlic 2", ""},
		{"barley", "garlic 3", "Garlicky"},
		{"barley", "smut 0.20", ""},
		{"barley", "smut 0.21", "Smutty"},
		{"barley", "smut 0.00 smutty-appearance yes", "Smutty"},
		{"oats", "test-weight 37.5", ""},
		{"oats", "test-weight 38.4", "Heavy"}, // recorded 38.0
		{"oats", "test-weight 39.9", "Heavy"}, // recorded 39.5
		{"oats", "test-weight 40.0", "Extra-heavy"},
		{"oats", "garlic 3", ""},
		{"oats", "garlic 4", "Garlicky"},
		{"oats", "thin 20.0", ""},
		{"oats", "thin 20.1", "Thin"},
		{"oats", "smut 0.20", ""},
		{"oats", "smut 0.21", "Smutty"},
		{"sorghum", "smut 19", ""},
		{"sorghum", "smut 20", "Smutty"},
		{"soybeans", "garlic 4", ""},
		{"soybeans", "garlic 5", "Garlicky"},
		{"canola", "garlic 2", ""},
		{"canola", "garlic 3", "Garlicky"},
		{"corn", "flint 5.0", ""},
		{"corn", "flint 5.1", "Flint and dent"},
		{"corn", "flint 94.9", "Flint and dent"},
		{"corn", "flint 95.0", "Flint"},
		{"corn", "waxy 94.9", ""},
		{"corn", "waxy 95.0", "Waxy"},
		{"rye", "weevils 1 insects 0", ""},
		{"rye", "weevils 1 insects 1", "Infested"},
		{"rye", "weevils 2 insects 0", "Infested"},
		{"rye", "weevils 0 insects 1", ""},
		{"rye", "weevils 0 insects 2", "Infested"},
		{"corn", "weevils 1 insects 4", ""},
		{"corn", "weevils 1 insects 5", "Infested"},
		{"corn", "weevils 2", "Infested"},
		{"corn", "weevils 0 insects 9", ""},
		{"corn", "weevils 0 insects 10", "Infested"},
		{"corn", "infested yes", "Infested"},
		{"corn", "infested no", ""},
		{"corn", "infested no weevils 2", "Infested"},
		{"corn", "infested yes weevils 0 insects 0", "Infested"},
	} {
		grain := mustCommodity(t, c.commodity)
		g := mustGrade(t, grain, seen(t, grain, strings.Fields(c.results)...))
		if got := strings.Join(g.Special, " "); got != c.special {
			t.Errorf("%s with %s: %q, want %q", c.commodity, c.results, got, c.special)
		}
	}
}

func TestSpecialGradesGiveTheirReason(t *testing.T) {
	for _, c := range []struct{ commodity, results, because string }{
		{"wheat-hrw", "ergot 0.06", "Ergoty: Ergot 0.06 % is over 0.05 % (7 CFR 810.2205(a))"},
		{"wheat-hrw", "smut 6", "Light smutty: Smut balls in 250 g 6 is over 5; Smut balls in 250 g 6 is at most 30 (7 CFR 810.2205(c))"},
		{"wheat-hrw", "smut 2 smut-odor yes", "Light smutty: Unmistakable odor of smut: yes; Smut balls in 250 g 2 is at most 30 (7 CFR 810.2205(c))"},
		{"corn", "infested yes", "Infested: Infested: yes, by the tester (7 CFR 810.107(b)(1))"},
		{"oats", "test-weight 38.2", "Heavy: Test weight 38.0 lb/bu is at least 38.0 lb/bu; Test weight 38.0 lb/bu is under 40.0 lb/bu (7 CFR 810.1005(f))"},
	} {
		grain := mustCommodity(t, c.commodity)
		g := mustGrade(t, grain, seen(t, grain, strings.Fields(c.results)...))
		if len(g.SpecialBecause) != 1 || g.SpecialBecause[0].String() != c.because {
			t.Errorf("%s with %s: %q, want %q", c.commodity, c.results, g.SpecialBecause, c.because)
		}
	}
}

// TestSpecialGradesNotYetTold: a count not taken leaves the word open, unless
// another way has earned it or it cannot be earned any more.
func TestSpecialGradesNotYetTold(t *testing.T) {
	for _, c := range []struct{ commodity, results, open string }{
		{"corn", "", "Flint, Flint and dent, Waxy, Infested"},
		{"corn", "flint 50 waxy 0 weevils 0", "Infested"},
		{"corn", "flint 50 waxy 0 weevils 2", ""},
		{"corn", "flint 50 waxy 0 insects 0", "Infested"},
		{"corn", "flint 50 waxy 0 infested no", ""},
		{"sorghum", "smut 3 infested no", "Smutty"},
		{"sorghum", "smutty-appearance yes infested no", ""},
		{"wheat-srw", "ergot 0 garlic 0 infested no smut-odor yes", "Light smutty, Smutty"},
		{"wheat-srw", "ergot 0 garlic 0 infested no smut 31", ""},
		{"wheat-srw", "ergot 0 garlic 0 infested no smut 3", "Light smutty"},
	} {
		grain := mustCommodity(t, c.commodity)
		g := mustGrade(t, grain, seen(t, grain, strings.Fields(c.results)...))
		if got := strings.Join(g.SpecialNotTested, ", "); got != c.open {
			t.Errorf("%s with %s: open %q, want %q", c.commodity, c.results, got, c.open)
		}
	}
}
