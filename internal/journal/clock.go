package journal

import (
	"strings"

	"tenthpoint/internal/message"
)

// ClockSubject is the subject of facts about the clock.
const ClockSubject = "clock"

// ClockAnswered records why the computer's clock is before the last fact, or long after it. It is
// the only fact that may be earlier than the one before it.
type ClockAnswered struct {
	Last   string `json:"last"` // the time of the fact before
	Reason string `json:"reason"`
}

// Kind names the fact in the journal.
func (ClockAnswered) Kind() string { return "clock.answered" }

// Check requires the reason.
func (f ClockAnswered) Check() error {
	if strings.TrimSpace(f.Reason) == "" {
		return message.Incomplete.Errorf("say why the clock stands so")
	}
	return nil
}
