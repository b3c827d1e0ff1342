package shell

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"tenthpoint/ui/apptheme"
)

// navCell is one screen in the list: its name and the key it is under. A click opens it, as the key
// does, and leaves the focus where it is.
type navCell struct {
	widget.BaseWidget
	window  *Window
	row     ScreenRow
	current bool
	hovered bool
}

var (
	_ fyne.Tappable     = (*navCell)(nil)
	_ desktop.Hoverable = (*navCell)(nil)
)

func newNavCell(w *Window, row ScreenRow) *navCell {
	c := &navCell{window: w, row: row}
	c.ExtendBaseWidget(c)
	return c
}

func (c *navCell) setCurrent(on bool) {
	if c.current != on {
		c.current = on
		c.Refresh()
	}
}

// Tapped goes to the screen.
func (c *navCell) Tapped(*fyne.PointEvent) { c.window.Commands.Run("go." + c.row.ID) }

// MouseIn tints the cell.
func (c *navCell) MouseIn(*desktop.MouseEvent) { c.hovered = true; c.Refresh() }

// MouseMoved does nothing.
func (c *navCell) MouseMoved(*desktop.MouseEvent) {}

// MouseOut takes the tint away.
func (c *navCell) MouseOut() { c.hovered = false; c.Refresh() }

// CreateRenderer draws the cell.
func (c *navCell) CreateRenderer() fyne.WidgetRenderer {
	r := &navRenderer{
		cell: c, body: NewGround(theme.ColorNameBackground), mark: NewGround(apptheme.ColorFocus),
		name: NewLabel("", Ordinary), key: NewLabel("", AtRight),
	}
	r.Refresh()
	return r
}

type navRenderer struct {
	cell       *navCell
	body, mark *ground
	name, key  *Label
}

func (r *navRenderer) MinSize() fyne.Size {
	return fyne.NewSize(r.name.MinSize().Width+r.key.MinSize().Width+3*theme.InnerPadding(), r.name.MinSize().Height+theme.InnerPadding())
}

func (r *navRenderer) Layout(size fyne.Size) {
	pad := theme.InnerPadding()
	r.body.Resize(size)
	r.mark.Resize(fyne.NewSize(3, size.Height))
	r.name.Move(fyne.NewPos(pad, 0))
	r.name.Resize(fyne.NewSize(size.Width-2*pad, size.Height))
	width := r.key.MinSize().Width
	r.key.Move(fyne.NewPos(size.Width-pad-width, 0))
	r.key.Resize(fyne.NewSize(width, size.Height))
}

func (r *navRenderer) Refresh() {
	c := r.cell
	r.body.color = apptheme.ColorPanel
	switch {
	case c.current:
		r.body.color = apptheme.ColorChosen
	case c.hovered:
		r.body.color = theme.ColorNameButton
	}
	SetVisible(r.mark, c.current)
	r.name.Say(c.window.Session.Say(c.row.Title))
	r.key.Say(string(c.row.Key.Name))
	for _, o := range r.Objects() {
		o.Refresh()
	}
}

func (r *navRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.body, r.mark, r.name, r.key}
}

func (r *navRenderer) Destroy() {}
