package board

import (
	"tenthpoint/internal/load"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// titles are the columns from left to right, as trucks pass through the house.
func titles(in session.Language) []string {
	return []string{
		in.Say("Weigh full"), in.Say("Test the sample"), in.Say("Weigh empty"), in.Say("Look at the form"), in.Say("Issue the ticket"),
	}
}

// columnOf is the column of a step. A load whose figures are there but cannot be settled wants the
// same as one of which something is not said: a look at its form.
func columnOf(step load.Step, settles bool) int {
	switch {
	case step == load.WeighFull:
		return 0
	case step == load.TestSample:
		return 1
	case step == load.WeighEmpty:
		return 2
	case step == load.SayWhose || !settles:
		return 3
	}
	return 4
}

// Columns are the trucks of the yard by what they wait for.
func Columns(in session.Language, rows []model.TruckRow) []model.TruckColumn {
	var out []model.TruckColumn
	for _, title := range titles(in) {
		out = append(out, model.TruckColumn{Title: title})
	}
	for _, row := range rows {
		c := &out[row.Column]
		c.Rows = append(c.Rows, row)
	}
	return out
}
