package money

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/paysheet"
)

// Liens are all notices of lien by number.
func Liens(ctx context.Context, d office.Desk) ([]paysheet.Lien, error) {
	all, err := office.RecordsOf[paysheet.Lien](ctx, d.Reader())
	slices.SortFunc(all, func(a, b paysheet.Lien) int { return cmp.Compare(a.Number, b.Number) })
	return all, err
}

// mindLiens refuses a sheet of grain under a lien whose lender is not paid jointly, unless the order says why
// not. All lenders left out are named.
func mindLiens(liens []paysheet.Lien, tickets []*load.Load, o paysheet.Order, commodity string) error {
	if strings.TrimSpace(o.Release) != "" {
		return nil
	}
	var left []paysheet.Lien
	for _, lien := range liens {
		covers := func(l *load.Load) bool { return lien.Covers(o.Grower, commodity, l.Details.CropYear, o.Day) }
		if !lien.IsPaid(o.Payees) && slices.ContainsFunc(tickets, covers) {
			left = append(left, lien)
		}
	}
	if len(left) == 0 {
		return nil
	}
	var names []string
	for _, l := range left {
		names = append(names, l.Holder)
	}
	return message.Refused.Errorf("a notice of lien on this grain is in force until %s, for %v. Pay jointly with it, or say why it is not paid; confirm locally", left[0].Until, message.Names(", ", names))
}
