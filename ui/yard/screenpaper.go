package yard

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// papers are the slip as it will print, and the working: in place of the slip, or
// beside it where the window is wide enough.
type papers struct {
	Slip   *paperview.SlipView
	beside *paperview.SlipView
}

func newPapers() *papers {
	return &papers{Slip: paperview.NewSlipView(), beside: paperview.NewSlipView()}
}

// show updates the papers of a load, the first with the slip or the working.
func (p *papers) show(now Preview, working bool) {
	if working {
		p.Slip.SetLines(now.Working())
	} else {
		p.Slip.SetPages(session.SlipPages(now.Slip))
	}
	if p.beside.Visible() {
		p.beside.SetLines(now.Working())
	}
}

// reveal scrolls to the place of a field on the slip.
func (p *papers) reveal(field string) { p.Slip.Reveal(field) }

// figureHead shows the large figures, with the remark about the load as a whole.
type figureHead struct {
	Each   []*widgets.Figure
	margin *status.Text
	all    fyne.CanvasObject
}

// figureChars is the room for net, quantity and money, in figures.
var figureChars = []int{6, 8, 9}

func newFigureHead(now Preview) *figureHead {
	h := &figureHead{margin: status.NewText()}
	h.margin.Lines = 3
	row := container.New(shell.Fitting{})
	for i, f := range now.Figures {
		figure := widgets.NewFigure(f.Caption, f.Unit)
		figure.Chars = figureChars[i]
		h.Each = append(h.Each, figure)
		row.Add(figure)
	}
	row.Add(h.margin)
	h.all = container.NewStack(shell.NewGround(apptheme.ColorPanel), container.New(shell.Slim(), row))
	return h
}

func (h *figureHead) show(now Preview) {
	for i, f := range now.Figures {
		h.Each[i].SetCaption(f.Caption, f.Unit)
		h.Each[i].Set(f.State, f.Value)
	}
	h.margin.Say(now.Margin.State, now.Margin.Text)
}
