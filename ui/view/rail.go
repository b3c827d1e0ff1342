package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
	"tenthpoint/ui/present"
)

// railFigures is how wide the rail is, in figures.
const railFigures = 25

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
	scroll   *container.Scroll
	cells    []*navCell
	inside   *fyne.Container
	setting  railSetting // as last laid out
}

func newRail(w *Window) *rail {
	r := &rail{
		window:   w,
		business: newLabel("", small),
		example:  kit.NewBadge(model.Warn, ""),
		who:      newLabel("", quiet),
		live:     kit.NewFigure("", ""),
		here:     kit.NewHeading(""),
		empty:    kit.NewNote(),
		trucks:   container.New(&tight{gap: cardGap}),
	}
	r.empty.Lines = 3
	r.scroll = container.NewVScroll(r.trucks)
	list := container.New(grid{columns: 2, gap: 2})
	for at, row := range w.rows {
		if !row.hidden {
			cell := newNavCell(w, w.rows[at])
			r.cells = append(r.cells, cell)
			list.Add(cell)
		}
	}
	icon := canvas.NewImageFromResource(kit.AppIcon())
	icon.FillMode = canvas.ImageFillContain
	icon.SetMinSize(fyne.NewSquareSize(32))
	head := container.NewBorder(nil, nil, icon, nil, container.New(&tight{}, r.business, r.who))
	top := container.NewVBox(head, r.example, r.live, r.here)
	keys := kit.NewHeading(present.Say("Go to, with Ctrl"))
	r.inside = container.New(railParts{r}, top, r.scroll, r.empty, container.NewVBox(keys, list), newLabel(r.shortList(), quiet))
	r.content = container.NewStack(newGround(kit.ColorPanel), container.New(railWide{list}, container.New(margin{}, r.inside)))
	return r
}

// shortList names the keys of the screens where their list has no room.
func (r *rail) shortList() string {
	first, last := r.cells[0].row.key, r.cells[len(r.cells)-2].row.key
	return present.Say("Screens: Ctrl+%s to %s, %s", string(first.Name), string(last.Name), string(r.cells[len(r.cells)-1].row.key.Name))
}

// show brings the rail up to date.
func (r *rail) show() {
	w := r.window
	r.business.say(w.frame.Business())
	r.who.say(w.frame.Who())
	r.example.Say(model.Warn, w.frame.Example())
	setVisible(r.example, w.frame.Example() != "")
	r.showLive()
	i := 0
	for at, row := range w.rows {
		if !row.hidden {
			r.cells[i].setCurrent(w.current == at)
			i++
		}
	}
	r.showTrucks(w.yard().Trucks())
}

// showLive shows what stands on the scale, where it can be read.
func (r *rail) showLive() {
	live, shown := r.window.frame.Live()
	r.live.SetCaption(live.Caption, live.Unit)
	r.live.Set(live.State, live.Value)
	setVisible(r.live, shown)
}

// showTrucks keeps a card for every truck, reusing those there are.
func (r *rail) showTrucks(rows []present.YardRow) {
	r.here.SetText(r.window.yard().Here())
	r.empty.Say(model.Plain, r.window.yard().Advice())
	setVisible(r.empty, len(rows) == 0)
	before := len(r.trucks.Objects)
	for len(r.trucks.Objects) < len(rows) {
		card := newTruckCard(r.window)
		card.short = r.setting != roomyRail
		r.trucks.Objects = append(r.trucks.Objects, card)
	}
	r.trucks.Objects = r.trucks.Objects[:len(rows)]
	for i, row := range rows {
		r.card(i).set(row)
	}
	if len(rows) != before {
		r.inside.Refresh()
	}
	r.reveal()
}

func (r *rail) card(i int) *truckCard { return r.trucks.Objects[i].(*truckCard) }

// reveal scrolls no further than needed to have the truck in hand in sight.
func (r *rail) reveal() {
	for i := range r.trucks.Objects {
		if c := r.card(i); c.row.InHand {
			from, to := c.Position().Y, c.Position().Y+c.Size().Height
			at := max(min(r.scroll.Offset.Y, from), to-r.scroll.Size().Height)
			if at != r.scroll.Offset.Y {
				r.scroll.ScrollToOffset(fyne.NewPos(0, at))
			}
		}
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
