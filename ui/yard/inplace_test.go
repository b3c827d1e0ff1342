package yard

import (
	"strings"
	"testing"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/session/sessiontest"
)

// correcting is the form of a load that corrects a ticket of corn issued before.
func correcting(t *testing.T, open func(r *sessiontest.Room, number int64) (string, error)) (*LoadForm, int64) {
	t.Helper()
	r := sessiontest.EmptyDemo(t)
	number, err := corn(r).Issue()
	sessiontest.Must(t, err)
	var id string
	sessiontest.Must(t, r.Session.As(demo.Manager, func() (err error) {
		id, err = open(r, number)
		return err
	}))
	l, err := office.Load(t.Context(), r.Session.Desk, id)
	sessiontest.Must(t, err)
	return NewLoadForm(r.Session, l), number
}

func correct(r *sessiontest.Room, number int64) (string, error) {
	return scalehouse.Correct(r.T.Context(), r.Session.Desk, number, "bin was B2")
}

// A correction in which nothing is changed is not issued, whatever the reason said.
func TestACorrectionWithoutADifferenceIsRefused(t *testing.T) {
	f, _ := correcting(t, correct)
	if f.Now.CanIssue() || !strings.Contains(f.Now.WhyNotIssue(), "Nothing is changed") {
		t.Errorf("it may be issued: %v, %q", f.Now.CanIssue(), f.Now.WhyNotIssue())
	}
	f.Type("remark", "the driver signed")
	if !f.Now.CanIssue() {
		t.Errorf("with another remark: %s", f.Now.WhyNotIssue())
	}
}

// Before the ticket of a correction is issued the form says what is not as on the
// ticket it corrects: old, new and difference, and what the grower has more or less.
func TestACorrectionShowsItsDifference(t *testing.T) {
	f, number := correcting(t, correct)
	f.Type("tare", "24140")
	paper := sessiontest.TextOf(f.Preview().Working())
	for _, want := range []string{"Against ticket", "28,180 lb → 28,160 lb", "–20 lb"} {
		if !strings.Contains(paper, want) {
			t.Errorf("ticket %d: the working does not say %q:\n%s", number, want, paper)
		}
	}
	if got := f.Preview().Margin.Text; !strings.Contains(got, "Payable $") || !strings.Contains(got, "–$") {
		t.Errorf("beside the figures stands %q", got)
	}
}

// A void ticket is reissued as it was: only its number is another.
func TestAReissueMayBeAsItWas(t *testing.T) {
	f, _ := correcting(t, func(r *sessiontest.Room, number int64) (string, error) {
		if err := scalehouse.Void(r.T.Context(), r.Session.Desk, number, "torn"); err != nil {
			return "", err
		}
		return scalehouse.Reissue(r.T.Context(), r.Session.Desk, number, "torn")
	})
	if !f.Now.CanIssue() {
		t.Errorf("it may not be issued: %s", f.Now.WhyNotIssue())
	}
}
