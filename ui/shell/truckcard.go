package shell

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/charts"
	"tenthpoint/ui/model"
)

// truckCard is one truck on the yard: its key, its number, whose grain it brings, how long it has
// waited and what it waits for. A click opens it, as its key does.
type truckCard struct {
	widget.BaseWidget
	window *Window
	Row    model.TruckRow
	short  bool // two lines: there is no room for three
}

func NewTruckCard(w *Window) *truckCard {
	c := &truckCard{window: w}
	c.ExtendBaseWidget(c)
	return c
}

func (c *truckCard) Set(row model.TruckRow) {
	if c.Row != row {
		c.Row = row
		c.Refresh()
	}
}

// Shorten hides or shows the line with the grain's owner.
func (c *truckCard) Shorten(short bool) {
	if c.short != short {
		c.short = short
		c.Refresh()
	}
}

// Tapped makes the truck the current one.
func (c *truckCard) Tapped(*fyne.PointEvent) { c.window.Yard().TakeTruck(c.Row.ID) }

// height returns the height of a card with two lines (short) or three.
func (c *truckCard) height(short bool) float32 {
	high := NewLabel("", large).MinSize().Height + NewLabel("", small).MinSize().Height + theme.InnerPadding()
	if !short {
		high += NewLabel("", Quiet).MinSize().Height
	}
	return high
}

// CreateRenderer draws the card.
func (c *truckCard) CreateRenderer() fyne.WidgetRenderer {
	r := &cardRenderer{card: c,
		body: NewGround(theme.ColorNameBackground), mark: NewGround(apptheme.ColorFocus), icon: canvas.NewImageFromResource(nil),
		key:   NewLabel("", Quiet),
		truck: NewLabel("", large),
		waits: NewLabel("", AtRight),
		late:  canvas.NewImageFromResource(apptheme.StateIcon(model.Warn)),
		who:   NewLabel("", Quiet),
		next:  NewLabel("", small),
		grain: charts.NewSwatch(),
	}
	r.icon.FillMode, r.late.FillMode = canvas.ImageFillContain, canvas.ImageFillContain
	r.fill()
	return r
}

type cardRenderer struct {
	card                         *truckCard
	body, mark                   *ground
	icon, late                   *canvas.Image // of what it waits for, and of a wait that is too long
	key, truck, waits, who, next *Label
	grain                        *charts.Swatch // an edge in the look of its grain
}

// fill puts the row's texts in place.
func (r *cardRenderer) fill() {
	row := r.card.Row
	r.key.Say(row.Key)
	r.truck.Say(row.Truck)
	r.waits.letters = AtRight
	if row.Late {
		r.waits.letters = lateAtRight
	}
	r.waits.Say(row.Waits)
	SetVisible(r.late, row.Late)
	r.who.Say(row.Who)
	r.next.Say(row.Next.Text)
	r.grain.Set(row.Look)
	SetVisible(r.who, !r.card.short)
	r.body.color = theme.ColorNameBackground
	if row.Current {
		r.body.color = apptheme.ColorChosen
	}
	SetVisible(r.mark, row.Current)
	r.icon.Resource = apptheme.StateIcon(row.Next.State)
	r.icon.Refresh()
	r.body.Refresh()
}

func (r *cardRenderer) MinSize() fyne.Size {
	return fyne.NewSize(10*theme.InnerPadding(), r.card.height(r.card.short))
}

func captionWidth(text string) float32 {
	return fyne.MeasureText(text, theme.CaptionTextSize(), fyne.TextStyle{}).Width
}

func (r *cardRenderer) Layout(size fyne.Size) {
	pad := theme.InnerPadding()
	r.body.Resize(size)
	r.mark.Resize(fyne.NewSize(4, size.Height))
	const mark, edge = 4, 9 // widths
	left, width := pad+mark+edge, size.Width-2*pad-mark-edge
	y := pad / 2
	place := func(o fyne.CanvasObject, x, y, width, height float32) {
		o.Move(fyne.NewPos(x, y))
		o.Resize(fyne.NewSize(width, height))
	}
	place(r.grain, mark+2, mark, edge, size.Height-2*mark)
	keyWidth := max(captionWidth("F10 "), captionWidth(r.card.Row.Key+" "))
	high, low := r.truck.MinSize().Height, r.who.MinSize().Height
	waits := r.waits.MinSize().Width
	place(r.key, left, y, keyWidth, high)
	taken := waits + pad
	if r.card.Row.Late {
		place(r.late, left+width-waits-low, y+(high-low)/2+1, low-3, low-3)
		taken += low
	}
	place(r.truck, left+keyWidth, y, width-keyWidth-taken, high)
	place(r.waits, left+width-waits, y, waits, high)
	y += high
	if !r.card.short {
		place(r.who, left, y, width, low)
		y += low
	}
	place(r.icon, left, y+1, low-3, low-3)
	place(r.next, left+low+2, y, width-low-2, low)
}

func (r *cardRenderer) Refresh() {
	r.fill()
	r.Layout(r.card.Size())
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r *cardRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.body, r.mark, r.grain, r.key, r.truck, r.waits, r.late, r.who, r.icon, r.next}
}

func (r *cardRenderer) Destroy() {}
