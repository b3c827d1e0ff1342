package present

import (
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
)

// The codes under which grain is sold at once or stored; a contract goes by
// its own number.
const (
	soldCode   = "sold"
	storedCode = "stored"
)

// termsReading says what a contract is for.
func (f *LoadForm) termsReading(_ string, l *load.Load) string {
	c, ok := f.frame.known().contract(l.Details.ContractNo)
	if !ok {
		return ""
	}
	return Say("%s at %s", c.Quantity, c.Price)
}

func (f *LoadForm) termsOptions() []model.Option {
	out := []model.Option{
		{Code: soldCode, Name: Say("sold")},
		{Code: storedCode, Name: Say("stored for the owner")},
	}
	d := f.now.load.Details
	for _, c := range f.frame.known().contracts {
		if c.Grower == d.Grower.ID && c.Commodity == d.Commodity {
			out = append(out, model.Option{Code: c.Number, Name: Say("contract"), Detail: Say("%s at %s until %s", c.Quantity, c.Price, c.Until)})
		}
	}
	return out
}

func priceHint(l *load.Load) string {
	if l.Details.Price == nil {
		return Say(l.Details.Disposition.Unpriced())
	}
	return Say(l.Details.PriceSource)
}
