package board

import (
	"testing"

	"tenthpoint/ui/session"
)

func TestWaits(t *testing.T) {
	tests := []struct{ since, now, want string }{
		{"2025-10-14T12:00:00Z", "2025-10-14T12:00:59Z", "just came"},
		{"2025-10-14T12:00:00Z", "2025-10-14T12:01:00Z", "1 min"},
		{"2025-10-14T12:00:00Z", "2025-10-14T12:59:59Z", "59 min"},
		{"2025-10-14T12:00:00Z", "2025-10-14T13:05:00Z", "1 h 05 min"},
		{"2025-10-14T12:00:00Z", "2025-10-16T12:00:00Z", "2 days"},
		{"2025-10-14T12:00:00Z", "2025-10-14T11:00:00Z", ""},
		{"", "2025-10-14T11:00:00Z", ""},
	}
	for _, tt := range tests {
		if got := waits(session.Language{}, tt.since, tt.now); got != tt.want {
			t.Errorf("from %s to %s is %q, want %q", tt.since, tt.now, got, tt.want)
		}
	}
}
