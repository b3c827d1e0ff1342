package desk

import (
	"context"
	"fmt"
	"strings"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/store"
)

// sheetTicket is a row of the lists as the sheets read it.
func (d *Desk) sheetTicket(r store.LoadRow) (daysheet.Ticket, error) {
	t := daysheet.Ticket{
		Number: r.Ticket, Load: r.ID, Outbound: r.Direction == string(load.Outbound),
		Commodity: r.Commodity, Name: commodityName(r.Commodity), GrowerID: r.Grower, Grower: r.GrowerName, Owners: r.Owners,
		Truck: r.Truck, Bin: r.Bin, Taken: r.Disposition, Contract: r.Contract, Weigher: r.Weigher, Edition: r.Edition, EditionHash: r.EditionHash,
		Sample: r.Sample, Kept: r.Kept, Corrects: r.Corrects, Reissues: r.Reissues, ReissuedBy: r.ReissuedBy, Reason: r.Reason,
		Manual: parted(r.Manual), Accepted: parted(r.Accepted), Flags: parted(r.Flags), Figures: r.Figures,
	}
	if r.Phase != string(load.TurnedAway) {
		var err error
		if t.Summary, err = r.Recorded().Summary(); err != nil {
			return t, fmt.Errorf("ticket %d: %w", r.Ticket, err)
		}
	}
	for _, one := range []struct {
		text string
		into interface{ UnmarshalText([]byte) error }
	}{{r.IssuedDay, &t.Day}, {r.Day, &t.Delivered}, {r.KeepUntil, &t.KeepUntil}, {r.EndedDay, &t.Ended}, {r.ReissuedDay, &t.ReissuedOn}} {
		if err := one.into.UnmarshalText([]byte(one.text)); err != nil {
			return t, err
		}
	}
	at := r.IssuedAt
	switch r.Phase {
	case string(load.TurnedAway):
		t.Refused, t.Day, at, t.EndedWho = true, t.Ended, r.EndedAt, r.Who
	case string(load.Void), string(load.Corrected):
		t.EndedBy, t.EndedWho = r.EndedBy, r.Who
	}
	if _, hour, ok := strings.Cut(d.Local(at), " "); ok {
		t.Time = hour
	}
	return t, nil
}

// parted are the lines of a text; none of an empty one.
func parted(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, "\n")
}

// commodityName is a commodity for people; one that is not known here keeps its
// id.
func commodityName(id string) string {
	if c, err := grain.ByID(id); err == nil {
		return c.Name
	}
	return id
}

// isExample reports whether any of the tickets was settled under invented
// rates. An edition never changes, so the answer is kept.
func (d *Desk) isExample(ctx context.Context, tickets []daysheet.Ticket) (bool, error) {
	for _, t := range tickets {
		if t.EditionHash == "" {
			continue
		}
		example, known := d.examples[t.EditionHash]
		if !known {
			e, err := d.Kept(ctx, t.EditionHash)
			if err != nil {
				return false, err
			}
			example = e.Status == rates.Example
			if d.examples == nil {
				d.examples = map[string]bool{}
			}
			d.examples[t.EditionHash] = example
		}
		if example {
			return true, nil
		}
	}
	return false, nil
}
