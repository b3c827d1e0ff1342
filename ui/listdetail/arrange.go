package listdetail

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/shell"
)

// Arrangement sets head, list and detail into the screen.
type Arrangement func(head, list, detail fyne.CanvasObject) fyne.CanvasObject

// Beside sets the detail beside head and list; the layout has those two.
func Beside(l fyne.Layout) Arrangement {
	return func(head, list, detail fyne.CanvasObject) fyne.CanvasObject {
		return container.New(l, container.NewBorder(head, nil, nil, nil, list), detail)
	}
}

// Under sets list and detail side by side under the head.
func Under(l fyne.Layout) Arrangement {
	return func(head, list, detail fyne.CanvasObject) fyne.CanvasObject {
		return container.NewBorder(head, nil, nil, nil, container.New(l, list, detail))
	}
}

// Alone is a list without a detail.
func Alone(head, list, _ fyne.CanvasObject) fyne.CanvasObject {
	return container.NewBorder(head, nil, nil, nil, list)
}

// Sheet sets the list at the left and a sheet of paper at the right, at least so
// many figures wide.
type Sheet struct{ Figures float32 }

func figures(n float32) float32 { return shell.Wide{Figures: n}.MinSize(nil).Width }

func (l Sheet) sheet(width float32) float32 {
	return min(figures(shell.MostPaper), max(figures(l.Figures), width*3/10), width*52/100)
}

// MinSize is the list's own, beside the least sheet.
func (l Sheet) MinSize(objects []fyne.CanvasObject) fyne.Size {
	list, sheet := objects[0].MinSize(), objects[1].MinSize()
	return fyne.NewSize(list.Width+shell.PaperGap()/2+figures(l.Figures), max(list.Height, sheet.Height))
}

// Layout sets the sheet's own width and gives the list the rest.
func (l Sheet) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	sheet, gap := l.sheet(size.Width), shell.PaperGap()/2
	shell.Put(objects[0], 0, 0, size.Width-sheet-gap, size.Height)
	shell.Put(objects[1], size.Width-sheet, 0, sheet, size.Height)
}
