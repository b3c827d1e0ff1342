package office

import (
	"context"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/title"
)

// RowOf is a load as lists and totals read it.
func RowOf(l *load.Load) book.LoadRow {
	r := book.LoadRow{
		ID: l.ID, Phase: string(l.Phase), Direction: string(l.Details.Direction),
		Day: l.Details.Day.String(), OpenedAt: l.Opened.At,
		Commodity: l.Details.Commodity, Grower: l.Details.Grower.ID, GrowerName: l.Details.Grower.Name,
		Truck: truckName(l.Details.Truck), Bin: l.Details.Bin, Onward: l.Onward,
		Farm: l.Details.Grown.Farm, Field: l.Details.Grown.Field, Lot: l.Details.Lot,
		Disposition: string(l.Details.Under), Contract: l.Details.Terms.No,
		Ticket: l.Number, IssuedAt: l.Issued.At, IssuedDay: l.IssuedDay.String(),
		EndedAt: l.Ended.At, EndedDay: l.Ended.Day.String(), EndedBy: l.Ended.By, Corrects: l.Corrects,
		Reissues: l.Reissues, ReissuedBy: l.Reissue.By, ReissuedDay: l.Reissue.Day.String(),
		Reason: l.Ended.Reason, Who: l.Weigher, Weigher: l.Weigher, Manual: manual(l),
		Flags: load.FlagLines(l), Sample: l.Sample.Number,
		Kept: l.Sample.Kept, KeepUntil: l.Sample.Until.String(),
	}
	if l.Ended.Who != "" {
		r.Who = l.Ended.Who
	}
	r.Accepted = load.PassedLines(l)
	for _, o := range l.Details.Shares {
		r.Owners = append(r.Owners, o.ID)
	}
	r.Titles = titles(l.Details)
	if l.Settled != nil {
		r.Edition, r.EditionHash, r.Figures, r.Engine = l.Settled.Edition, l.Settled.EditionHash, l.Settled.Figures, l.Settled.Engine
	}
	return r
}

// titles are the terms of a load owner by owner, where the load's own do not say all.
func titles(d load.Details) []title.Terms {
	deals, say := d.Deals(), false
	out := make([]title.Terms, len(deals))
	for i, deal := range deals {
		out[i] = deal.Terms
		say = say || deal.Whose != "" || deal.Terms != d.Terms
	}
	if !say {
		return nil
	}
	return out
}

// typedWeights are the lines about weights typed by hand, as [manual] wrote them: draft, which
// weight, reason.
func typedWeights(lines []string) (out []message.Text) {
	for _, line := range lines {
		head, reason, _ := strings.Cut(line, ": ")
		draft, which := "", head
		if at := strings.LastIndex(head, " "); at >= 0 {
			draft, which = head[:at], head[at+1:]
		}
		out = append(out, message.List(": ", message.List(" ", message.Own(draft), which), message.Own(reason)))
	}
	return out
}

func truckName(t load.Truck) string {
	if t.ID != "" {
		return t.ID
	}
	return t.Plate
}

func manual(l *load.Load) string {
	var out []string
	for _, w := range l.Weighings {
		if w.Source == load.ByHand {
			out = append(out, strings.TrimSpace(w.Draft+" "+string(w.Which)+": "+w.Reason))
		}
	}
	return strings.Join(out, "\n")
}

// SheetTicket is a row of the lists as the sheets read it.
func SheetTicket(d Desk, r book.LoadRow) (daysheet.Ticket, error) {
	t := daysheet.Ticket{
		Number: r.Ticket, Load: r.ID, Outbound: r.Direction == string(load.Outbound),
		Commodity: r.Commodity, Name: grain.NameOf(r.Commodity), GrowerID: r.Grower, Grower: r.GrowerName, Owners: r.Owners,
		Truck: r.Truck, Bin: r.Bin, Disposition: r.Disposition, Contract: r.Contract, Titles: r.Titles, Weigher: r.Weigher, Edition: r.Edition, EditionHash: r.EditionHash,
		Sample: r.Sample, Kept: r.Kept, Corrects: r.Corrects, Reissues: r.Reissues, ReissuedBy: r.ReissuedBy, Reason: r.Reason,
		Manual: typedWeights(parted(r.Manual)), Figures: r.Figures,
	}
	var err error
	if t.Flags, err = load.ReadFlagLines(r.Flags); err != nil {
		return t, message.Errorf("load %v: %w", r.ID, err)
	}
	if t.Accepted, t.Answered, err = load.ReadPassedLines(r.Accepted); err != nil {
		return t, message.Errorf("load %v: %w", r.ID, err)
	}
	if r.Phase != string(load.TurnedAway) {
		if t.Summary, err = r.Recorded().Summary(); err != nil {
			return t, message.Errorf("ticket %d: %w", r.Ticket, err)
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

// parted splits a text into lines; none for an empty one.
func parted(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, "\n")
}

// IsExample reports whether any of the tickets was settled under invented rates.
func IsExample(ctx context.Context, d Desk, tickets []daysheet.Ticket) (bool, error) {
	for _, t := range tickets {
		if t.EditionHash == "" {
			continue
		}
		e, err := d.Kept(ctx, t.EditionHash)
		if err != nil {
			return false, err
		}
		if e.Status == rates.Example {
			return true, nil
		}
	}
	return false, nil
}
