package scalelink

import (
	"context"
	"errors"
	"time"

	"tenthpoint/internal/message"
)

// Link is a scale being listened to. It may be used from several goroutines.
type Link interface {
	// Open begins to listen and returns at once: a scale that is switched off
	// must not keep the desk from opening. The link connects, and connects
	// again, until ctx ends or Close is called.
	Open(ctx context.Context) error
	// Latest returns the newest reading. When there is no fresh one the error wraps ErrNoReading
	// and says why: not connected, silent, or only noise.
	Latest() (Reading, error)
	// WaitStable waits for a reading at rest that arrives after the call, so that it never returns
	// a weight from before the truck moved. It waits through lost connections until ctx ends or the
	// link is closed; the error then says what the scale was doing.
	WaitStable(ctx context.Context) (Reading, error)
	// Changed returns a channel that is closed at the next reading or fault.
	Changed() <-chan struct{}
	// Close stops listening and waits until the line is free. It may be
	// called more than once.
	Close() error
}

// ErrNoReading is wrapped by every error that means "no fresh reading".
var ErrNoReading = message.Device.Errorf("No reading")

// Settings are all a link needs beside the wire. Zero values of Fresh, Backoff
// and Clock mean 3 s, 1 s doubling to 30 s, and the wall clock.
type Settings struct {
	Profile Profile
	Scale   Scale
	Steady  Steady        // required when the profile does not tell motion
	Fresh   time.Duration // a reading older than this is no reading
	Backoff Backoff
	Clock   Clock
}

// Check returns every fault of the settings at once, joined.
func (s Settings) Check() error {
	faults := []error{s.Profile.Check(), s.Scale.Check(), s.Steady.check()}
	if s.Steady == (Steady{}) && !s.Profile.saysMotion() {
		faults = append(faults, message.Device.Errorf("Scale %s: the profile %q does not tell motion, so say how many readings within how many divisions count as rest.", s.Scale.Name, s.Profile.Name))
	}
	if s.Fresh < 0 || s.Backoff.First < 0 || s.Backoff.Most < s.Backoff.First {
		faults = append(faults, message.Device.Errorf("Scale %s: the waits (fresh %s, connect again after %s, at most %s) must not be below zero, and the last not below the one before.", s.Scale.Name, s.Fresh, s.Backoff.First, s.Backoff.Most))
	}
	return errors.Join(faults...)
}

// usual sets defaults for zero values.
func (s Settings) usual() Settings {
	if s.Fresh == 0 {
		s.Fresh = 3 * time.Second
	}
	if s.Backoff == (Backoff{}) {
		s.Backoff = Backoff{First: time.Second, Most: 30 * time.Second}
	}
	if s.Clock == nil {
		s.Clock = WallClock{}
	}
	return s
}
