package demo

import (
	"tenthpoint/internal/desk"
	"tenthpoint/internal/load"
)

func (v *visit) weighGross(w *desk.Work) error {
	gross := v.truck.empty + v.net
	if v.odd.drafts {
		front := v.truck.empty/2 - v.truck.empty/2%divisionLb + v.net/2 - v.net/2%divisionLb
		return v.weigh(w, draft(load.Gross, "truck", front), draft(load.Gross, "trailer", gross-front))
	}
	first := draft(load.Gross, "", gross)
	if v.odd.byHand && v.odd.grossByHand {
		return v.weigh(w, byHand(first, v.odd.why))
	}
	if v.odd.weighedTwice {
		return v.weigh(w, draft(load.Gross, "", gross-divisionLb*v.season.chance.between(3, 40)), first)
	}
	return v.weigh(w, first)
}

func (v *visit) weighTare(w *desk.Work) error {
	if v.gone {
		return nil
	}
	tare := v.truck.empty + divisionLb*v.season.chance.between(-3, 3)
	if v.odd.drafts {
		front := tare/2 - tare/2%divisionLb
		return v.weigh(w, draft(load.Tare, "truck", front), draft(load.Tare, "trailer", tare-front))
	}
	switch {
	case v.odd.storedTare:
		stored := draft(load.Tare, "", 0)
		stored.Weight, stored.Source, stored.Taken, stored.Scale = *v.truck.Tare, load.StoredTare, v.truck.Taken, ""
		return v.weigh(w, stored)
	case v.odd.byHand && !v.odd.grossByHand:
		return v.weigh(w, byHand(draft(load.Tare, "", tare), v.odd.why))
	}
	return v.weigh(w, draft(load.Tare, "", tare))
}

func (v *visit) weigh(w *desk.Work, weights ...load.Weighing) error {
	for _, one := range weights {
		if err := w.Weigh(v.id, one); err != nil {
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
