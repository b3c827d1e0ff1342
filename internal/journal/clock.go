package journal

import (
	"strings"

	"tenthpoint/internal/message"
)

// ClockSubject is what answers about the clock are facts of.
const ClockSubject = "clock"

// ClockAnswered is the fact that the computer's clock stands before the last fact,
// or long after it, and why. It is the one fact that may be earlier than the one
// before it.
type ClockAnswered struct {
	Last   string `json:"last"` // the time of the fact before
	Reason string `json:"reason"`
}

// Kind names the fact in the journal.
func (ClockAnswered) Kind() string { return "clock.answered" }

// Check asks for the reason.
func (f ClockAnswered) Check() error {
	if strings.TrimSpace(f.Reason) == "" {
		return message.Incomplete.Errorf("say why the clock stands so")
	}
	return nil
}
