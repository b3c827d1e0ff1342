package kit

import "fyne.io/fyne/v2"

// bareSheet is the paper itself. Its edges are thin blocks: a frame around a
// long sheet would be slow to paint. It is kept while pen and size stay.
type bareSheet struct {
	pen     pen
	size    fyne.Size
	objects []fyne.CanvasObject
}

// fit gives the blocks of a sheet, in a slice of their own.
func (b *bareSheet) fit(p pen, size fyne.Size) []fyne.CanvasObject {
	if b.objects == nil || b.pen != p || b.size != size {
		edge := func(x, y, wide, high float32) fyne.CanvasObject {
			return p.block(ColorPaperRule, fyne.NewPos(x, y), fyne.NewSize(wide, high))
		}
		*b = bareSheet{pen: p, size: size, objects: []fyne.CanvasObject{
			p.block(ColorPaper, fyne.NewPos(0, 0), size),
			edge(0, 0, size.Width, 1),
			edge(0, 0, 1, size.Height),
			edge(size.Width-1, 0, 1, size.Height),
			edge(0, size.Height-1, size.Width, 1),
		}}
	}
	return append([]fyne.CanvasObject{}, b.objects...)
}
