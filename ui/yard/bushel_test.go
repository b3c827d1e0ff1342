package yard

import (
	"strings"
	"testing"

	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/session/sessiontest"
)

// In Canada 60.0 kg/hL are 48.1 lb in an Avery bushel and 46.6 in a Winchester bushel: pounds a
// bushel beside the field say which. In the United States there is one.
func TestCanadaNamesTheBushelOfATestWeight(t *testing.T) {
	r := sessiontest.DemoRoom(t, 5)
	note := func(rules string) string {
		p := r.Session.Desk.Profile()
		p.Rules = rules
		p.Unlicensed = rules == "canada" // the demo's rates take handling
		sessiontest.Must(t, scalehouse.SetProfile(t.Context(), r.Session.Desk, p))
		f := NewLoadForm(r.Session, nil)
		f.Type("commodity", "corn")
		f.Type("test-weight", "56")
		for _, field := range f.Fields() {
			if field.ID == "test-weight" {
				return field.Reading
			}
		}
		return "no field"
	}
	if said := note("canada"); !strings.Contains(said, "Winchester bushel") {
		t.Errorf("in Canada it reads %q", said)
	}
	if said := note("us"); strings.Contains(said, "bushel") {
		t.Errorf("in the United States it reads %q", said)
	}
}
