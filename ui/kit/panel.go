package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// NewPanel puts content on a raised ground with room around it.
func NewPanel(content fyne.CanvasObject) *fyne.Container {
	return container.NewStack(newGround(), container.NewPadded(container.NewPadded(content)))
}

// ground is the ground of a panel, in the theme of now.
type ground struct{ widget.BaseWidget }

func newGround() *ground {
	g := &ground{}
	g.ExtendBaseWidget(g)
	return g
}

func (g *ground) CreateRenderer() fyne.WidgetRenderer { return newDrawing(g) }

func (g *ground) least() fyne.Size { return fyne.NewSize(0, 0) }

func (g *ground) draw(size fyne.Size) []fyne.CanvasObject {
	p := penFor(g)
	body := p.block(ColorPanel, fyne.NewPos(0, 0), size)
	body.CornerRadius = p.size(theme.SizeNameInputRadius)
	body.StrokeColor, body.StrokeWidth = p.color(ColorRule), 1
	return []fyne.CanvasObject{body}
}
