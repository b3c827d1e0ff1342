package shell

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// sidebarFigures is the width of the sidebar, in digits.
const sidebarFigures = 25

// Sidebar is the left edge of the window: the name of the elevator, the trucks on the yard, the
// list of screens.
type Sidebar struct {
	window   *Window
	content  fyne.CanvasObject
	business *Label
	Example  *status.Badge
	who      *Label
	Live     *widgets.Figure // the scale's reading
	here     *widgets.Heading
	empty    *status.Text
	Trucks   *fyne.Container
	Scroll   *container.Scroll
	cells    []*navCell
	Inside   *fyne.Container
	Setting  sidebarSetting // as last laid out
}

func newSidebar(w *Window) *Sidebar {
	r := &Sidebar{
		window:   w,
		business: NewLabel("", small),
		Example:  status.NewBadge(model.Warn, ""),
		who:      NewLabel("", Quiet),
		Live:     widgets.NewFigure("", ""),
		here:     widgets.NewHeading(""),
		empty:    status.NewText(),
		Trucks:   container.New(&Tight{Gap: CardGap}),
	}
	r.empty.Lines = 3
	r.Scroll = container.NewVScroll(r.Trucks)
	list := r.screens()
	icon := canvas.NewImageFromResource(apptheme.AppIcon())
	icon.FillMode = canvas.ImageFillContain
	icon.SetMinSize(fyne.NewSquareSize(32))
	head := container.NewBorder(nil, nil, icon, nil, container.New(layout.NewCustomPaddedVBoxLayout(0), r.business, r.who))
	top := container.NewVBox(head, r.Example, r.Live, r.here)
	r.Inside = container.New(sidebarParts{r}, top, r.Scroll, r.empty, list, NewLabel(r.shortList(), Quiet))
	r.content = container.NewStack(NewGround(apptheme.ColorPanel), container.New(sidebarWide{list}, container.New(Margin{}, r.Inside)))
	return r
}

// screens is the list of screens, each group under its heading with the key that is held.
func (r *Sidebar) screens() *fyne.Container {
	list := container.New(layout.NewCustomPaddedVBoxLayout(0))
	for _, group := range r.groups() {
		grid := container.New(Grid{columns: 2, gap: 2})
		for _, row := range group {
			cell := newNavCell(r.window, row)
			r.cells = append(r.cells, cell)
			grid.Add(cell)
		}
		list.Add(widgets.NewHeading(r.window.Session.Say(group[0].Group)))
		list.Add(grid)
	}
	return list
}

// groups are the screens that are listed, those of one heading together.
func (r *Sidebar) groups() [][]ScreenRow {
	var out [][]ScreenRow
	for _, row := range r.window.rows {
		at := slices.IndexFunc(out, func(group []ScreenRow) bool { return group[0].Group == row.Group })
		switch {
		case row.Hidden:
		case at < 0:
			out = append(out, []ScreenRow{row})
		default:
			out[at] = append(out[at], row)
		}
	}
	return out
}

// shortList names the keys of the screens where their list has no room.
func (r *Sidebar) shortList() string {
	var keys []string
	for _, group := range r.groups() {
		first, last := group[0].Key, group[len(group)-1].Key
		keys = append(keys, first.In(wordsIn(r.window.Session.Language))+" - "+string(last.Name))
	}
	return r.window.Session.Say("Screens: %s", strings.Join(keys, ", "))
}

// Show updates the sidebar.
func (r *Sidebar) Show() {
	w := r.window
	over := w.Session.Masthead()
	r.business.Say(over.Business)
	r.who.Say(over.Who)
	r.Example.Say(model.Warn, over.Example)
	SetVisible(r.Example, over.Example != "")
	r.showLive()
	for _, cell := range r.cells {
		cell.setCurrent(cell.row.ID == w.Front())
	}
	r.ShowTrucks(w.Yard().Trucks())
}

// showLive shows the weight on the scale, where it can be read.
func (r *Sidebar) showLive() {
	live, shown := r.window.Session.Live()
	r.Live.SetCaption(live.Caption, live.Unit)
	r.Live.Set(live.State, live.Value)
	SetVisible(r.Live, shown)
}

// ShowTrucks keeps a card for every truck, reusing those there are.
func (r *Sidebar) ShowTrucks(rows []model.TruckRow) {
	r.here.SetText(r.window.Yard().Here())
	r.empty.Say(model.Plain, r.window.Yard().Advice())
	SetVisible(r.empty, len(rows) == 0)
	before := len(r.Trucks.Objects)
	for len(r.Trucks.Objects) < len(rows) {
		card := NewTruckCard(r.window)
		card.short = r.Setting != roomySidebar
		r.Trucks.Objects = append(r.Trucks.Objects, card)
	}
	r.Trucks.Objects = r.Trucks.Objects[:len(rows)]
	for i, row := range rows {
		r.Card(i).Set(row)
	}
	if len(rows) != before {
		r.Inside.Refresh()
	}
	r.reveal()
}

func (r *Sidebar) Card(i int) *truckCard { return r.Trucks.Objects[i].(*truckCard) }

// reveal scrolls no further than needed to have the current truck in sight.
func (r *Sidebar) reveal() {
	for i := range r.Trucks.Objects {
		if c := r.Card(i); c.Row.Current {
			paint.ScrollTo(r.Scroll, c.Position().Y, c.Position().Y+c.Size().Height)
		}
	}
}

func SetVisible(o fyne.CanvasObject, on bool) {
	if on == o.Visible() {
		return
	}
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}

// sidebarWide makes the sidebar so many figures wide, or as wide as the names of the
// screens need.
type sidebarWide struct{ list fyne.CanvasObject }

func (l sidebarWide) MinSize(objects []fyne.CanvasObject) fyne.Size {
	needed := l.list.MinSize().Width + 2*Margin{}.gap()
	return fyne.NewSize(max(Wide{sidebarFigures}.width(), needed), Wide{}.MinSize(objects).Height)
}

func (sidebarWide) Layout(objects []fyne.CanvasObject, size fyne.Size) { Wide{}.Layout(objects, size) }
