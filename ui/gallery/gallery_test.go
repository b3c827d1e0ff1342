package gallery

import (
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"tenthpoint/internal/grain/look"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/charts"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// All people, farms and figures here are invented: example - not for trade.

func exampleCard() []model.CardLine {
	return []model.CardLine{
		{Kind: model.CardTitle, Left: "Example Elevator"},
		{Kind: model.CardMiddle, Left: "example - not for trade"},
		{Kind: model.CardRule},
		{Kind: model.CardTotal, Left: "Ticket", Right: "1042"},
		{Left: "Grower", Right: "Hollow Oak Farm"},
		{Left: "Gross", Right: "52,300 lb"},
		{Left: "Tare", Right: "24,120 lb"},
		{Kind: model.CardMark, Left: "Tare typed by hand", Right: "MANUAL WT"},
		{Kind: model.CardTotal, Left: "Net", Right: "28,180 lb"},
		{Kind: model.CardRule},
		{Left: "Moisture", Right: "17.2 %"},
		{Left: "Water shrink", Right: "729.36 lb", Note: "28,180 x (17.2 - 15.0) / (100 - 15.0) = 729.3647..."},
		{Kind: model.CardGap},
		{Kind: model.CardSmall, Left: "Scale ticket only, not a warehouse receipt. Keep it until the load is settled."},
	}
}

func exampleRuler() *charts.MoistureRuler {
	r := charts.NewMoistureRuler()
	var marks []model.Mark
	for at := 0; at <= 1000; at += 20 {
		kind, label := model.TenthMark, ""
		if at%200 == 0 {
			kind, label = model.PointMark, []string{"13", "14", "15", "16", "17", "18"}[at/200]
		}
		marks = append(marks, model.Mark{Label: label, At: at, Kind: kind})
	}
	marks = append(marks,
		model.Mark{Label: "shrink to 15.0", At: 400, Kind: model.LimitMark},
		model.Mark{Label: "trigger 15.5", At: 500, Kind: model.LimitMark},
		model.Mark{Label: "17.2 %", At: 840, Kind: model.ReadingMark, State: model.Warn})
	r.Set(marks, model.Band{From: 0, To: 400, Label: "dry"})
	return r
}

func exampleColumns() *charts.Columns {
	c := charts.NewColumns()
	corn, soybeans := look.Of("corn"), look.Of("soybeans")
	c.Set(model.Picture{
		Stacks: []model.Stack{
			{Label: "8", Value: "3", Parts: []model.StackPart{{Height: 300, Look: corn}}, Stroke: 400, HasStroke: true},
			{Label: "9", Value: "7", Parts: []model.StackPart{{Height: 500, Look: corn}, {Height: 200, Look: soybeans}}, Stroke: 600, HasStroke: true},
			{Label: "10", Value: "10", Parts: []model.StackPart{{Height: 1000, Look: soybeans}}, Now: true},
		},
		Legend: []model.Legend{{Name: "Corn", Look: corn}, {Name: "Soybeans", Look: soybeans}}, Stroke: "usual",
		Guides: []model.Guide{{At: 500, Label: "5"}, {At: 1000, Label: "10"}},
		Edge:   model.PictureEdge{At: 500, Label: "trigger"},
	})
	return c
}

func exampleChecks() *charts.CheckChart {
	c := charts.NewCheckChart()
	c.Set([]model.ChartPoint{
		{X: 0, Y: 480}, {X: 200, Y: 520}, {X: 400, Y: 610}, {X: 600, Y: 560},
		{X: 800, Y: 820, Label: "+0.32", State: model.Stop}, {X: 1000, Y: 530},
	}, []model.Guide{{At: 700, Label: "+0.2", State: model.Stop}, {At: 300, Label: "-0.2", State: model.Stop}})
	c.SetAxes([]model.Guide{{At: 500, Label: "0.0"}}, []model.Guide{{At: 0, Label: "1 Sep"}, {At: 1000, Label: "10 Nov"}})
	return c
}

// exampleForm is a load form with one of everything said beside a field.
func exampleForm(order *widgets.FocusOrder) *fyne.Container {
	grower := widgets.NewAutocomplete(widgettest.Growers())
	grower.SetChosen("11")
	gross, tare, moisture, weight := widgets.NewFigureEntry(), widgets.NewFigureEntry(), widgets.NewFigureEntry(), widgets.NewFigureEntry()
	gross.SetText("52,300")
	tare.SetText("54,500")
	moisture.SetText("17.2")
	stored := widgets.NewCheckbox("Use the stored tare")
	stored.SetOn(true)
	rows := []*widgets.Field{
		widgets.NewField("Grower", "", grower), widgets.NewField("Gross", "lb", gross), widgets.NewField("Tare", "lb", tare),
		widgets.NewField("", "", stored), widgets.NewField("Moisture", "%", moisture), widgets.NewField("Test weight", "lb/bu", weight),
	}
	rows[0].Chars = 28
	rows[0].SetReading("one share")
	rows[1].SetReading("= 52,300 lb, from the scale")
	rows[2].SetProblem("Net would be -2,200 lb (gross 52,300 - tare 54,500). Weigh again or swap the two.")
	rows[4].SetNote(model.Warn, "= 17.2 %, within 0.5 of a class limit: test three times.")
	rows[5].SetNote(model.Missing, "still to be tested")
	for i, id := range []string{"grower", "gross", "tare", "stored", "moisture", "testweight"} {
		order.Add(id, rows[i].Entry().(widgets.Keyed))
	}
	return widgets.NewSheet(widgets.NewHeading("Load 3, in the yard for 12 minutes"), rows[0], rows[1], rows[2], rows[3], rows[4], rows[5])
}

func exampleBadges() fyne.CanvasObject {
	return container.NewHBox(status.NewBadge(model.OK, "issued"), status.NewBadge(model.Warn, "manual weight"), status.NewBadge(model.Stop, "void"),
		status.NewBadge(model.Wait, "on the scale"), status.NewBadge(model.Locked, "day closed"), status.NewBadge(model.Missing, "no sample"), status.NewBadge(model.Plain, "copy 2"))
}

// gallery is a screen with every widget of package widgets on it.
func gallery(h *house) (fyne.CanvasObject, *widgets.FocusOrder) {
	order := widgets.NewFocusOrder(h.UI)
	buttons := container.NewHBox()
	for i, command := range h.Commands.List() {
		b := h.Commands.Button(command.ID)
		b.Importance = []widget.Importance{widget.HighImportance, widget.MediumImportance, widget.MediumImportance, widget.DangerImportance}[i]
		b.Current = i == 1
		buttons.Add(b)
	}
	net := widgets.NewFigure("Net", "lb")
	net.Set(model.Plain, "28,180")
	live := widgets.NewFigure("Scale, moving", "lb")
	live.Set(model.Wait, "52,340")
	bar := widgets.NewWorkBar(widgets.EnglishWords())
	bar.Start("Checking the book, 412 of 1,000 tickets", func() {})
	bar.Progress(412, 1000)
	status := status.NewLine(widgets.EnglishWords().Status)
	status.Say(model.OK, "ticket 1042 is printed, net 28,180 lb, 487.25 dry bushels.")
	slip := paperview.NewSlipView()
	slip.SetLines(exampleCard())
	icon := canvas.NewImageFromResource(apptheme.AppIcon())
	icon.FillMode = canvas.ImageFillContain
	icon.SetMinSize(fyne.NewSquareSize(64))
	left := container.NewVBox(
		container.NewHBox(icon, live, layout.NewSpacer(), net),
		buttons, exampleBadges(), onPanel(exampleForm(order)), exampleRuler(),
		container.NewGridWithColumns(2, exampleColumns(), exampleChecks()), bar)
	order.Add("table", exampleTable())
	table := order.Stops[len(order.Stops)-1].Stop
	right := container.NewBorder(nil, container.New(&fixedHeight{150}, table), nil, nil, slip)
	return container.NewBorder(nil, status, nil, container.New(&fixedWidth{460}, right), container.NewPadded(left)), order
}

type fixedWidth struct{ width float32 }

func (l *fixedWidth) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(l.width, 0) }
func (l *fixedWidth) Layout(o []fyne.CanvasObject, s fyne.Size) {
	for _, each := range o {
		each.Resize(s)
	}
}

