package audit

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/opening"
)

// openings looks whether the books were opened with balances that balance, at most one of them in
// force, and whether its lots are numbered without a gap.
func openings(v *walk) error {
	all, err := office.RecordsOf[opening.Opening](v.ctx, v.book)
	if err != nil {
		return err
	}
	numbers, inForce := map[int64]bool{}, 0
	for _, o := range all {
		if err := o.Check(); err != nil {
			v.found(message.New("Opening %d: %v.", o.Number, err))
		}
		if o.InForce() {
			inForce++
		}
		for _, l := range o.Lots {
			numbers[l.Number] = true
			v.ended[l.Number] = !o.InForce()
		}
		for _, a := range o.Advances {
			numbers[a.Number] = true
		}
		v.lastLot = max(v.lastLot, o.Last())
	}
	if inForce > 1 {
		v.found(message.New("%d openings are in force; the books are opened once.", inForce))
	}
	for n := int64(1); n <= v.lastLot; n++ {
		if !numbers[opening.First-1+n] {
			v.found(message.New("Opening balance number %d is missing.", opening.First-1+n))
		}
	}
	return nil
}
