package status

import (
	"strings"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paint"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// List is a list of messages, each under its word with icon and colour. The list is as high as
// its sentences need at the width it has.
type List struct {
	widget.BaseWidget
	list  []model.Status
	width float32 // the width last given, for saying how high it needs to be
}

// NewList makes an empty list.
func NewList() *List {
	r := &List{}
	r.ExtendBaseWidget(r)
	return r
}

// Set shows other messages.
func (r *List) Set(list []model.Status) {
	r.list = list
	r.Refresh()
}

// List returns the messages shown now.
func (r *List) List() []model.Status { return r.list }

// Text is the list as text, to be copied.
func (r *List) Text() string {
	var b strings.Builder
	for _, one := range r.list {
		if one.Word != "" {
			b.WriteString(one.Word + ": ")
		}
		b.WriteString(one.Text + "\n")
	}
	return b.String()
}

// CreateRenderer draws the list.
func (r *List) CreateRenderer() fyne.WidgetRenderer { return paint.NewDrawing(r) }

// Resize notes the width: sentences wrap to it, and the height follows.
func (r *List) Resize(size fyne.Size) {
	changed := r.width != size.Width
	r.width = size.Width
	r.BaseWidget.Resize(size)
	if changed {
		canvas.Refresh(r)
	}
}

var statusText = paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.ColorInk}

// statusBar is the width of the bar at the left of a message.
const statusBar = 3

func (r *List) LeastSize() fyne.Size {
	p := paint.PainterFor(r)
	least := 20 * p.Measure("0", statusText).Width
	_, high := r.set(p, max(least, r.width))
	return fyne.NewSize(least, high)
}

func (r *List) Paint(size fyne.Size) []fyne.CanvasObject {
	objects, _ := r.set(paint.PainterFor(r), size.Width)
	return objects
}

// set lays the messages out for a width, and returns their height.
func (r *List) set(p paint.Painter, width float32) (objects []fyne.CanvasObject, high float32) {
	for i, one := range r.list {
		if i > 0 {
			high += p.Pad()
		}
		drawn, bottom := layoutStatus(one, p, width, high)
		objects = append(objects, drawn...)
		high = bottom
	}
	return objects, high
}

// layoutStatus draws one message at a position, and returns its end.
func layoutStatus(r model.Status, p paint.Painter, width, top float32) (objects []fyne.CanvasObject, bottom float32) {
	word := paint.TextStyle{Size: apptheme.SizeNote, Color: apptheme.StateInk(r.State), Style: paint.Bold}
	left := statusBar + p.Inner()
	y := top + p.Pad()/2
	if r.Word != "" {
		at := left
		if icon := apptheme.StateIcon(r.State); icon != nil {
			side := p.LineHeight(word) - 2
			objects = append(objects, p.Icon(icon, fyne.NewPos(at, y+1), side))
			at += side + p.Pad()
		}
		objects = append(objects, p.Write(p.Clip(r.Word, word, width-at), word, fyne.NewPos(at, y)))
		y += p.LineHeight(word)
	}
	for _, line := range p.Wrap(r.Text, statusText, width-left-p.Pad()) {
		objects = append(objects, p.Write(line, statusText, fyne.NewPos(left, y)))
		y += p.LineHeight(statusText)
	}
	bottom = paint.Floor(y + p.Pad()/2)
	ground := []fyne.CanvasObject{p.Block(apptheme.StateInk(r.State), fyne.NewPos(0, top), fyne.NewSize(statusBar, bottom-top))}
	if r.State != model.Plain {
		ground = append([]fyne.CanvasObject{p.Block(apptheme.StateGround(r.State), fyne.NewPos(0, top), fyne.NewSize(width, bottom-top))}, ground...)
	}
	return append(ground, objects...), bottom
}
