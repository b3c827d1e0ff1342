package lab

import (
	"strings"
	"testing"

	"tenthpoint/internal/office"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/sessiontest"
)

// A bench grades a few factors and looks for the rest: one key says that nothing of it was found, and
// what stays open is what was not measured. It is on the load once the sample is.
func TestOneKeyAnswersForAllThatIsNotFound(t *testing.T) {
	r, b := benchRoom(t)
	id := b.current.load.ID
	b.test(t, "62")
	b.typeAll("foreign-material 0.4", "test-weight 56")
	open := func() string {
		advice, found := session.Find(b.Result().Statuses, func(s model.Status) bool { return s.Word == "would grade" })
		if !found {
			t.Fatalf("the bench says %+v", b.Result().Statuses)
		}
		return advice.Text
	}
	const looked, measured = "Pieces of glass", "Splits"
	if text := open(); !strings.Contains(text, looked) || !strings.Contains(text, measured) {
		t.Fatalf("before it is answered the advice is %q", text)
	}
	b.SeeNone()
	if text := open(); strings.Contains(text, looked) || !strings.Contains(text, measured) {
		t.Errorf("nothing was found, and the advice is %q", text)
	}
	b.SeeNone()
	if text := open(); !strings.Contains(text, looked) {
		t.Errorf("the answer was taken back, and the advice is %q", text)
	}
	b.SeeNone()
	sessiontest.Must(t, b.Write())
	l, err := office.Load(t.Context(), r.Session.Desk, id)
	sessiontest.Must(t, err)
	if !l.Sample.NoneSeen || len(l.Sample.Findings) != 2 {
		t.Errorf("the sample of the load is %+v", l.Sample)
	}
}
