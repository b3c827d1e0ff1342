package demo

import (
	"context"
	"tenthpoint/internal/load"
	"tenthpoint/internal/scalehouse"
)

func (v *visit) weighGross(ctx context.Context, w *scalehouse.Batch) error {
	gross := v.truck.empty + v.net
	if v.odd.drafts {
		front := v.truck.empty/2 - v.truck.empty/2%divisionLb + v.net/2 - v.net/2%divisionLb
		return v.weigh(ctx, w, draft(load.Gross, "truck", front), draft(load.Gross, "trailer", gross-front))
	}
	first := draft(load.Gross, "", gross)
	if v.odd.byHand && v.odd.grossByHand {
		return v.weigh(ctx, w, byHand(first, v.odd.why))
	}
	if v.odd.weighedTwice {
		return v.weigh(ctx, w, draft(load.Gross, "", gross-divisionLb*v.season.chance.between(3, 40)), first)
	}
	return v.weigh(ctx, w, first)
}

func (v *visit) weighTare(ctx context.Context, w *scalehouse.Batch) error {
	if v.gone {
		return nil
	}
	tare := v.truck.empty + divisionLb*v.season.chance.between(-3, 3)
	if v.odd.drafts {
		front := tare/2 - tare/2%divisionLb
		return v.weigh(ctx, w, draft(load.Tare, "truck", front), draft(load.Tare, "trailer", tare-front))
	}
	switch {
	case v.odd.storedTare:
		stored := draft(load.Tare, "", 0)
		stored.Weight, stored.Source, stored.Taken, stored.Scale = *v.truck.Tare, load.StoredTare, v.truck.Taken, ""
		return v.weigh(ctx, w, stored)
	case v.odd.byHand && !v.odd.grossByHand:
		return v.weigh(ctx, w, byHand(draft(load.Tare, "", tare), v.odd.why))
	}
	return v.weigh(ctx, w, draft(load.Tare, "", tare))
}

func (v *visit) weigh(ctx context.Context, w *scalehouse.Batch, weights ...load.Weighing) error {
	for _, one := range weights {
		if err := scalehouse.Weigh(ctx, w, v.id, one); err != nil {
			return err
		}
	}
	return nil
}

func draft(which load.Which, name string, weightLb int64) load.Weighing {
	return load.Weighing{Which: which, Draft: name, Weight: lb(weightLb), Source: load.FromScale, Scale: scaleID, DriverOn: "off"}
}

func byHand(w load.Weighing, why string) load.Weighing {
	w.Source, w.Reason = load.ByHand, why
	return w
}
