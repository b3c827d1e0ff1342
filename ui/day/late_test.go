package day

import (
	"strings"
	"testing"

	"tenthpoint/internal/daysheet"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

// What came after a day was closed stands over its sheet: until it is explained in red
// with the key of who may, then with the name and the reason.
func TestWhatCameLaterIsTold(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	s := NewDaySheet(r.Session)
	s.Step(-1)
	s.Refresh()
	closed, tells, waits := s.sheet.Closed, late{s}.status, late{s}.waits
	if closed == nil || tells().Text != "" || waits() {
		t.Fatalf("yesterday is closed %v and says %+v", closed != nil, tells())
	}
	closed.Late = true
	if got := tells(); got.State != model.Stop || !waits() || s.Status().State != model.Stop {
		t.Errorf("not explained, it says %+v and stands as %+v", got, s.Status())
	}
	closed.Late, closed.Explained = false, &daysheet.Explanation{By: "Mae Orton", At: "2025-10-14 08:00", Reason: "taken over late"}
	if got := tells(); got.State != model.Warn || !strings.Contains(got.Text, "Mae Orton") || !strings.Contains(got.Text, "taken over late") {
		t.Errorf("explained, it says %+v", got)
	}
}

// Explaining asks for a manager and a reason; a day on which nothing came later is
// refused by the book.
func TestExplainAsksAManager(t *testing.T) {
	r := sessiontest.DemoRoom(t, 40)
	s := NewDaySheet(r.Session)
	s.Step(-1)
	s.Refresh()
	late{s}.ask()
	if wrong := r.Answer(map[string]string{"reason": ""}); wrong["reason"] == "" {
		t.Error("it was explained without a reason")
	}
	r.Answer(map[string]string{"reason": "taken over late"})
	sessiontest.WantSaid(t, r, model.Stop, "as it was closed")
}
