package housetest

import (
	"strings"
	"testing"

	"tenthpoint/internal/audit"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
)

// WantNamed wants a check to name each of these.
func WantNamed(t *testing.T, d *scalehouse.Desk, want ...string) {
	t.Helper()
	sound, err := audit.Verify(ctx, d, d.Book(), nil)
	Must(t, err)
	all := message.Texts("\n", sound.Problems).String()
	for _, w := range want {
		if !strings.Contains(all, w) {
			t.Errorf("not named: %s\nnamed:\n%s", w, all)
		}
	}
}

// Noted is the end of the chain, as somebody would note it.
func (s *Scene) Noted() journal.Head {
	s.T.Helper()
	last, _, err := s.Store.Head(ctx)
	Must(s.T, err)
	return journal.HeadOf(last)
}
