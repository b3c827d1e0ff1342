package settle

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/worksheet"
)

// BeyondWater shows what an edition takes for moisture beyond the water. The bare formula W x (Mi -
// Mf) / (100 - Mf) leaves all dry matter in the grain; anything more that is taken is handling, by
// that name or hidden in a rate per point. Drying from 20 to 15 %, 1.4 % a point takes 1.12 % of
// the wet weight more than the water.
type BeyondWater struct {
	// Bare is the load settled under the bare formula.
	Bare  *Settlement
	Sheet *worksheet.Sheet
	// Hidden is the water line less the bare formula's; Handling is the
	// edition's own line for it; Total is both. HiddenPercent and Percent are
	// Hidden and Total of the wet weight, to the hundredth.
	Hidden, Handling, Total *worksheet.Step
	HiddenPercent, Percent  *worksheet.Step
}

// TakenBeyondWater settles the same facts under the bare formula and returns the difference. The
// error is that of the bare settlement.
func TakenBeyondWater(s *Settlement, f Facts) (*BeyondWater, error) {
	bare, err := s.Engine.Settle(f, rates.PureWater(s.Edition))
	if err != nil {
		return nil, err
	}
	b := &BeyondWater{Bare: bare, Sheet: &worksheet.Sheet{}, Handling: s.Handling}
	b.Sheet.Section(message.Words("Beyond the water"))
	b.Hidden = b.Sheet.Work("beyond.hidden", message.Words("Taken as shrink beyond the water"), worksheet.Less(s.Water, bare.Water), quantity.Unrounded, worksheet.Unsourced)
	b.HiddenPercent = b.ofWet("beyond.hidden.percent", b.Hidden, s.Wet)
	b.Total = b.Sheet.Work("beyond.total", message.Words("Taken beyond the water, with handling"), worksheet.Sum(b.Hidden, s.Handling), quantity.Unrounded, worksheet.Unsourced)
	b.Percent = b.ofWet("beyond.percent", b.Total, s.Wet)
	return b, nil
}

func (b *BeyondWater) ofWet(id string, taken, wet *worksheet.Step) *worksheet.Step {
	return b.Sheet.Work(id, message.Words("Of the wet weight"), worksheet.Over(worksheet.Times(taken, worksheet.Const(hundredPercent)), wet), hundredth, worksheet.Unsourced)
}

var hundredth = quantity.To("0.01", quantity.HalfUp)
