package yard

import (
	"reflect"
	"testing"

	"tenthpoint/ui/session/sessiontest"
)

// While the screen draws, it reads the one value of the last keystroke and not the
// form: what happens to the form meanwhile is shown after the next read.
func TestScreenDrawsOneValue(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	s := &shownLoad{yard: NewYard(r.Session)}
	s.read()
	fields, slip := s.Fields(), s.now.Slip
	fillIn(s.yard.Form(), wholeCorn)
	if !reflect.DeepEqual(textsOf(s), make([]string, len(fields))) || !reflect.DeepEqual(s.now.Slip, slip) {
		t.Errorf("the screen shows %q before it read the form", textsOf(s))
	}
	s.Type("moisture", "17.4")
	if got := sessiontest.FieldOf(t, s, "moisture").Value; got != "17.4" || reflect.DeepEqual(s.now.Slip, slip) {
		t.Errorf("after a keystroke the screen shows the moisture %q", got)
	}
	if !s.Restore("moisture") || sessiontest.FieldOf(t, s, "moisture").Value != "" {
		t.Errorf("after Escape the screen shows the moisture %q", sessiontest.FieldOf(t, s, "moisture").Value)
	}
}

// textsOf are the texts in the fields that the screen shows.
func textsOf(s *shownLoad) []string {
	var out []string
	for _, f := range s.Fields() {
		out = append(out, f.Value)
	}
	return out
}
