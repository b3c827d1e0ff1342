package office

import (
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/law"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/title"
)

// otherEdition returns the edition to compare with the one a ticket was settled under: the one
// asked for, else the one before it in the same schedule, else the one after it. A correction that
// was issued after the delivery is used only when asked for. It returns nil when there is none.
func otherEdition(d Desk, used *rates.Edition, asked string, delivered quantity.Date) (*rates.Edition, error) {
	if asked != "" {
		return editionByID(d, asked)
	}
	var before, after *rates.Edition
	for _, e := range d.Rates().All() {
		later := e.Corrects != "" && e.Origin.Issued.After(delivered)
		if e.Schedule != used.Schedule || e.Commodity.ID != used.Commodity.ID || e.Hash == used.Hash || later {
			continue
		}
		if e.From.Before(used.From) {
			before = e // they come by their first day
		} else if after == nil {
			after = e
		}
	}
	if before != nil {
		return before, nil
	}
	return after, nil
}

func editionByID(d Desk, id string) (*rates.Edition, error) {
	if e, ok := d.Rates().ByID(id); ok {
		return e, nil
	}
	var known []string
	for _, e := range d.Rates().All() {
		known = append(known, e.ID)
	}
	return nil, message.NotFound.Errorf("there is no edition %q. Editions here: %s", id, strings.Join(known, ", "))
}

// RewrittenEditions returns the ids of editions in use whose text differs from the one tickets were
// settled under: the file was changed and its id was not. Those tickets keep their text; later
// settlements follow the new one, so that two tickets under one id may differ. The error is that of
// the book.
func RewrittenEditions(ctx context.Context, d Desk) (map[string]bool, error) {
	kept, err := d.Reader().EditionHashes(ctx)
	if err != nil {
		return nil, err
	}
	out := map[string]bool{}
	for _, e := range d.Rates().All() {
		if hashes := kept[e.ID]; len(hashes) > 0 && !slices.Contains(hashes, e.Hash) {
			out[e.ID] = true
		}
	}
	return out, nil
}

// KeptEdition reads the edition of a hash as the book keeps it.
func KeptEdition(ctx context.Context, b Book, hash string) (*rates.Edition, error) {
	id, text, err := b.Edition(ctx, hash)
	if err != nil {
		return nil, err
	}
	e, err := rates.Read(id, []byte(text))
	if err != nil {
		return nil, message.Errorf("edition %s is in the book but cannot be read: %w", id, err)
	}
	return e, nil
}

// TablesFor are the published rules a load is recorded and graded by: those its
// ticket keeps, or those in force on its day. So a table that changes leaves the
// tickets before it alone.
func TablesFor(ctx context.Context, d Desk, l *load.Load) (*grain.Tables, error) {
	if l.Settled != nil && l.Number > 0 {
		return d.TablesKept(ctx, l.Settled.Law)
	}
	return d.TablesOn(LawDay(d, l))
}

// LawDay is the day whose law a load without a ticket is under: the day of
// delivery, or today while it has none.
func LawDay(d Desk, l *load.Load) quantity.Date {
	if l.Details.Day.IsZero() {
		return d.Today()
	}
	return l.Details.Day
}

// KeptTables reads the published rules of a hash as the book keeps them; an
// empty hash is the first law's.
func KeptTables(ctx context.Context, b Book, hash string) (*grain.Tables, error) {
	if hash == "" {
		return grain.First(), nil
	}
	_, manifest, err := b.Edition(ctx, hash)
	if err != nil {
		return nil, err
	}
	l, err := law.Resolve(manifest, func(hash string) (string, error) {
		_, text, err := b.Edition(ctx, hash)
		return text, err
	})
	if err != nil {
		return nil, message.Errorf("the rules of law that the book keeps cannot be read: %w", err)
	}
	return grain.TablesOf(l)
}

// TitlesOf are the rules of the place about what stands under a ticket, by the law it was issued
// under; those of a load without a ticket are of its day.
func TitlesOf(ctx context.Context, d Desk, l *load.Load) (title.Rules, error) {
	if l.Number == 0 || l.Settled == nil {
		day := l.Details.Day
		if day.IsZero() {
			day = d.Today()
		}
		return title.RulesIn(d.Laws().On(day))
	}
	tables, err := d.TablesKept(ctx, l.Settled.Law)
	if err != nil {
		return title.Rules{}, err
	}
	return title.RulesIn(tables.Law())
}
