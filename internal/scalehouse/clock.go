package scalehouse

import (
	"context"
	"errors"
	"time"

	"tenthpoint/internal/book"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

const (
	// clockSlack is the step back of the clock that is not asked about: a clock that is corrected
	// over the network steps by seconds. Facts then carry the time of the last one, so times in the
	// journal never go back.
	clockSlack = 2 * time.Minute
	// longestRest is the time a book may go unused without a question. An elevator that opens again
	// after the winter answers once.
	longestRest = 100 * 24 * time.Hour
	// closingRest is the longest time since the last act when a day is closed: a day closed ahead,
	// under a wrong clock, would move everything later behind it.
	closingRest = 7 * 24 * time.Hour
)

// takeTime sets the batch's time, which is never before the last fact's. A clock that is back, or
// far ahead, is asked about before anything is written: the days that tickets count on follow from
// it.
func takeTime(w *Batch) error {
	last, err := w.tx.LastAt()
	if err != nil {
		return err
	}
	if err := clockFollows(w.desk, last, longestRest); err != nil {
		return err
	}
	w.at, w.lastAt = max(w.desk.Now(), last), last
	return nil
}

// clockFollows refuses a clock that is before the last fact, or so long after it that the book
// would have been unused for longer than allowed.
func clockFollows(d *Desk, last string, rest time.Duration) error {
	if last == "" {
		return nil
	}
	then, err := time.Parse(journal.TimeLayout, last)
	if err != nil {
		return message.Storage.Errorf("the last fact carries %q for a time. Verify the book", last)
	}
	switch gone := d.clock().UTC().Truncate(time.Second).Sub(then); {
	case gone < -clockSlack:
		return message.ClockStepped.Errorf("this computer's clock says %s, but the last fact in the book is of %s, which is later. Set the clock right, or say why it stands so", d.Local(d.Now()), d.Local(last))
	case gone > rest:
		return message.ClockStepped.Errorf("this computer's clock says %s, and the last fact in the book is of %s, long before. Set the clock right, or say why it stands so", d.Local(d.Now()), d.Local(last))
	}
	return nil
}

// CheckClock is the question that the next act would be refused with, or nil.
func CheckClock(ctx context.Context, d *Desk) error {
	last, some, err := d.book.Head(ctx)
	if err != nil || !some {
		return err
	}
	return clockFollows(d, last.At, longestRest)
}

// AnswerClock records why the clock is as it is, by whoever is at the scale, and work continues
// from the time it shows. Where there is no question nothing is written.
func AnswerClock(ctx context.Context, d *Desk, reason string) error {
	if err := d.MayWeigh("answer for the clock"); err != nil {
		return err
	}
	return d.book.Write(ctx, func(tx book.Tx) error {
		w := &Batch{desk: d, tx: tx, at: d.Now()}
		last, err := tx.LastAt()
		if err != nil {
			return err
		}
		if err := clockFollows(d, last, closingRest); !errors.Is(err, message.ClockStepped) {
			return err
		}
		f := journal.ClockAnswered{Last: last, Reason: reason}
		if err := f.Check(); err != nil {
			return err
		}
		return AppendIn(w, f.Kind(), journal.ClockSubject, f)
	})
}
