package binlog

import (
	"context"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/keeping/blend"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
)

// LotsOf are the grain of some bins as lots of a mix: all that lies in each tonight, at its mean
// moisture and test weight. The bins hold one and the same grain.
func LotsOf(ctx context.Context, d office.Desk, ids []string) (lots []blend.Lot, commodity string, err error) {
	for _, id := range ids {
		one, err := One(ctx, d, id, d.Today())
		if err != nil {
			return nil, "", err
		}
		if len(one.Grain) != 1 || one.Grain[0].Lies().Sign() <= 0 {
			return nil, "", message.Refused.Errorf("bin %v holds no grain, or several. A mix is of bins with one grain each", id)
		}
		held := one.Grain[0]
		if commodity != "" && commodity != held.Commodity {
			return nil, "", message.Refused.Errorf("bin %v holds %s, and the others hold %s. A mix is of one grain", id, message.Words(held.Name), message.Words(grain.NameOf(commodity)))
		}
		commodity = held.Commodity
		moisture, known := held.Moisture()
		if !known {
			return nil, "", message.Refused.Errorf("no moisture is known of what lies in bin %v. Test it, and write the result down", id)
		}
		lot := blend.Lot{Name: id, Weight: held.Lies(), Moisture: toHundredths.Apply(moisture)}
		if weight, known := held.TestWeight(); known {
			lot.TestWeight = toHundredths.Apply(weight)
		}
		lots = append(lots, lot)
	}
	return lots, commodity, nil
}

// Worth is what grain brings under an edition, alone and mixed: at which moisture and test weight each
// part is settled, and the sums.
type Worth struct {
	Alone []quantity.Amount // of each lot's part of the mix
	Mixed quantity.Amount
}

// Gain is by how much the mix brings more than its parts.
func (w Worth) Gain() quantity.Amount {
	gain := w.Mixed
	for _, a := range w.Alone {
		gain = gain.Sub(a)
	}
	return gain
}