type fixedHeight struct{ height float32 }

func (l *fixedHeight) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(0, l.height) }
func (l *fixedHeight) Layout(o []fyne.CanvasObject, s fyne.Size) {
	for _, each := range o {
		each.Resize(s)
	}
}

func galleryCommands() []widgets.Command {
	no := func() bool { return false }
	return []widgets.Command{
		{ID: "settle", Title: "Settle", Group: "Load", Keys: []widgets.Key{widgets.Bare(fyne.KeyF9)}, Do: func() {}},
		{ID: "yard", Title: "Yard", Group: "Go", Keys: []widgets.Key{widgets.Bare(fyne.KeyF2)}, Icon: apptheme.IconTruck, Do: func() {}},
		{ID: "print", Title: "Print", Group: "Load", Keys: []widgets.Key{widgets.Ctrl(fyne.KeyP)}, Icon: apptheme.IconPrint, EnabledWhen: no, Do: func() {}},
		{ID: "void", Title: "Void", Group: "Load", Do: func() {}},
	}
}

// looks are the looks every picture is drawn in.
var looks = []struct {
	name string
	th   apptheme.Theme
}{
	{"light", apptheme.NewTheme(false, apptheme.TextOrdinary)},
	{"dark", apptheme.NewTheme(true, apptheme.TextOrdinary)},
	{"largest", apptheme.NewTheme(false, apptheme.TextLargest)},
}

