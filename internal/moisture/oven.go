package moisture

import (
	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// Dish is one oven test: the weights of the dish in g, with the wet grain, with the dried grain,
// and empty.
type Dish struct {
	Wet  quantity.Amount `json:"wet"`
	Dry  quantity.Amount `json:"dry"`
	Tare quantity.Amount `json:"tare"`
}

func (d Dish) check(faults *fault.List, label message.Text) {
	inGrams := d.Wet.Unit() == quantity.Gram && d.Dry.Unit() == quantity.Gram && d.Tare.Unit() == quantity.Gram
	if !inGrams {
		faults.Add("%s: an oven test needs three weighings in g: dish with wet grain, with dried grain, and empty", label)
		return
	}
	faults.Unless(d.Tare.Sign() >= 0, "%s: the empty dish weighs %s; weigh it again", label, d.Tare)
	faults.Unless(d.Wet.More(d.Tare), "%s: the dish weighs %s with wet grain and %s empty, so there is no grain in it; swap the two or weigh again", label, d.Wet, d.Tare)
	faults.Unless(d.Dry.More(d.Tare), "%s: the dish weighs %s with dried grain and %s empty, so nothing is left in it; swap the two or weigh again", label, d.Dry, d.Tare)
	faults.Unless(!d.Dry.More(d.Wet), "%s: the grain gained weight in the oven, from %s to %s; swap the two or weigh again", label, d.Wet, d.Dry)
}

// work is moisture on the wet basis: water lost over wet grain,
// (wet - dry) / (wet - tare) x 100 %.
func (d Dish) work(s *worksheet.Sheet, r Reading) *worksheet.Step {
	given := func(id string, label message.Text, a quantity.Amount) *worksheet.Step {
		return s.Given(r.id()+id, label, a, quantity.Unrounded, r.by(message.New("balance")))
	}
	wet := given(".wet", message.Words("Dish with wet grain"), d.Wet)
	dry := given(".dry", message.Words("Dish with dried grain"), d.Dry)
	tare := given(".tare", message.Words("Empty dish"), d.Tare)
	return s.Work(r.id(), r.label(),
		worksheet.Times(worksheet.Over(worksheet.Less(wet, dry), worksheet.Less(wet, tare)), worksheet.Const(hundredPercent)),
		quantity.Unrounded, message.Words("moisture, wet basis: water lost over wet grain"))
}
