package shell

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// ground is a plain surface in a colour of the theme.
type ground struct {
	widget.BaseWidget
	color fyne.ThemeColorName
}

func NewGround(color fyne.ThemeColorName) *ground {
	g := &ground{color: color}
	g.ExtendBaseWidget(g)
	return g
}

// CreateRenderer draws the surface.
func (g *ground) CreateRenderer() fyne.WidgetRenderer {
	r := &groundRenderer{of: g, block: canvas.NewRectangle(nil)}
	r.Refresh()
	return r
}

type groundRenderer struct {
	of    *ground
	block *canvas.Rectangle
}

func (r *groundRenderer) Layout(size fyne.Size) { r.block.Resize(size) }
func (r *groundRenderer) MinSize() fyne.Size    { return fyne.Size{} }
func (r *groundRenderer) Refresh() {
	r.block.FillColor = theme.CurrentForWidget(r.of).Color(r.of.color, fyne.CurrentApp().Settings().ThemeVariant())
	r.block.Refresh()
}
func (r *groundRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.block} }
func (r *groundRenderer) Destroy()                     {}
