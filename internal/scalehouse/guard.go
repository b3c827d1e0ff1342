package scalehouse

import (
	"context"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
)

// Answer records the answer to a guard's question about a load, with a reason from the guard's
// list. Where the elevator requires a manager, only a manager may answer.
func Answer(ctx context.Context, at Actor, id, question, reason string) error {
	return at.do(ctx, func(w *Batch) error {
		if err := w.desk.MayWeigh("answer a question about a load"); err != nil {
			return err
		}
		l, err := w.load(id)
		if err != nil {
			return err
		}
		all, err := found(w, l)
		if err != nil {
			return err
		}
		f, asked := guard.Asked(all).Find(question)
		if !asked {
			return message.NotFound.Errorf("nothing called %q is asked about load %s. Leave the answer out", question, id)
		}
		if f.Act == elevator.GuardManager {
			if err := w.desk.MayManage("Answering this question"); err != nil {
				return message.Errorf("%s %w", f.Said, err)
			}
		}
		if reason, err = f.Reason(reason); err != nil {
			return err
		}
		return w.act(id, f.Answer(reason), nil)
	})
}

// found returns the findings of the guards on a load, given what the batch has written so far of
// other loads.
func found(w *Batch, l *load.Load) ([]guard.Finding, error) {
	if err := w.renewRows(l.ID); err != nil {
		return nil, err
	}
	around, err := office.Surroundings(w.desk, w.tx, l)
	if err != nil {
		return nil, err
	}
	return w.desk.check(l, around), nil
}

// guarded refuses a ticket while a question is unanswered, or a compulsory field is empty.
func guarded(w *Batch, l *load.Load) error {
	if err := guard.Incomplete(guard.Lacks(l, w.desk.profile)); err != nil {
		return err
	}
	all, err := found(w, l)
	if err != nil {
		return err
	}
	if asked := guard.Unanswered(l, all); len(asked) > 0 {
		return asked
	}
	return nil
}
