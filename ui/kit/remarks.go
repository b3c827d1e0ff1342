package kit

import (
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"
)

// Remarks lists what is to be said about something, each remark under its word
// with icon and colour. The list is as high as its sentences need at the width
// it has.
type Remarks struct {
	widget.BaseWidget
	list  []model.Remark
	width float32 // the width last given, for saying how high it needs to be
}

// NewRemarks makes an empty list.
func NewRemarks() *Remarks {
	r := &Remarks{}
	r.ExtendBaseWidget(r)
	return r
}

// Set shows other remarks.
func (r *Remarks) Set(list []model.Remark) {
	r.list = list
	r.Refresh()
}

// List gives the remarks shown now.
func (r *Remarks) List() []model.Remark { return r.list }

// CreateRenderer is Fyne's way to draw the list.
func (r *Remarks) CreateRenderer() fyne.WidgetRenderer { return newDrawing(r) }

// Resize notes the width: sentences wrap to it, and the height follows.
func (r *Remarks) Resize(size fyne.Size) {
	changed := r.width != size.Width
	r.width = size.Width
	r.BaseWidget.Resize(size)
	if changed {
		canvas.Refresh(r)
	}
}

var remarkText = lettering{size: SizeNote, color: ColorInk}

// remarkBar is the width of the bar at the left of a remark.
const remarkBar = 3

func (r *Remarks) least() fyne.Size {
	p := penFor(r)
	least := 20 * p.measure("0", remarkText).Width
	_, high := r.set(p, max(least, r.width))
	return fyne.NewSize(least, high)
}

func (r *Remarks) draw(size fyne.Size) []fyne.CanvasObject {
	objects, _ := r.set(penFor(r), size.Width)
	return objects
}

// set lays the remarks out for a width, and tells how high they came.
func (r *Remarks) set(p pen, width float32) (objects []fyne.CanvasObject, high float32) {
	for i, one := range r.list {
		if i > 0 {
			high += p.pad()
		}
		drawn, bottom := setRemark(one, p, width, high)
		objects = append(objects, drawn...)
		high = bottom
	}
	return objects, high
}

// setRemark draws one remark from a height down, and tells where it ends.
func setRemark(r model.Remark, p pen, width, top float32) (objects []fyne.CanvasObject, bottom float32) {
	word := lettering{size: SizeNote, color: stateInk(r.State), style: bold}
	left := remarkBar + p.inner()
	y := top + p.pad()/2
	if r.Word != "" {
		at := left
		if icon := StateIcon(r.State); icon != nil {
			side := p.lineHeight(word) - 2
			objects = append(objects, p.icon(icon, fyne.NewPos(at, y+1), side))
			at += side + p.pad()
		}
		objects = append(objects, p.write(p.clip(r.Word, word, width-at), word, fyne.NewPos(at, y)))
		y += p.lineHeight(word)
	}
	for _, line := range p.wrap(r.Text, remarkText, width-left-p.pad()) {
		objects = append(objects, p.write(line, remarkText, fyne.NewPos(left, y)))
		y += p.lineHeight(remarkText)
	}
	bottom = floor(y + p.pad()/2)
	ground := []fyne.CanvasObject{p.block(stateInk(r.State), fyne.NewPos(0, top), fyne.NewSize(remarkBar, bottom-top))}
	if r.State != model.Plain {
		ground = append([]fyne.CanvasObject{p.block(stateGround(r.State), fyne.NewPos(0, top), fyne.NewSize(width, bottom-top))}, ground...)
	}
	return append(ground, objects...), bottom
}
