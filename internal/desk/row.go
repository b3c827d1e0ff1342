package desk

import (
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/store"
)

// row is a load as lists and totals read it.
func row(l *load.Load) store.LoadRow {
	r := store.LoadRow{
		ID: l.ID, Phase: string(l.Phase), Direction: string(l.Details.Direction),
		Day: l.Details.Day.String(), OpenedAt: l.Opened.At,
		Commodity: l.Details.Commodity, Grower: l.Details.Grower.ID, GrowerName: l.Details.Grower.Name,
		Truck: truckName(l.Details.Truck), Bin: l.Details.Bin,
		Disposition: string(l.Details.Disposition), Contract: l.Details.ContractNo,
		Ticket: l.Number, IssuedAt: l.Issued.At, IssuedDay: l.IssuedDay.String(),
		EndedAt: l.Ended.At, EndedDay: l.Ended.Day.String(), EndedBy: l.Ended.By, Corrects: l.Corrects,
		Reissues: l.Reissues, ReissuedBy: l.Again.By, ReissuedDay: l.Again.Day.String(),
		Reason: l.Ended.Reason, Who: l.Weigher, Weigher: l.Weigher, Manual: manual(l),
		Flags: strings.Join(l.Sample.Flags, "\n"), Sample: l.Sample.Number,
		Kept: l.Sample.Kept, KeepUntil: l.Sample.Until.String(),
	}
	if l.Ended.Who != "" {
		r.Who = l.Ended.Who
	}
	var accepted []string
	for _, a := range l.Accepted {
		accepted = append(accepted, a.Limit+": "+a.Accepted.Reason+" ("+a.Who+")")
	}
	r.Accepted = strings.Join(accepted, "\n")
	for _, o := range l.Details.Shares {
		r.Owners = append(r.Owners, o.ID)
	}
	if l.Settled != nil {
		r.Edition, r.EditionHash, r.Figures, r.Engine = l.Settled.Edition, l.Settled.EditionHash, l.Settled.Figures, l.Settled.Engine
	}
	return r
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
