package handbook

import (
	"strings"
	"testing"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/rates"
)

// Every method of every kind of rule is explained in every language.
func TestEveryMethodIsExplained(t *testing.T) {
	for _, language := range Languages {
		chapter, _ := In(language).ByID("rates")
		if chapter.Language != language {
			continue // not written yet
		}
		for _, kind := range []string{"shrink", "handling", "drying", "discount"} {
			for _, m := range rates.Methods(kind) {
				words := i18n.In(language).Whole(m.Explained)
				if !strings.Contains(chapter.Text, "- `"+m.ID+"`: "+words) {
					t.Errorf("%s: %s of %s is not explained", language, m.ID, kind)
				}
				if language != English && words == m.Explained {
					t.Errorf("%s: %s of %s is explained in English", language, m.ID, kind)
				}
			}
		}
	}
	if got := withMethods(English, "a\n{{methods handling}}\nb"); strings.Count(got, "\n- ") != 3 || strings.Contains(got, "{{") {
		t.Errorf("three methods of handling are %q", got)
	}
}
