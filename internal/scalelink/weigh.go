package scalelink

import (
	"context"
	"errors"

	"tenthpoint/internal/message"
)

// Weigh waits for the truck on the deck to come to rest and returns its weight, if it may go on a
// ticket. The wait is for that truck: it ends when the line is lost after the first reading, when
// the indicator shows over, under or a fault, or when the deck is empty again. The next weight
// would be another truck's. The error is a [Refused], or says why there was no reading; with a
// Refused the reading is returned too, to be shown.
func Weigh(ctx context.Context, link Link, scale Scale) (Reading, error) {
	wait := weighing{scale: scale}
	for changed := link.Changed(); ; {
		select {
		case <-ctx.Done():
			return Reading{}, unsettled(link, scale, ctx.Err())
		case <-changed:
		}
		changed = link.Changed()
		if reading, over, err := wait.judge(link.Latest()); over {
			return reading, err
		}
	}
}

// weighing is one wait for a truck at rest.
type weighing struct {
	scale  Scale
	heard  bool // a reading has come
	loaded bool // there was a load on the deck
}

// judge reports whether a reading, or its absence, ends the wait, and with what.
func (w *weighing) judge(reading Reading, err error) (_ Reading, over bool, _ error) {
	if err != nil {
		return Reading{}, w.heard || errors.Is(err, errNotOpen), waitEnded{err, err}
	}
	w.heard = true
	if reading.IsStable() || !reading.hasWeight() {
		return reading, true, w.scale.Accept(reading)
	}
	if reading.Weight.Sign() > 0 {
		w.loaded = true
		return Reading{}, false, nil
	}
	return Reading{}, w.loaded, waitEnded{ErrDeckEmpty, message.Device.Errorf("%s is back at zero: the truck has left the deck.", w.scale.Name)}
}

// ErrDeckEmpty is wrapped by the error of a wait during which the truck left.
var ErrDeckEmpty = message.Device.Errorf("the deck is empty")
