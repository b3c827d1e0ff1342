package desk

import (
	"context"
	"fmt"

	"tenthpoint/internal/load"
)

// Correct opens a load that corrects a ticket: it starts with everything the
// ticket's load had, to be amended, weighed or sampled again, and its own
// ticket takes the old one's place when it is issued.
func Correct(ctx context.Context, at Actor, number int64, reason string) (string, error) {
	return result(ctx, at, func(w *Batch) (string, error) {
		if err := w.desk.mayManage("Correcting a ticket"); err != nil {
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
		return w.openInPlace(old, load.Opened{Details: old.Details, Corrects: number, Reason: reason})
	})
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

// notUnderCorrection refuses a second correction while one is on the yard: only
// one of them could ever take the ticket's place.
func (w *Batch) notUnderCorrection(number int64) error {
	id, err := w.onYardFor("corrects", number)
	if err != nil || id == "" {
		return err
	}
	return fmt.Errorf("ticket %d is being corrected already, as load %s. Finish that load, or turn it away with a reason", number, id)
}

// onYardFor is the load on the yard that is to take a ticket's place, by the
// column of the lists that names the ticket; empty when there is none.
func (w *Batch) onYardFor(column string, number int64) (id string, err error) {
	if err := w.renewRows(); err != nil {
		return "", err
	}
	err = w.tx.QueryRow("SELECT coalesce(max(id), '') FROM loads WHERE "+column+" = ? AND phase IN (?, ?)",
		number, string(load.OnYard), string(load.Ready)).Scan(&id)
	return id, err
}

// carried are a load's weights, accepted limits and sample, each as it was
// written down by whom and when.
func carried(old *load.Load) []load.Fact {
	var facts []load.Fact
	for _, w := range old.Weighings {
		facts = append(facts, load.Weighed{Weighing: w.Weighing, Carried: &w.Stamp})
	}
	for _, a := range old.Accepted {
		facts = append(facts, load.Accepted{Limit: a.Limit, Reason: a.Reason, Carried: &a.Stamp})
	}
	if old.Sampled.At != "" {
		facts = append(facts, load.Sampled{Sample: old.Sample, Carried: &old.Sampled})
	}
	return facts
}
