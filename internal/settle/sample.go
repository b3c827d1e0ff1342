package settle

import (
	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// workSample records the moisture and every other result as recorded.
func workSample(d *calculation) {
	d.sheet.Section(message.Words("Sample"))
	d.out.Moisture = d.facts.Moisture.Work(d.sheet, d.places().Moisture, d.number)
	d.found = map[grain.FactorID]*worksheet.Step{grain.Moisture: d.out.Moisture}
	for _, found := range d.facts.Findings {
		factor, _ := d.edition.Commodity.Factor(found.Factor)
		if found.Factor != grain.Moisture {
			d.found[found.Factor] = recordFinding(d, factor, found)
		}
	}
	if m := d.out.Moisture.Value(); m.Sign() <= 0 || !m.Less(hundredPercent) {
		d.refuse(Problem{Field: "moisture", Sentence: message.New("Moisture is recorded as %s; it lies above 0 %% and below 100 %%, wet basis. Test again.", m)})
	}
}

func recordFinding(d *calculation, f grain.Factor, found Finding) *worksheet.Step {
	id := FactorLine(f.ID)
	if !f.YesNo {
		step := d.sheet.Given(id, message.Words(f.Name), found.Amount, d.engine.record(f, found.Amount), found.Source)
		if remark, has := f.Remark(found.Amount); has {
			step = d.sheet.Note(step, remark)
		}
		return step
	}
	present, remark := quantity.Zero(quantity.Count), message.Words("not present")
	if found.Present {
		present, remark = quantity.Int(1, quantity.Count), message.Words("present")
	}
	return d.sheet.Word(d.sheet.Given(id, message.Words(f.Name), present, quantity.Unrounded, found.Source), remark)
}

// recording returns the recording rule of a result: the grain's rule, but the nearest tenth for a
// test weight in kg/hL, for which the rule has no step.
func recording(f grain.Factor, a quantity.Amount) quantity.Rounding {
	if a.Unit() != f.Unit {
		return tenth
	}
	return f.Record
}

var tenth = quantity.To("0.1", quantity.HalfUp)

// takeDockage takes off the material that is not grain, before anything else.
func takeDockage(d *calculation) {
	factor, _ := d.edition.Commodity.Dockage()
	place := d.edition.Dockage.Rounding
	d.sheet.Section(message.Words("Dockage"))
	found, ok := d.found[factor.ID]
	if !ok {
		d.out.Dockage = d.sheet.Skip(LineDockage, message.Words("Dockage"), d.edition.Units.Weight, place, message.Words("not tested, none taken"), message.Words(factor.Source))
		return
	}
	d.out.Dockage = d.sheet.Work(LineDockage, message.Words("Dockage"), worksheet.PercentOf(found, d.left), place, message.Words(factor.Source))
	d.clean = d.off(LineClean, message.Words("Clean weight"), d.out.Dockage)
	d.out.Clean = d.clean
}