// TestShots draws the gallery, a dialog and an open list in every look, at the
// smallest window. With TENTHPOINT_SHOTS set to a folder the pictures are also
// written there for a person to look at.
func TestShots(t *testing.T) {
	always := []fyne.ThemeColorName{apptheme.ColorInk}
	scenes := []struct {
		name string
		act  func(*house, *widgets.FocusOrder)
		want []fyne.ThemeColorName
	}{
		{"gallery", func(*house, *widgets.FocusOrder) {}, []fyne.ThemeColorName{
			theme.ColorNameBackground, apptheme.ColorPaper, apptheme.ColorPaperMissing, apptheme.ColorOKGround, apptheme.ColorStopGround, apptheme.ColorChosen, apptheme.ColorFocus, apptheme.ColorPanel}},
		{"list", func(h *house, order *widgets.FocusOrder) {
			order.Focus("grower")
			h.Write("f")
			h.Press(fyne.KeyDown)
		}, []fyne.ThemeColorName{theme.ColorNameMenuBackground, apptheme.ColorChosen}},
		{"ask", func(h *house, _ *widgets.FocusOrder) {
			h.UI.Ask(widgets.Question{Title: "Void ticket 1042?", State: model.Warn, Danger: true, Yes: "Void it", No: "Keep it",
				Text: "The number stays in the book and both copies are kept. The load can be settled again under a new number."}, func(bool) {})
		}, []fyne.ThemeColorName{theme.ColorNameError, theme.ColorNameOverlayBackground}},
		{"choice", func(h *house, _ *widgets.FocusOrder) {
			h.UI.AskChoice(widgets.Choice{Title: "Which grower?", Label: "Find", Options: widgettest.Growers()}, func(model.Option, bool) {})
		}, []fyne.ThemeColorName{apptheme.ColorChosen, theme.ColorNameOverlayBackground}},
		{"form", func(h *house, _ *widgets.FocusOrder) {
			h.UI.AskForm(model.Ask{Title: "Set the moisture by hand", Text: "A manager may set it; the reason goes on the ticket.", Fields: []model.AskField{
				{ID: "grower", Label: "Grower", Options: widgettest.Growers(), Chars: 24},
				{ID: "moisture", Label: "Moisture", Unit: "%", Figures: true, Value: "17.2", Hint: "the meter read 17.4"},
				{ID: "reason", Label: "Reason", Chars: 30, Required: true},
				{ID: "sample", Label: "Keep the sample for seven days", Checkbox: true, Value: model.TickOn},
			}}, func(map[string]string, bool) {})
			h.Press(fyne.KeyReturn, fyne.KeyReturn, fyne.KeyReturn, fyne.KeyReturn, fyne.KeyReturn)
		}, []fyne.ThemeColorName{apptheme.ColorStop, theme.ColorNameOverlayBackground}},
	}
	for _, look := range looks {
		for _, scene := range scenes {
			t.Run(look.name+" "+scene.name, func(t *testing.T) {
				h := newHouse(t, galleryCommands()...)
				test.ApplyTheme(t, look.th)
				content, order := gallery(h)
				h.Show(content, fyne.NewSize(1280, 720))
				if !order.Focus("moisture") {
					t.Error("the moisture field did not take the keyboard")
				}
				scene.act(h, order)
				picture := h.Window.Canvas().Capture()
				checkPicture(t, picture, look.th, append(always, scene.want...))
				shoot(t, "kit-"+look.name+"-"+scene.name, picture)
			})
		}
	}
}

// checkPicture looks for the theme's own colours in a picture: a widget that
// failed to draw leaves none of its own behind.
func checkPicture(t *testing.T, picture image.Image, th apptheme.Theme, want []fyne.ThemeColorName) {
	t.Helper()
	seen := map[color.NRGBA]int{}
	b := picture.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			seen[color.NRGBAModel.Convert(picture.At(x, y)).(color.NRGBA)]++
		}
	}
	for _, name := range want {
		c := color.NRGBAModel.Convert(th.Color(name, 0)).(color.NRGBA)
		if seen[c] == 0 {
			t.Errorf("nothing in the picture is %s (%v)", name, c)
		}
	}
}

// shoot writes a picture where TENTHPOINT_SHOTS says, if it says anything.
func shoot(t *testing.T, name string, picture image.Image) {
	t.Helper()
	folder := os.Getenv("TENTHPOINT_SHOTS")
	if folder == "" {
		return
	}
	f, err := os.Create(filepath.Join(folder, name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, picture); err != nil {
		t.Fatal(err)
	}
}

// onPanel is an object on the ground that the left edge of the desk has.
func onPanel(o fyne.CanvasObject) fyne.CanvasObject {
	return container.NewStack(canvas.NewRectangle(theme.Color(apptheme.ColorPanel)), container.NewPadded(o))
}
