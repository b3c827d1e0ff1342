// Package growing adds up what single farms and fields have delivered, and whose it is: the
// production of a farm, as public offices and crop insurers ask for it.
package growing

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
)

// Farm is the production of one farm or field, of one grain and crop year.
type Farm struct {
	Grower, Name    string // who delivered it, by code and name
	Farm, Field     string // empty where no load named one
	Commodity, Year string
	Loads           int
	Net             quantity.Amount // as weighed
	Quantity        quantity.Amount // as settled
	Owners          []Owner
}

// Owner is one owner's part of it.
type Owner struct {
	Name     string
	Quantity quantity.Amount
}

// Production adds up the tickets in force of a grower, or of all, delivered from one day to another;
// no day is no bound. Amounts in another unit are lines of their own.
func Production(ctx context.Context, d office.Desk, grower string, from, to quantity.Date) ([]Farm, error) {
	rows, err := deliveries(ctx, d, grower)
	if err != nil {
		return nil, err
	}
	var out []Farm
	for _, r := range rows {
		l, err := office.Load(ctx, d, r.ID)
		if err != nil {
			return nil, err
		}
		if day := l.Details.Day; !from.IsZero() && day.Before(from) || !to.IsZero() && day.After(to) {
			continue
		}
		summary, err := r.Recorded().Summary()
		if err != nil {
			return nil, message.Errorf("ticket %d: %w", r.Ticket, err)
		}
		out = add(out, farmOf(l, summary))
	}
	slices.SortStableFunc(out, func(a, b Farm) int {
		return cmp.Or(strings.Compare(a.Name, b.Name), strings.Compare(a.Farm, b.Farm), strings.Compare(a.Field, b.Field), strings.Compare(a.Commodity, b.Commodity), strings.Compare(a.Year, b.Year))
	})
	return out, nil
}

// deliveries are the tickets in force of grain that came in, of a grower under all codes of the card.
func deliveries(ctx context.Context, d office.Desk, grower string) ([]book.LoadRow, error) {
	codes := []string{grower}
	all, err := office.Growers(ctx, d)
	if err != nil {
		return nil, err
	}
	if card, known := elevator.CardOf(all, grower); known {
		codes = card.Codes
	}
	var out []book.LoadRow
	seen := map[string]bool{}
	for _, code := range codes {
		rows, err := d.Reader().Loads(ctx, book.LoadFilter{Grower: code, FromTicket: 1, Phases: []string{string(load.Ticketed)}})
		if err != nil {
			return nil, err
		}
		for _, r := range rows {
			if r.Direction == string(load.Inbound) && !seen[r.ID] {
				seen[r.ID] = true
				out = append(out, r)
			}
		}
	}
	return out, nil
}

func farmOf(l *load.Load, s settle.Summary) Farm {
	d := l.Details
	f := Farm{
		Grower: d.Grower.ID, Name: d.Grower.Name, Farm: d.Grown.Farm, Field: d.Grown.Field, Commodity: d.Commodity, Year: d.CropYear,
		Loads: 1, Net: s.ScaleNet, Quantity: s.Quantity,
	}
	for i, part := range s.Owners {
		f.Owners = append(f.Owners, Owner{d.Shares[i].Name, part.Quantity})
	}
	if len(s.Owners) == 0 {
		f.Owners = []Owner{{d.Grower.Name, s.Quantity}}
	}
	return f
}

// add adds one load to the line it belongs to.
func add(all []Farm, one Farm) []Farm {
	for i, f := range all {
		same := f.Grower == one.Grower && f.Farm == one.Farm && f.Field == one.Field && f.Commodity == one.Commodity && f.Year == one.Year
		if !same || f.Net.Unit() != one.Net.Unit() || f.Quantity.Unit() != one.Quantity.Unit() {
			continue
		}
		f.Loads, f.Net, f.Quantity = f.Loads+1, f.Net.Add(one.Net), f.Quantity.Add(one.Quantity)
		f.Owners = addOwners(slices.Clone(f.Owners), one.Owners)
		all[i] = f
		return all
	}
	return append(all, one)
}

func addOwners(all, more []Owner) []Owner {
	for _, o := range more {
		i := slices.IndexFunc(all, func(have Owner) bool { return have.Name == o.Name })
		if i < 0 {
			all = append(all, o)
			continue
		}
		all[i].Quantity = all[i].Quantity.Add(o.Quantity)
	}
	return all
}
