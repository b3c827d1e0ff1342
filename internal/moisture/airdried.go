package moisture

import (
	"tenthpoint/internal/fault"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// AirDried is the test of a sample too wet for the meter (Canadian Grain
// Commission, Official Grain Grading Guide, chapter 2): it is weighed, dried in the
// air until the meter reads it, weighed again and read.
type AirDried struct {
	Wet, Dry quantity.Amount // weights of the sample before and after, in g
	Reading  quantity.Amount // moisture of the dried sample, in percent
}

// Faults lists impossible values.
func (a AirDried) Faults() fault.List {
	var faults fault.List
	if a.Wet.Unit() != quantity.Gram || a.Dry.Unit() != quantity.Gram || a.Reading.Unit() != quantity.Percent {
		faults.Add("An air-dried sample has two weights in g and a reading in percent.")
		return faults
	}
	faults.Unless(a.Dry.Sign() > 0, "The dried sample weighs %s; weigh it again.", a.Dry)
	faults.Unless(a.Wet.More(a.Dry), "The sample weighed %s wet and %s dried, so it lost nothing; swap the two or weigh again.", a.Wet, a.Dry)
	faults.Unless(a.Reading.Sign() > 0 && a.Reading.Less(hundredPercent), "The dried sample reads %s; it lies above 0 %% and below 100 %%.", a.Reading)
	return faults
}

// Work records the moisture of the wet sample, to the tenth: C = (A - B) / A x 100 is the water
// lost in the air, (100 - C) x D / 100 the water the meter still found in the rest. There must be
// no faults.
func (a AirDried) Work(s *worksheet.Sheet) *worksheet.Step {
	given := func(id string, label message.Text, of quantity.Amount) *worksheet.Step {
		return s.Given("airdried."+id, label, of, quantity.Unrounded, message.Words("as given"))
	}
	source := message.Words("Official Grain Grading Guide, chapter 2")
	hundred := worksheet.Const(hundredPercent)
	wet, dry := given("wet", message.Words("Sample before drying (A)"), a.Wet), given("dry", message.Words("Sample after drying (B)"), a.Dry)
	reading := given("reading", message.Words("Dried sample on the meter (D)"), a.Reading)
	lost := s.Work("airdried.lost", message.Words("Lost in the air (C)"), worksheet.Times(worksheet.Over(worksheet.Less(wet, dry), wet), hundred), quantity.Unrounded, source)
	return s.Work("airdried", message.Words("Moisture of the sample"), worksheet.Sum(worksheet.PercentOf(reading, worksheet.Less(hundred, lost)), lost), quantity.To("0.1", quantity.HalfUp), source)
}
