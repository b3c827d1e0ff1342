package yard

import (
	"strings"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/session/sessiontest"
	"testing"
)

// Under the Canadian rules a house sees the edges of the moisture classes, also
// of grains that the order lists under several names, and is asked to test
// three times near one. Corn is straight to 15.5 %.
func TestClassLimits(t *testing.T) {
	r := sessiontest.DemoRoom(t, 5)
	p := r.Session.Desk.Profile()
	p.Rules = "canada"
	sessiontest.Must(t, scalehouse.SetProfile(t.Context(), r.Session.Desk, p))
	for _, c := range []struct {
		grain, moisture, mark string
		warned                bool
	}{
		{"corn", "15.3", "the end of straight 15.5", true},
		{"corn", "16.4", "the end of straight 15.5", false},
		{"soybeans", "13.8", "the end of straight 14.0", true},
	} {
		f := NewLoadForm(r.Session, nil)
		f.Type("commodity", c.grain)
		f.Type("moisture", c.moisture)
		var labels []string
		for _, m := range f.Preview().Ruler.Marks {
			labels = append(labels, m.Label)
		}
		if !strings.Contains(strings.Join(labels, "\n"), c.mark) {
			t.Errorf("%s at %s: the ruler lacks %q", c.grain, c.moisture, c.mark)
		}
		note := ""
		for _, field := range f.Fields() {
			if field.ID == "moisture" {
				note = field.Note
			}
		}
		if got := strings.Contains(note, "test three times"); got != c.warned {
			t.Errorf("%s at %s: warned %v, want %v: %q", c.grain, c.moisture, got, c.warned, note)
		}
	}
}
