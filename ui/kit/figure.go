package kit

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Figure is a number large enough to read from across the room, with a small
// caption over it and its unit after it: the live weight, the net.
type Figure struct {
	widget.BaseWidget

	// Chars is how many figures room is kept for, so that the number does not
	// wander while it changes. Zero keeps seven.
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

// CreateRenderer is Fyne's way to draw the figure.
func (f *Figure) CreateRenderer() fyne.WidgetRenderer { return newDrawing(f) }

func (f *Figure) letters() (caption, value, unit lettering) {
	caption = lettering{size: SizeNote, color: ColorQuiet, style: bold}
	value = lettering{size: SizeFigure, color: ColorInk, style: bold}
	if f.state != model.Plain {
		value.color = stateInk(f.state)
	}
	return caption, value, lettering{size: theme.SizeNameText, color: ColorQuiet}
}

// numberRoom is the room kept for the number and for its caption.
func (f *Figure) numberRoom(p pen) float32 {
	caption, value, _ := f.letters()
	chars := f.Chars
	if chars == 0 {
		chars = 7
	}
	over := p.measure(f.caption, caption).Width + f.iconRoom(p)
	return max(float32(chars)*p.measure("0", value).Width, p.measure(f.value, value).Width, over)
}

func (f *Figure) iconRoom(p pen) float32 {
	caption, _, _ := f.letters()
	if StateIcon(f.state) == nil {
		return 0
	}
	return p.lineHeight(caption) + p.pad()
}

func (f *Figure) least() fyne.Size {
	p := penFor(f)
	caption, value, unit := f.letters()
	width := f.numberRoom(p) + p.pad() + p.measure(f.unit, unit).Width
	return fyne.NewSize(width, p.lineHeight(caption)+p.lineHeight(value))
}

func (f *Figure) draw(size fyne.Size) []fyne.CanvasObject {
	p := penFor(f)
	caption, value, unit := f.letters()
	under := p.lineHeight(caption)
	base := under + p.lineHeight(value) - p.lineHeight(unit) - p.pad()
	right := f.numberRoom(p)
	over := p.writeEnding(f.caption, caption, right, 0)
	objects := []fyne.CanvasObject{
		over,
		p.writeEnding(f.value, value, right, under),
		p.write(f.unit, unit, fyne.NewPos(right+p.pad(), base)),
	}
	if icon := StateIcon(f.state); icon != nil {
		objects = append(objects, p.icon(icon, fyne.NewPos(over.Position().X-f.iconRoom(p), 1), under-2))
	}
	return objects
}
