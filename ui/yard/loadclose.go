package yard

import (
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// The codes under which grain is sold at once or stored; a contract goes by
// its own number.
const (
	soldCode   = "sold"
	storedCode = "stored"
)

// termsReading says what a contract is for.
func (f *LoadForm) termsReading(_ string, l *load.Load) string {
	c, ok := f.session.Known().Contract(l.Details.ContractNo)
	if !ok {
		return ""
	}
	return session.Say("%s at %s", c.Quantity, c.Price)
}

func (f *LoadForm) termsOptions() []model.Option {
	out := []model.Option{
		{Code: soldCode, Name: session.Say("sold")},
		{Code: storedCode, Name: session.Say("stored for the owner")},
	}
	d := f.Now.Load.Details
	for _, c := range f.session.Known().Contracts {
		if c.Grower == d.Grower.ID && c.Commodity == d.Commodity {
			out = append(out, model.Option{Code: c.Number, Name: session.Say("contract"), Detail: session.Say("%s at %s until %s", c.Quantity, c.Price, c.Until)})
		}
	}
	return out
}

func priceHint(l *load.Load) string {
	if l.Details.Price == nil {
		return session.Say(l.Details.Disposition.Unpriced())
	}
	return session.Say(l.Details.PriceSource)
}
