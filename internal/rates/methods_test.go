package rates_test

import (
	"fmt"
	"reflect"
	"testing"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/drying"
	"tenthpoint/internal/rates/handling"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/rates/shrink"
	"tenthpoint/internal/tomlfile"
)

// lacking lists the parts that a method does not have, and those of its texts
// that a language does not say.
func lacking[R, W any](m *rule.Method[R, W], texts map[string]string) []string {
	var out []string
	lacks := func(missing bool, part string) {
		if missing {
			out = append(out, fmt.Sprintf("method %q: %s", m.ID, part))
		}
	}
	lacks(m.ID == "", "no id to be read by")
	lacks(m.Read == nil, "not read")
	lacks(m.Said == "" || m.Lines == nil, "not posted")
	settles := reflect.ValueOf(m.Work)
	lacks(settles.IsNil() == (m.Nothing.IsZero()), "neither settled nor said why not, or both")
	lacks(m.Ticket == nil, "not worded on the ticket")
	lacks(m.Explained == "", "not explained in the handbook")
	said := []string{m.Said, m.Nothing.Key(), m.Explained}
	if m.Ticket != nil {
		var r R
		said = append(said, m.Ticket(r).Key())
	}
	for _, text := range said {
		lacks(text != "" && texts[text] == "", fmt.Sprintf("%q is in no list of texts", text))
	}
	return out
}

func allLacking[R, W any](t *testing.T, kind string, methods []*rule.Method[R, W]) {
	t.Helper()
	texts, ids := i18n.Texts("fr"), map[string]bool{}
	for _, m := range methods {
		for _, part := range lacking(m, texts) {
			t.Errorf("%s: %s", kind, part)
		}
		if ids[m.ID] {
			t.Errorf("%s: two methods are called %q", kind, m.ID)
		}
		ids[m.ID] = true
	}
	if got := rates.Methods(kind); len(got) != len(methods) || len(got) < 3 {
		t.Errorf("%s: %d methods, and %d described", kind, len(methods), len(got))
	}
}

// Every method is read, posted, settled, worded and explained.
func TestMethodsAreWhole(t *testing.T) {
	allLacking(t, "shrink", shrink.Methods)
	allLacking(t, "handling", handling.Methods)
	allLacking(t, "drying", drying.Methods)
	allLacking(t, "discount", discount.Forms)
	if got := rates.Methods("freight"); got != nil {
		t.Errorf("a kind of rule that there is not has methods: %v", got)
	}
}

// The walk above finds each part that is missing.
func TestLackingCanFail(t *testing.T) {
	type made struct{ n int }
	type work func() int
	whole := rule.Method[made, work]{
		ID: "a", Said: "said", Read: rule.NoKeys[made], Lines: rule.NoLines[made],
		Work: func() int { return 1 }, Explained: "explained",
		Ticket: func(made) message.Text { return message.Words("worded") },
	}
	texts := map[string]string{"said": "x", "explained": "x", "worded": "x"}
	if got := lacking(&whole, texts); got != nil {
		t.Fatalf("a whole method lacks %q", got)
	}
	for part, takeOut := range map[string]func(m *rule.Method[made, work]){
		"id": func(m *rule.Method[made, work]) { m.ID = "" }, "read": func(m *rule.Method[made, work]) { m.Read = nil },
		"said": func(m *rule.Method[made, work]) { m.Said = "" }, "lines": func(m *rule.Method[made, work]) { m.Lines = nil },
		"work": func(m *rule.Method[made, work]) { m.Work = nil }, "both": func(m *rule.Method[made, work]) { m.Nothing = message.Words("said") },
		"ticket": func(m *rule.Method[made, work]) { m.Ticket = nil }, "explained": func(m *rule.Method[made, work]) { m.Explained = "" },
		"a text": func(m *rule.Method[made, work]) { m.Said = "said in no other language" },
	} {
		broken := whole
		takeOut(&broken)
		if got := lacking(&broken, texts); len(got) != 1 {
			t.Errorf("without its %s a method lacks %q", part, got)
		}
	}
}

// An edition that names no method it knows is refused, and is not read as some
// other method.
func TestUnknownMethodIsNone(t *testing.T) {
	file := tomlfile.Parse("a.toml", []byte("method = \"by-feel\"\n"))
	if m := rule.Choose(file.Root(), "method", shrink.Methods); m != nil || len(file.Problems()) != 1 {
		t.Errorf("by-feel is read as %v, with %v", m, file.Problems())
	}
}
