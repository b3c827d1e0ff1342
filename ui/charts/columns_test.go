package charts

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"tenthpoint/internal/grain/look"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
)

// The value of a column is read whole wherever the stroke of what is usual lies, also on today's column.
func TestNoStrokeCrossesTheValueOfAColumn(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(apptheme.NewTheme(false, 0))
	for usual := 0; usual <= 1000; usual += 5 {
		for _, now := range []bool{false, true} {
			c := NewColumns()
			c.Set(model.Picture{Stacks: []model.Stack{{
				Value: "14", Parts: []model.StackPart{{Height: 700, Look: look.Look{}}}, Stroke: usual, HasStroke: true, Now: now,
			}}})
			value, strokes := valueAndStrokes(c.Paint(fyne.NewSize(200, 160)))
			if value == nil || len(strokes) == 0 {
				t.Fatal("there is no value, or no stroke")
			}
			top := value.Position().Y
			bottom := top + value.MinSize().Height
			if top < 0 {
				t.Errorf("usual %d: the value begins %v above the picture", usual, -top)
			}
			for _, s := range strokes {
				if s.Position().Y < bottom && s.Position().Y+s.Size().Height > top {
					t.Errorf("usual %d, today %v: a stroke at %v crosses the value from %v to %v", usual, now, s.Position().Y, top, bottom)
				}
			}
		}
	}
}

// valueAndStrokes finds the value and the blocks as thick as a stroke.
func valueAndStrokes(drawn []fyne.CanvasObject) (value *canvas.Text, strokes []*canvas.Rectangle) {
	for _, o := range drawn {
		switch o := o.(type) {
		case *canvas.Text:
			if o.Text == "14" {
				value = o
			}
		case *canvas.Rectangle:
			if o.Size().Height == strokeThick {
				strokes = append(strokes, o)
			}
		}
	}
	return value, strokes
}
