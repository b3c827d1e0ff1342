package store

import (
	"context"
	"strings"
)

// Search looks for tickets as a person does: by a few letters. Empty fields do
// not narrow it. The highest ticket comes first.
type Search struct {
	Terms []Term // all of them must fit
	// Ticket, Grower and Truck are given whole; a grower is also found as one
	// who shares in the load.
	Ticket        int64
	Grower, Truck string
	Phases        []string
	FromDay       string // issued on or after
	ToDay         string // issued on or before
	// Before leaves out tickets of this number and above, so that a list goes on
	// where its last page ended. Nought begins with the newest.
	Before int64
	// Refused lists loads that were turned away, which have no ticket, the last
	// one first; days are then those of the refusal and Before is not looked at.
	Refused bool
	Limit   int
}

// Term is one word of a search. It fits a load when it is part of the grower's
// name or the truck's, the whole of the grower's code, the beginning of the
// ticket's number, or when the load is of one of the commodities that the word
// may stand for.
type Term struct {
	Text        string
	Commodities []string
}

// Search lists the tickets that fit.
func (b *Book) Search(ctx context.Context, s Search) ([]LoadRow, error) {
	where, args := s.where()
	order := " ORDER BY ticket DESC"
	if s.Refused {
		order = " ORDER BY ended_at DESC"
	}
	rows, err := b.read.QueryContext(ctx, "SELECT "+loadColumns+" FROM loads WHERE "+where+order+" LIMIT ?", append(args, s.Limit)...)
	if err != nil {
		return nil, b.sentence(err)
	}
	defer rows.Close()
	var out []LoadRow
	for rows.Next() {
		r, err := scanLoad(rows)
		if err != nil {
			return nil, err
		}
		out = append(out, r)
	}
	return out, b.sentence(rows.Err())
}

// CountFound is how many tickets fit, over all pages.
func (b *Book) CountFound(ctx context.Context, s Search) (int64, error) {
	s.Before = 0
	where, args := s.where()
	var n int64
	err := b.read.QueryRowContext(ctx, "SELECT count(*) FROM loads WHERE "+where, args...).Scan(&n)
	return n, b.sentence(err)
}

// conditions gathers what a row must be.
type conditions struct {
	all  []string
	args []any
}

func (c *conditions) add(condition string, args ...any) {
	c.all, c.args = append(c.all, condition), append(c.args, args...)
}

// list is a condition that a column is one of some values.
func (c *conditions) list(column string, values []string) {
	args := make([]any, len(values))
	for i, v := range values {
		args[i] = v
	}
	c.add(column+" IN ("+marks(len(values))+")", args...)
}

func marks(n int) string { return strings.TrimSuffix(strings.Repeat("?, ", n), ", ") }

func (s Search) where() (string, []any) {
	c := &conditions{}
	day := "issued_day"
	if s.Refused {
		day = "ended_day"
		c.add("ticket IS NULL AND ended_at <> ''")
	} else {
		c.add("ticket IS NOT NULL")
	}
	if s.Before > 0 && !s.Refused {
		c.add("ticket < ?", s.Before)
	}
	if s.Ticket > 0 {
		c.add("ticket = ?", s.Ticket)
	}
	if s.Grower != "" {
		c.add("(grower = ? OR id IN (SELECT load FROM owners WHERE grower = ?))", s.Grower, s.Grower)
	}
	if s.Truck != "" {
		c.add("truck = ?", s.Truck)
	}
	if s.FromDay != "" {
		c.add(day+" >= ?", s.FromDay)
	}
	if s.ToDay != "" {
		c.add(day+" <= ?", s.ToDay)
	}
	if len(s.Phases) > 0 {
		c.list("phase", s.Phases)
	}
	for _, t := range s.Terms {
		t.fits(c)
	}
	return strings.Join(c.all, " AND "), c.args
}

// fits adds one word's condition.
func (t Term) fits(c *conditions) {
	part := "%" + likeWords.Replace(t.Text) + "%"
	either := []string{"grower_name LIKE ? ESCAPE '!'", "truck LIKE ? ESCAPE '!'", "grower = ?", "CAST(ticket AS TEXT) LIKE ? ESCAPE '!'"}
	args := []any{part, part, t.Text, likeWords.Replace(t.Text) + "%"}
	if len(t.Commodities) > 0 {
		either = append(either, "commodity IN ("+marks(len(t.Commodities))+")")
		for _, id := range t.Commodities {
			args = append(args, id)
		}
	}
	c.add("("+strings.Join(either, " OR ")+")", args...)
}

// likeWords keeps a person's % and _ from meaning "anything".
var likeWords = strings.NewReplacer("!", "!!", "%", "!%", "_", "!_")
