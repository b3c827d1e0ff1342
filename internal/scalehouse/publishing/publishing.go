// Package publishing has the acts by which a head office lays growers' cards and editions down for its
// sites, and those by which a site takes them over. The ideas are in package published.
package publishing

import (
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/published"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
)

// Grower publishes the card of a grower as the office's book now has it, from a day on.
func Grower(ctx context.Context, d *scalehouse.Desk, g elevator.Grower, from quantity.Date) (published.Publication, error) {
	p := published.Publication{From: orToday(d, from), Grower: &g}
	return p, publish(ctx, d, p, nil)
}

// Edition publishes an edition of the house, from a day on: its own first day where none is given.
func Edition(ctx context.Context, d *scalehouse.Desk, e *rates.Edition, from quantity.Date) (published.Publication, error) {
	if from.IsZero() {
		from = d.Today()
		if e.From.After(from) {
			from = e.From
		}
	}
	p := published.Publication{From: from, Edition: &published.Edition{ID: e.ID, Hash: e.Hash}}
	if e.Status != rates.House {
		return p, message.Refused.Errorf("edition %s is marked %s. An edition of the house is marked %q", e.ID, e.Status.Message(), string(rates.House))
	}
	return p, publish(ctx, d, p, e)
}

// Withdraw ends a publication from a day on, which gives sites their own back.
func Withdraw(ctx context.Context, d *scalehouse.Desk, of string, from quantity.Date, reason string) (published.Publication, error) {
	if strings.TrimSpace(reason) == "" {
		return published.Publication{}, message.Incomplete.Errorf("say why %s is withdrawn; it is kept in the book", of)
	}
	all, err := List(ctx, d)
	if err != nil {
		return published.Publication{}, err
	}
	for _, was := range slices.Backward(all) {
		if was.Of() == of && was.Withdrawn == "" {
			was.From, was.Withdrawn = orToday(d, from), reason
			return was, publish(ctx, d, was, nil)
		}
	}
	return published.Publication{}, message.NotFound.Errorf("%q was never published. Look with \"tenth office publish\"", of)
}

func orToday(d *scalehouse.Desk, from quantity.Date) quantity.Date {
	if from.IsZero() {
		return d.Today()
	}
	return from
}

// List is everything that an office's book publishes, in the order of their names.
func List(ctx context.Context, d *scalehouse.Desk) ([]published.Publication, error) {
	return office.RecordsOf[published.Publication](ctx, d.Reader())
}

// publish enters a publication, and keeps the text of an edition.
func publish(ctx context.Context, d *scalehouse.Desk, p published.Publication, e *rates.Edition) error {
	if err := d.MayManage("Publishing for all sites"); err != nil {
		return err
	}
	if p.From.Before(d.Today()) {
		return message.Refused.Errorf("%s would hold from %s on, which has passed: sites may have issued tickets of that day. Publish it from today or a later day", p.Of(), p.From)
	}
	return d.Batch(ctx, func(w *scalehouse.Batch) error {
		if err := isNewEdition(w, p); err != nil {
			return err
		}
		if e != nil {
			if err := scalehouse.KeepIn(w, e.ID, e.Hash, e.Text); err != nil {
				return err
			}
		}
		return scalehouse.SetRecord(ctx, w, p.ID(), p)
	})
}

// isNewEdition refuses an edition that was published with another text, or that was withdrawn.
func isNewEdition(w *scalehouse.Batch, p published.Publication) error {
	if p.Edition == nil || p.Withdrawn != "" {
		return nil
	}
	all, err := scalehouse.RecordsIn[published.Publication](w)
	if err != nil {
		return err
	}
	for _, was := range all {
		if was.Of() == p.Of() && (was.Withdrawn != "" || *was.Edition != *p.Edition) {
			return message.Refused.Errorf("edition %s was published before, with another text or until it was withdrawn. Give the new one an id of its own", p.Edition.ID)
		}
	}
	return nil
}
