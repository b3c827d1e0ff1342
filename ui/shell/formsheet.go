package shell

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/charts"
)

// FormSheet sets the fields of a form over the moisture ruler. When there is too little height it
// drops, in turn, the lines under the fields, the height of the ruler, and the ruler.
type FormSheet struct {
	Fields *FieldSheet
	Ruler  *charts.MoistureRuler
}

// MinSize returns little: content without room can be scrolled to.
func (FormSheet) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return objects[0].MinSize()
}

// choice is one way to set the sheet.
type choice struct {
	rows  Setting
	ruler charts.RulerSize
	alone bool // without the ruler
	ample bool // only where much ground would be left
}

var choices = []choice{
	{rows: Airy, ruler: charts.RulerTall, ample: true},
	{rows: Airy, ruler: charts.RulerOrdinary},
	{rows: Snug, ruler: charts.RulerOrdinary},
	{rows: Snug, ruler: charts.RulerLow},
	{rows: Snug, ruler: charts.RulerLowest},
	{rows: Snug, alone: true},
	{rows: Lean, alone: true},
	{rows: bare, alone: true},
}

// ampleGround is the least ground between rows beside a tall ruler.
const ampleGround = 16

// needs is the height a choice takes.
func (l FormSheet) needs(c choice) float32 {
	high := l.Fields.Height(c.rows) + 2*SlimGap
	if c.ample {
		high += float32(len(l.Fields.Rows())) / 2 * ampleGround
	}
	return high + l.foot(c)
}

// foot is the height of the ruler. Room is kept for one that is still to come, so
// that the fields stay where they are when the grain is named.
func (l FormSheet) foot(c choice) float32 {
	if c.alone {
		return 0
	}
	return l.Ruler.Height(c.ruler)
}

// choose is the first choice a height has room for.
func (l FormSheet) choose(room float32) choice {
	for _, c := range choices {
		if l.needs(c) <= room {
			return c
		}
	}
	return choices[len(choices)-1]
}

// Layout places the fields, which scroll where even the densest setting has no room, and the ruler
// in a holder of its own, so that a screen may hide it.
func (l FormSheet) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	fields, holder := objects[0], objects[1]
	c := l.choose(size.Height)
	low := l.foot(c)
	l.Ruler.SetSize(c.ruler)
	SetVisible(holder, !c.alone)
	fields.Resize(fyne.NewSize(size.Width, size.Height-low))
	holder.Move(fyne.NewPos(0, size.Height-low))
	holder.Resize(fyne.NewSize(size.Width, low))
}
