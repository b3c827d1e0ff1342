package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// railFigures is how wide the rail is, in figures.
const railFigures = 26

// manyTrucks is how many cards have room for three lines each.
const manyTrucks = 4

// rail is the left edge of the window: whose house this is, the trucks on the
// yard, the list of screens.
type rail struct {
	window   *Window
	content  fyne.CanvasObject
	business *label
	example  *kit.Badge
	who      *label
	live     *kit.Figure // what the scale shows
	here     *kit.Heading
	empty    *kit.Note
	trucks   *fyne.Container
	cells    []*navCell
}

func newRail(w *Window) *rail {
	r := &rail{
		window:   w,
		business: newLabel("", small),
		example:  kit.NewBadge(kit.Warn, ""),
		who:      newLabel("", quiet),
		live:     kit.NewFigure("", ""),
		here:     kit.NewHeading(""),
		empty:    kit.NewNote(),
		trucks:   container.New(&tight{gap: 3}),
	}
	r.empty.Lines = 3
	list := container.New(grid{columns: 2, gap: 2})
	for at, row := range screens {
		if !row.hidden {
			cell := newNavCell(w, screens[at])
			r.cells = append(r.cells, cell)
			list.Add(cell)
		}
	}
	icon := canvas.NewImageFromResource(kit.AppIcon())
	icon.FillMode = canvas.ImageFillContain
	icon.SetMinSize(fyne.NewSquareSize(32))
	head := container.NewBorder(nil, nil, icon, nil, container.New(&tight{}, r.business, r.who))
	top := container.NewVBox(head, r.example, r.live, r.here)
	foot := container.NewVBox(kit.NewHeading(present.Say("Go to, with Ctrl")), list)
	inside := container.NewBorder(top, foot, nil, nil, container.New(&tight{gap: 3}, r.trucks, r.empty))
	r.content = container.NewStack(newGround(kit.ColorPanel), container.New(railWide{list}, container.New(margin{}, inside)))
	return r
}

// show brings the rail up to date.
func (r *rail) show() {
	w := r.window
	r.business.say(w.frame.Business())
	r.who.say(w.frame.Who())
	r.example.Say(kit.Warn, w.frame.Example())
	setVisible(r.example, w.frame.Example() != "")
	r.showLive()
	i := 0
	for at, row := range screens {
		if !row.hidden {
			r.cells[i].setCurrent(w.current == at)
			i++
		}
	}
	r.showTrucks(w.yard().rows())
}

// showLive shows what stands on the scale, where it can be read.
func (r *rail) showLive() {
	live, shown := r.window.frame.Live()
	r.live.SetCaption(live.Caption, live.Unit)
	r.live.Set(kit.State(live.State), live.Value)
	setVisible(r.live, shown)
}

// showTrucks keeps a card for every truck, reusing those there are.
func (r *rail) showTrucks(rows []present.YardRow) {
	r.here.SetText(r.window.yard().here())
	r.empty.Say(kit.Plain, r.window.yard().advice())
	setVisible(r.empty, len(rows) == 0)
	before := len(r.trucks.Objects)
	for len(r.trucks.Objects) < len(rows) {
		r.trucks.Objects = append(r.trucks.Objects, newTruckCard(r.window))
	}
	r.trucks.Objects = r.trucks.Objects[:len(rows)]
	for i, row := range rows {
		r.trucks.Objects[i].(*truckCard).set(row, len(rows) > manyTrucks)
	}
	if len(rows) != before {
		r.trucks.Refresh()
	}
}

func setVisible(o fyne.CanvasObject, on bool) {
	if on == o.Visible() {
		return
	}
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}

// railWide makes the rail so many figures wide, or as wide as the names of the
// screens need.
type railWide struct{ list fyne.CanvasObject }

func (l railWide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	needed := l.list.MinSize().Width + 2*margin{}.gap()
	return fyne.NewSize(max(wide{railFigures}.width(), needed), wide{}.MinSize(objects).Height)
}

func (railWide) Layout(objects []fyne.CanvasObject, size fyne.Size) { wide{}.Layout(objects, size) }
