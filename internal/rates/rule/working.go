package rule

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/worksheet"
)

// Working is the settlement under way, as far as a method needs it.
type Working interface {
	// Sheet takes the steps.
	Sheet() *worksheet.Sheet
	// Moisture is the load's moisture as recorded, %.
	Moisture() *worksheet.Step
	// Rate records a cell of the edition.
	Rate(id string, label message.Text, c Cell) *worksheet.Step
	// Points are those of the load's moisture above a level, in steps.
	Points(id string, label message.Text, to *worksheet.Step, s Step) *worksheet.Step
	// AmountOn is a weight in the bu, cwt or t that a rate is per.
	AmountOn(b Basis, rate quantity.Unit) *worksheet.Step
	// Refuse records why the load cannot be settled. Field is the field at fault.
	Refuse(field string, sentence message.Text)
	// OffTable refuses a value that no row of a table holds.
	OffTable(field, name string, found *worksheet.Step, source message.Text, bands []Band)
}

// LargestLossMeasured is the largest handling loss of those Iowa State measured
// on farms and in commercial dryers, percent of the wet weight (Hurburgh, Bern,
// Wilcke and Anderson: mean 0.78, range 0.40 to 1.71).
var LargestLossMeasured = quantity.Of("1.71", quantity.Percent)
