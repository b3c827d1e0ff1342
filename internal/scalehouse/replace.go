package scalehouse

import (
	"context"

	"tenthpoint/internal/book"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/rests"
)

// Correct opens a load that corrects a ticket: it starts with everything the
// ticket's load had, to be amended, weighed or sampled again, and its own
// ticket takes the old one's place when it is issued.
//
// A ticket that something rests on is not corrected alone: see [CorrectWithChain].
func Correct(ctx context.Context, at Actor, number int64, reason string) (string, error) {
	return result(ctx, at, func(w *Batch) (string, error) { return correctIn(w, number, reason, false) })
}

// correctIn opens a load that corrects a ticket, alone or with what rests on it.
func correctIn(w *Batch, number int64, reason string, chain bool) (string, error) {
	if err := w.desk.MayManage("Correcting a ticket"); err != nil {
		return "", err
	}
	old, err := w.ticket(number)
	if err != nil {
		return "", err
	}
	if err := old.Allow(load.Superseded{By: number + 1, Reason: reason}); err != nil {
		return "", err
	}
	if err := w.notUnderCorrection(number); err != nil {
		return "", err
	}
	if !chain {
		resting, err := rests.Papers(w.tx, old)
		if err != nil {
			return "", err
		}
		if err := rests.Refusal(number, resting); err != nil {
			return "", err
		}
	}
	return w.openInPlace(old, load.Opened{Details: old.Details, Corrects: number, Reason: reason, Chain: chain})
}

// notUnderCorrection refuses a second correction while one is on the yard: only
// one of them could ever take the ticket's place.
func (w *Batch) notUnderCorrection(number int64) error {
	id, err := w.onYardWith(book.LoadFilter{Corrects: number})
	if err != nil || id == "" {
		return err
	}
	return message.Refused.Errorf("ticket %d is being corrected already, as load %s. Finish that load, or turn it away with a reason", number, id)
}

// Reissue opens a load for the grain of a void ticket: it starts with everything
// the void ticket's load had, and its own ticket names the void one. The void
// ticket stays void on its day, and the grain counts with the new ticket.
//
// A void ticket is reissued once. A load turned away before it had its ticket
// leaves the void ticket free to be reissued; of a ticket that is voided in its
// turn, that one is.
func Reissue(ctx context.Context, at Actor, number int64, reason string) (string, error) {
	return result(ctx, at, func(w *Batch) (string, error) {
		if err := w.desk.MayManage("Reissuing a void ticket"); err != nil {
			return "", err
		}
		old, err := w.ticket(number)
		if err != nil {
			return "", err
		}
		if err := old.Allow(load.Reissued{By: number + 1}); err != nil {
			return "", err
		}
		if err := w.notUnderReissue(number); err != nil {
			return "", err
		}
		return w.openInPlace(old, load.Opened{Details: old.Details, Reissues: number, Reason: reason})
	})
}

// notUnderReissue refuses a second load for a void ticket while one is on the
// yard: the grain would count twice.
func (w *Batch) notUnderReissue(number int64) error {
	id, err := w.onYardWith(book.LoadFilter{Reissues: number})
	if err != nil || id == "" {
		return err
	}
	return message.Refused.Errorf("ticket %d is being reissued already, as load %s. Finish that load, or turn it away with a reason", number, id)
}

// openInPlace opens a load that begins with all that another ticket's load had.
func (w *Batch) openInPlace(old *load.Load, f load.Opened) (string, error) {
	id, err := w.open(f)
	if err != nil {
		return "", err
	}
	for _, f := range carried(old) {
		if err := w.act(id, f, nil); err != nil {
			return "", err
		}
	}
	return id, nil
}

// carried returns a load's weights, accepted limits, answers and sample, each with its original
// author and time.
func carried(old *load.Load) []load.Fact {
	var facts []load.Fact
	for _, w := range old.Weighings {
		facts = append(facts, load.Weighed{Weighing: w.Weighing, Carried: &w.Stamp})
	}
	for _, a := range old.Accepted {
		facts = append(facts, load.Accepted{Limit: a.Limit, Reason: a.Reason, Carried: &a.Stamp})
	}
	for _, a := range old.Answers {
		again := a.Answered
		again.Carried = &a.Stamp
		facts = append(facts, again)
	}
	if old.Sampled.At != "" {
		facts = append(facts, load.Sampled{Sample: old.Sample, Carried: &old.Sampled})
	}
	return facts
}
