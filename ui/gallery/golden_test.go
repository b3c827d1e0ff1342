package gallery

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"
)

// TestGolden compares the drawing of each widget with testdata: its shapes and words, their places
// and colours. After an intended change the new text is in testdata/failed; read it before it is
// moved.
func TestGolden(t *testing.T) {
	for _, c := range []struct {
		name string
		size fyne.Size
		make func(h *house, order *widgets.FocusOrder) fyne.CanvasObject
		act  func(h *house, order *widgets.FocusOrder)
	}{
		{"button", fyne.NewSize(420, 50), func(h *house, order *widgets.FocusOrder) fyne.CanvasObject {
			settle := widgets.NewButton("Settle", nothing)
			settle.Key, settle.Importance = "F9", widget.HighImportance
			order.Add("settle", settle)
			grey := widgets.NewButton("Print", nothing)
			grey.Icon = apptheme.IconPrint
			grey.Disable()
			yard := widgets.NewButton("Yard", nothing)
			yard.Current = true
			return container.NewHBox(settle, grey, yard)
		}, focus("settle")},
		{"badges", fyne.NewSize(760, 40), func(*house, *widgets.FocusOrder) fyne.CanvasObject { return exampleBadges() }, nil},
		{"figure", fyne.NewSize(200, 70), func(*house, *widgets.FocusOrder) fyne.CanvasObject {
			f := widgets.NewFigure("Scale, moving", "lb")
			f.Set(model.Wait, "52,340")
			return f
		}, nil},
		{"form", fyne.NewSize(700, 300), func(_ *house, order *widgets.FocusOrder) fyne.CanvasObject { return exampleForm(order) }, focus("moisture")},
		{"list", fyne.NewSize(700, 300), func(_ *house, order *widgets.FocusOrder) fyne.CanvasObject { return exampleForm(order) }, func(h *house, order *widgets.FocusOrder) {
			order.Focus("grower")
			h.Write("farm")
		}},
		{"table", fyne.NewSize(600, 180), func(_ *house, order *widgets.FocusOrder) fyne.CanvasObject {
			table := exampleTable()
			order.Add("table", table)
			return table
		}, focus("table")},
		{"status", fyne.NewSize(600, 40), func(*house, *widgets.FocusOrder) fyne.CanvasObject {
			s := status.NewLine(widgets.EnglishWords().Status)
			s.Say(model.Stop, "The tare is missing. Weigh the empty truck.")
			return s
		}, nil},
		{"workbar", fyne.NewSize(400, 40), func(*house, *widgets.FocusOrder) fyne.CanvasObject {
			w := widgets.NewWorkBar(widgets.EnglishWords())
			w.Start("Checking the book", nothing)
			w.Progress(1, 4)
			return w
		}, nil},
		{"card", fyne.NewSize(420, 620), func(*house, *widgets.FocusOrder) fyne.CanvasObject {
			v := paperview.NewSlipView()
			v.SetLines(exampleCard())
			return v
		}, nil},
		{"ruler", fyne.NewSize(600, 130), func(*house, *widgets.FocusOrder) fyne.CanvasObject { return exampleRuler() }, nil},
		{"columns", fyne.NewSize(400, 200), func(*house, *widgets.FocusOrder) fyne.CanvasObject { return exampleColumns() }, nil},
		{"checks", fyne.NewSize(400, 200), func(*house, *widgets.FocusOrder) fyne.CanvasObject { return exampleChecks() }, nil},
		{"ask", fyne.NewSize(700, 300), func(*house, *widgets.FocusOrder) fyne.CanvasObject { return container.NewWithoutLayout() }, func(h *house, _ *widgets.FocusOrder) {
			h.UI.Ask(widgets.Question{Title: "Void ticket 1042?", Text: "The number is kept.", State: model.Warn, Danger: true, Yes: "Void it"}, func(bool) {})
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			h := newHouse(t)
			order := widgets.NewFocusOrder(h.UI)
			h.Show(c.make(h, order), c.size)
			if c.act != nil {
				c.act(h, order)
			}
			test.AssertRendersToMarkup(t, c.name+".xml", h.Window.Canvas())
		})
	}
}

func focus(id string) func(*house, *widgets.FocusOrder) {
	return func(h *house, order *widgets.FocusOrder) {
		if !order.Focus(id) {
			h.T.Errorf("%s did not take the keyboard", id)
		}
	}
}
