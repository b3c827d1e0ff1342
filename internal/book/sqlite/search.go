package sqlite

import (
	"context"
	"strings"
	"tenthpoint/internal/book"
	"tenthpoint/internal/settle"
)

// Search lists the tickets that fit.
func (r loadReader) Search(ctx context.Context, s book.Search) ([]book.LoadRow, error) {
	where, args := searchWhere(s)
	order := " ORDER BY ticket DESC"
	if s.Refused {
		order = " ORDER BY ended_at DESC"
	}
	return list(r.during(ctx), scanRow, "SELECT "+loadColumns+" FROM loads WHERE "+where+order+" LIMIT ?", append(args, s.Limit)...)
}

// CountFound returns the number of matching tickets, over all pages.
func (r loadReader) CountFound(ctx context.Context, s book.Search) (int64, error) {
	s.Before = 0
	where, args := searchWhere(s)
	var n int64
	from := r.during(ctx)
	err := from.queryRow("SELECT count(*) FROM loads WHERE "+where, args...).Scan(&n)
	return n, from.fail(err)
}

// conditions collects the conditions on a row.
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

// grower is a condition that one of some growers has a part in the load.
func (c *conditions) grower(codes []string) {
	var args []any
	for range 2 {
		for _, code := range codes {
			args = append(args, code)
		}
	}
	in := "IN (" + marks(len(codes)) + ")"
	c.add("(grower "+in+" OR id IN (SELECT load FROM owners WHERE grower "+in+"))", args...)
}

func marks(n int) string { return strings.TrimSuffix(strings.Repeat("?, ", n), ", ") }

func searchWhere(s book.Search) (string, []any) {
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
		c.grower(append([]string{s.Grower}, s.AlsoGrowers...))
	}
	if s.Truck != "" {
		c.add("truck = ?", s.Truck)
	}
	if s.Commodity != "" {
		c.add("commodity = ?", s.Commodity)
	}
	if s.Bin != "" {
		c.add("bin = ?", s.Bin)
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
	c.found(s)
	for _, t := range s.Terms {
		termFits(t, c)
	}
	return strings.Join(c.all, " AND "), c.args
}

// found adds conditions on what was found of a load, and on when it came.
func (c *conditions) found(s book.Search) {
	const line = `CAST(json_extract(figures, '$."' || ? || '"') AS REAL)`
	if s.MoistFrom != "" {
		c.add(line+" >= CAST(? AS REAL)", settle.LineMoisture, s.MoistFrom)
	}
	if s.MoistBelow != "" {
		c.add(line+" < CAST(? AS REAL)", settle.LineMoisture, s.MoistBelow)
	}
	if s.With != "" {
		c.add(line+" <> 0", s.With)
	}
	if s.CameFrom != "" {
		c.add("opened_at >= ? AND opened_at < ? AND corrects IS NULL AND reissues IS NULL", s.CameFrom, s.CameBefore)
	}
}

// termFits adds one word's condition.
func termFits(t book.Term, c *conditions) {
	part := "%" + likeWords.Replace(t.Text) + "%"
	either := []string{"grower_name LIKE ? ESCAPE '!'", "truck LIKE ? ESCAPE '!'", "grower = ?", "CAST(ticket AS TEXT) LIKE ? ESCAPE '!'"}
	args := []any{part, part, t.Text, likeWords.Replace(t.Text) + "%"}
	if len(t.Commodities) > 0 {
		either = append(either, "commodity IN ("+marks(len(t.Commodities))+")")
		for _, id := range t.Commodities {
			args = append(args, id)
		}
	}
	if len(t.Growers) > 0 {
		either = append(either, "grower IN ("+marks(len(t.Growers))+")")
		for _, code := range t.Growers {
			args = append(args, code)
		}
	}
	c.add("("+strings.Join(either, " OR ")+")", args...)
}

// likeWords keeps a person's % and _ from meaning "anything".
var likeWords = strings.NewReplacer("!", "!!", "%", "!%", "_", "!_")
