package charts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tenthpoint/internal/grain/look"
	"tenthpoint/ui/paint"
)

// Swatch is a patch in the colour and hatching of a grain.
type Swatch struct {
	widget.BaseWidget
	look look.Look
}

// NewSwatch makes a patch without a grain, which is nothing to see.
func NewSwatch() *Swatch {
	s := &Swatch{}
	s.ExtendBaseWidget(s)
	return s
}

// Set shows another grain.
func (s *Swatch) Set(l look.Look) {
	if s.look != l {
		s.look = l
		s.Refresh()
	}
}

// CreateRenderer implements fyne.Widget.
func (s *Swatch) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(s) }

// LeastSize is a patch in which a hatching can be told.
func (s *Swatch) LeastSize() fyne.Size { return fyne.NewSquareSize(8) }

// Paint fills the patch.
func (s *Swatch) Paint(size fyne.Size) []fyne.CanvasObject {
	if s.look == (look.Look{}) {
		return nil
	}
	return []fyne.CanvasObject{paint.PainterFor(s).Surfaces(size, []paint.Surface{{Look: s.look, Size: size}})}
}
