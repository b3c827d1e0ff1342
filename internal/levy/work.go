package levy

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// Bases are the figures of a settlement that levies are taken on.
type Bases struct{ Quantity, Gross, Net *worksheet.Step }

// Take writes the levy on a sheet, rounded to the cent. It fails where the levy counts in another
// unit than the settlement.
func (l *Levy) Take(s *worksheet.Sheet, id string, on Bases) (*worksheet.Step, error) {
	base := map[Base]*worksheet.Step{Quantity: on.Quantity, Gross: on.Gross, Net: on.Net}[l.Base]
	if per := quantity.Dollar.Per(on.Quantity.Value().Unit()); l.Base == Quantity && l.Rate.Amount.Unit() != per {
		return nil, message.Invalid.Errorf("levy %s is %s, and the sheet counts in %s", l.ID, l.Rate.Amount.Written(), on.Quantity.Value().Unit())
	}
	rate := s.Rate(id+".rate", message.New("%s, rate", message.Name(l.Title)), l.Rate.Amount, l.Rate.Source)
	whole := worksheet.Times(base, rate)
	if l.Base != Quantity {
		whole = worksheet.PercentOf(rate, base)
	}
	label := message.Name(l.Title)
	if !l.Cap.Given() {
		return s.Work(id, label, whole, cents, l.Rate.Source), nil
	}
	all := s.Work(id+".all", message.New("%s before the cap", label), whole, cents, l.Rate.Source)
	most := s.Rate(id+".cap", message.New("%s, cap", label), l.Cap.Amount, l.Cap.Source)
	return s.Work(id, label, worksheet.Lower(all, most), cents, l.Cap.Source), nil
}

var cents = quantity.To("0.01", quantity.HalfUp)
