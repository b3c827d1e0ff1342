package desktop

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"tenthpoint/ui/model"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// TestGolden compares what the window's own widgets are made of with testdata. After a wanted
// change the new text is in testdata/failed; read it before it is moved.
func TestGolden(t *testing.T) {
	s := newScene(t, shell.Look{}, 0)
	row := func(f model.Field, set shell.Setting) fyne.CanvasObject {
		e := widgets.NewFigureEntry()
		e.SetText(f.Value)
		r := shell.NewFormRow(s.Session.Language, f, e, &shell.FormColumns{})
		r.Space(set, 80)
		return r
	}
	card := func(row model.TruckRow, short bool) fyne.CanvasObject {
		c := shell.NewTruckCard(s.Window)
		c.Set(row)
		c.Shorten(short)
		return c
	}
	gross := model.Field{ID: "gross", Label: "Gross", Unit: "lb", Kind: model.FigureField, Chars: 8, Value: "52,300"}
	read, wrong, missing := gross, gross, gross
	read.Reading = "typed by hand"
	wrong.State, wrong.Note = model.Stop, "Gross is not a whole number of divisions."
	missing.Value, missing.Missing = "", true
	truck := model.TruckRow{ID: "L1", Key: "F2", Truck: "23", Who: "Hollow Oak Farm, Corn", Waits: "14 min", Next: model.Status{State: model.Missing, Text: "weigh it empty"}}
	inHand := truck
	inHand.Current, inHand.Next = true, model.Status{State: model.OK, Text: "issue the ticket"}
	for _, c := range []struct {
		name string
		of   fyne.CanvasObject
		size fyne.Size
	}{
		{"row-read", row(read, shell.Airy), fyne.NewSize(300, 60)},
		{"row-wrong", row(wrong, shell.Airy), fyne.NewSize(300, 60)},
		{"row-missing", row(missing, shell.Airy), fyne.NewSize(300, 60)},
		{"row-missing-snug", row(missing, shell.Snug), fyne.NewSize(300, 36)},
		{"row-wrong-snug", row(wrong, shell.Snug), fyne.NewSize(300, 60)},
		{"row-wrong-lean", row(wrong, shell.Lean), fyne.NewSize(300, 36)},
		{"truck", card(truck, false), fyne.NewSize(210, 70)},
		{"truck-in-hand", card(inHand, false), fyne.NewSize(210, 70)},
		{"truck-short", card(truck, true), fyne.NewSize(210, 50)},
	} {
		t.Run(c.name, func(t *testing.T) {
			w := test.NewWindow(c.of)
			defer w.Close()
			w.SetPadded(false)
			w.Resize(c.size)
			test.AssertRendersToMarkup(t, c.name+".xml", w.Canvas())
		})
	}
}
