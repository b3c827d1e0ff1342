package widgets

import (
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Figure is a number large enough to read from across the room, with a small
// caption over it and its unit after it: the live weight, the net.
type Figure struct {
	widget.BaseWidget

	// Chars is the number of digits room is kept for, so that the number does not move while it
	// changes. Zero means 7.
	Chars int

	caption, value, unit string
	state                model.State
}

// NewFigure makes a figure without a value.
func NewFigure(caption, unit string) *Figure {
	f := &Figure{caption: caption, unit: unit}
	f.ExtendBaseWidget(f)
	return f
}

// Set shows a value, ready made, in its state.
func (f *Figure) Set(state model.State, value string) {
	if f.state != state || f.value != value {
		f.state, f.value = state, value
		f.Refresh()
	}
}

// SetCaption changes the caption and the unit.
func (f *Figure) SetCaption(caption, unit string) {
	if f.caption != caption || f.unit != unit {
		f.caption, f.unit = caption, unit
		f.Refresh()
	}
}

// Value is the text shown now.
func (f *Figure) Value() string { return f.value }

// CreateRenderer draws the figure.
func (f *Figure) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(f) }

func (f *Figure) letters() (caption, value, unit paint.TextStyle) {
	caption = paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorQuiet, Style: paint.Bold}
	value = paint.TextStyle{Size: apptheme.SizeFigure, Color: apptheme.ColorInk, Style: paint.Bold}
	if f.state != model.Plain {
		value.Color = apptheme.StateInk(f.state)
	}
	return caption, value, paint.TextStyle{Size: theme.SizeNameText, Color: apptheme.ColorQuiet}
}

// numberRoom is the room kept for the number and for its caption.
func (f *Figure) numberRoom(p paint.Painter) float32 {
	caption, value, _ := f.letters()
	chars := f.Chars
	if chars == 0 {
		chars = 7
	}
	over := p.Measure(f.caption, caption).Width + f.iconRoom(p)
	return max(float32(chars)*p.Measure("0", value).Width, p.Measure(f.value, value).Width, over)
}

func (f *Figure) iconRoom(p paint.Painter) float32 {
	caption, _, _ := f.letters()
	if apptheme.StateIcon(f.state) == nil {
		return 0
	}
	return p.LineHeight(caption) + p.Pad()
}

func (f *Figure) LeastSize() fyne.Size {
	p := paint.PainterFor(f)
	caption, value, unit := f.letters()
	width := f.numberRoom(p) + p.Pad() + p.Measure(f.unit, unit).Width
	return fyne.NewSize(width, p.LineHeight(caption)+p.LineHeight(value))
}

func (f *Figure) Paint(size fyne.Size) []fyne.CanvasObject {
	p := paint.PainterFor(f)
	caption, value, unit := f.letters()
	under := p.LineHeight(caption)
	base := under + p.LineHeight(value) - p.LineHeight(unit) - p.Pad()
	right := f.numberRoom(p)
	over := p.WriteEnding(f.caption, caption, right, 0)
	objects := []fyne.CanvasObject{
		over,
		p.WriteEnding(f.value, value, right, under),
		p.Write(f.unit, unit, fyne.NewPos(right+p.Pad(), base)),
	}
	if icon := apptheme.StateIcon(f.state); icon != nil {
		objects = append(objects, p.Icon(icon, fyne.NewPos(over.Position().X-f.iconRoom(p), 1), under-2))
	}
	return objects
}
