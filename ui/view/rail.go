package view

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
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
	here     *kit.Heading
	trucks   *fyne.Container
	buttons  []*kit.Button
}

func newRail(w *Window) *rail {
	r := &rail{
		window:   w,
		business: newLabel("", strong),
		example:  kit.NewBadge(kit.Warn, ""),
		who:      newLabel("", quiet),
		here:     kit.NewHeading(""),
		trucks:   container.NewVBox(),
	}
	list := container.New(tight{})
	for _, row := range screens {
		if row.hidden {
			continue
		}
		b := w.commands.Button("go." + row.id)
		r.buttons = append(r.buttons, b)
		list.Add(b)
	}
	icon := canvas.NewImageFromResource(kit.AppIcon())
	icon.FillMode = canvas.ImageFillContain
	icon.SetMinSize(fyne.NewSquareSize(34))
	head := container.NewBorder(nil, nil, icon, nil, container.NewVBox(r.business, r.who))
	top := container.NewVBox(head, r.example, r.here)
	inside := container.NewBorder(top, list, nil, nil, r.trucks)
	r.content = container.NewStack(newGround(kit.ColorPanel), container.New(wide{railFigures}, container.New(margin{}, inside)))
	return r
}

// show brings the rail up to date.
func (r *rail) show() {
	w := r.window
	r.business.say(w.frame.Business())
	r.who.say(w.frame.Who())
	r.example.Say(kit.Warn, w.frame.Example())
	setVisible(r.example, w.frame.Example() != "")
	i := 0
	for at, row := range screens {
		if !row.hidden {
			r.buttons[i].SetCurrent(w.current == at)
			i++
		}
	}
	r.showTrucks(w.yard().rows())
}

// showTrucks keeps a card for every truck, reusing those there are.
func (r *rail) showTrucks(rows []present.YardRow) {
	r.here.SetText(r.window.yard().here())
	for len(r.trucks.Objects) < len(rows) {
		r.trucks.Add(newTruckCard(r.window))
	}
	r.trucks.Objects = r.trucks.Objects[:len(rows)]
	for i, row := range rows {
		r.trucks.Objects[i].(*truckCard).set(row)
	}
	r.trucks.Refresh()
}

func setVisible(o fyne.CanvasObject, on bool) {
	if on {
		o.Show()
	} else {
		o.Hide()
	}
}

// tight stacks rows with hardly any ground between them.
type tight struct{}

func (tight) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		if o.Visible() {
			least := o.MinSize()
			size = fyne.NewSize(max(size.Width, least.Width), size.Height+least.Height+2)
		}
	}
	return size
}

func (tight) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y := float32(0)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		height := o.MinSize().Height
		o.Move(fyne.NewPos(0, y))
		o.Resize(fyne.NewSize(size.Width, height))
		y += height + 2
	}
}
