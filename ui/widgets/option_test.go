package widgets

import (
	"strings"
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgettest"
	"testing"

	"pgregory.net/rapid"
)

func TestMatching(t *testing.T) {
	for _, c := range []struct{ typed, want string }{
		{"", "11 114 118 207"},   // nothing typed fits all
		{"11", "11 114 118"},     // the code itself before codes that begin so
		{"114", "114"},           //
		{"07", "207"},            // inside a code
		{"mill", "207"},          // the name begins so
		{"farm", "11 207"},       // a word of the name
		{"oak hol", "11"},        // words in any order
		{"ethier", "114"},        // without the accent
		{"ÉTHIER", "114"},        // or shouting
		{"2/3", "114"},           // in the detail
		{"share mill", "207"},    // name and detail together
		{"  11  ", "11 114 118"}, // spaces around do not count
		{"ace", "207"},           // in the middle of a word
		{"lace", ""},             // nowhere
		{"farm zz", ""},          // every part must fit
	} {
		if got := widgettest.Codes(model.Matching(widgettest.Growers(), c.typed)); got != c.want {
			t.Errorf("typed %q: got %q, want %q", c.typed, got, c.want)
		}
	}
}

func TestExact(t *testing.T) {
	for _, c := range []struct {
		typed, code  string
		found, final bool
	}{
		{"11", "11", true, false}, // 114 could follow
		{"114", "114", true, true},
		{" 207 ", "207", true, true},
		{"2", "", false, false},
		{"", "", false, false},
	} {
		o, found, final := model.Exact(widgettest.Growers(), c.typed)
		if o.Code != c.code || found != c.found || final != c.final {
			t.Errorf("typed %q: got %q %v %v", c.typed, o.Code, found, final)
		}
	}
}

// TestMatchingNarrows: a longer query never brings an option back, a code
// typed in full always comes first, and nothing is found twice.
func TestMatchingNarrows(t *testing.T) {
	letters := rapid.StringMatching(`[a-c1-3 ]{0,4}`)
	rapid.Check(t, func(t *rapid.T) {
		var options []model.Option
		seen := map[string]bool{}
		for _, code := range rapid.SliceOfN(rapid.StringMatching(`[1-3]{1,3}`), 1, 8).Draw(t, "codes") {
			if !seen[code] {
				seen[code] = true
				options = append(options, model.Option{Code: code, Name: letters.Draw(t, "name")})
			}
		}
		query := strings.TrimSpace(letters.Draw(t, "query"))
		wide := model.Matching(options, query)
		narrow := model.Matching(options, query+rapid.StringMatching(`[a-c1-3]`).Draw(t, "more"))
		for _, o := range narrow {
			if !strings.Contains(" "+widgettest.Codes(wide)+" ", " "+o.Code+" ") {
				t.Fatalf("%q came back when more was typed after %q", o.Code, query)
			}
		}
		if o, found, _ := model.Exact(options, query); found && wide[0].Code != o.Code {
			t.Fatalf("typed %q: %q stands before the code itself", query, wide[0].Code)
		}
		for i, o := range wide {
			for _, other := range wide[i+1:] {
				if o.Code == other.Code {
					t.Fatalf("%q is found twice", o.Code)
				}
			}
		}
	})
}

// TestFoundByNameAlone: a code of the program's own is neither shown nor found.
func TestFoundByNameAlone(t *testing.T) {
	options := []model.Option{{Code: "dial", Name: "cadran et table", ByName: true}, {Code: "oven", Name: "étuve", ByName: true}}
	widgettest.Equal(t, "in its field", options[0].String(), "cadran et table")
	widgettest.Equal(t, "by letters without accents", len(model.Matching(options, "etu")), 1)
	widgettest.Equal(t, "by the code", len(model.Matching(options, "oven")), 0)
	if o, found, final := model.Exact(options, "Étuve"); !found || !final || o.Code != "oven" {
		t.Errorf("the whole name finds %v, %v, %v", o, found, final)
	}
}
