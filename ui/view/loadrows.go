package view

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
)

// arrange makes the rows that are new and puts all in their columns, when the
// fields are others than before. The ring follows the working order, whatever
// column a row stands in.
func (v *loadView) arrange(fields []model.Field) {
	if v.sameFields(fields) {
		return
	}
	v.order = v.order[:0]
	v.ring = kit.NewRing(v.window.stage)
	v.ring.OnEscape, v.ring.OnArrive = v.escape, v.came
	for _, f := range fields {
		v.order = append(v.order, f.ID)
		v.ring.Add(f.ID, v.row(f).entry)
	}
	for i, stop := range v.last {
		v.ring.Add(v.lastIDs[i], stop)
	}
	v.sheet.set(v.inColumns(fields))
}

func (v *loadView) sameFields(fields []model.Field) bool {
	if len(fields) != len(v.order) {
		return false
	}
	for i, f := range fields {
		if v.order[i] != f.ID {
			return false
		}
	}
	return true
}

// rowsAtLeft is how many rows the left column has while the sample has room for
// the remark beneath it.
const rowsAtLeft = 8

// inColumns sets the sample at the right and everything else at the left. The
// columns keep their order whatever the grain, so that the hand finds a field
// where it was; only the remark goes where there is room.
func (v *loadView) inColumns(fields []model.Field) (left, right []fyne.CanvasObject) {
	for _, part := range []model.Part{model.WhoPart, model.WeightPart, model.ClosePart, model.SamplePart} {
		for _, f := range fields {
			switch {
			case f.Part != part || f.ID == "remark":
			case part == model.SamplePart:
				right = append(right, v.rows[f.ID])
			default:
				left = append(left, v.rows[f.ID])
			}
		}
	}
	if len(right) < rowsAtLeft {
		return left, append(right, v.rows["remark"])
	}
	return append(left, v.rows["remark"]), right
}

// row is the row of a field, made the first time it is asked for.
func (v *loadView) row(f model.Field) *formRow {
	row := v.rows[f.ID]
	if row == nil {
		row = newFormRow(f, v.entry(f), &formColumns{})
		row.mute = f.ID == "remark"
		v.rows[f.ID] = row
		setText(row.entry, f)
	}
	return row
}
