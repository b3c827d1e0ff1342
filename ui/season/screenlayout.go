package season

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/shell"
)

// wall sets all pictures in pairs, one pair under the other. Where they would be too low, only the
// pair in front is shown, one beside the other or, on a narrow screen, over it.
type wall struct{ front *int }

// MinSize is room for one picture.
func (wall) MinSize(objects []fyne.CanvasObject) fyne.Size {
	if len(objects) == 0 {
		return fyne.Size{}
	}
	return objects[0].MinSize()
}

// comfort is the factor over its least size that a picture needs before all of them are
// shown.
const (
	comfort     = 1.1
	comfortWide = 1.6
)

func (l wall) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	least := l.MinSize(objects)
	for _, across := range []int{2, 3} {
		rows := len(objects) / across
		if size.Width >= float32(across)*least.Width*comfortWide && size.Height >= float32(rows)*least.Height*comfort {
			l.grid(objects, size, across)
			return
		}
	}
	for i, o := range objects {
		shell.SetVisible(o, i/2 == *l.front)
	}
	pair := objects[2**l.front : 2**l.front+2]
	switch {
	case size.Width >= 2*least.Width:
		l.grid(pair, size, 2)
	case size.Height >= 2*least.Height:
		l.grid(pair, size, 1)
	default: // room for one alone
		shell.SetVisible(pair[1], false)
		l.grid(pair[:1], size, 1)
	}
}

// grid shows objects in rows of equal height.
func (wall) grid(objects []fyne.CanvasObject, size fyne.Size, across int) {
	rows := (len(objects) + across - 1) / across
	width, height := size.Width/float32(across), size.Height/float32(rows)
	for i, o := range objects {
		shell.SetVisible(o, true)
		shell.Put(o, float32(i%across)*width, float32(i/across)*height, width, height)
	}
}
