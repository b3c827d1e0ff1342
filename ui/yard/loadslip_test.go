package yard

import (
	"strings"
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/ui/session/sessiontest"
)

// The draft names who will sign the ticket: whoever is at the desk, not the one
// the elevator names for when nobody is.
func TestDraftIsSignedByWhoIsAtTheDesk(t *testing.T) {
	r := sessiontest.DemoRoom(t, 0)
	y := NewYard(r.Session)
	fillIn(y.Form(), wholeCorn)
	sessiontest.Must(t, y.Form().Commit())
	if named := r.Session.Desk.Profile().Weigher; named == demo.Manager {
		t.Fatalf("%s is at the desk and named in the profile too", named)
	}
	draft := sessiontest.TextOf(y.Form().Preview().Slip)
	at := strings.Index(draft, "Weighed by")
	if at < 0 || !strings.Contains(draft[at:], demo.Manager) {
		t.Errorf("the draft is not signed by %s:\n%s", demo.Manager, draft)
	}
}
