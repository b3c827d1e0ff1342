package listdetail

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/internal/paper"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// Stop is one place of the focus order.
type Stop struct {
	ID     string
	Widget widgets.Keyed
}

// Detail shows the chosen row.
type Detail interface {
	// Build makes its widgets.
	Build(w *shell.Window) fyne.CanvasObject
	// Stops are its places on the focus order.
	Stops() []Stop
	// First is the stop that Enter in the list leads to.
	First() string
	// Show updates the detail.
	Show()
}

// Paper shows the chosen row as the pages that print or as lines of a card, under a
// headline where there is one.
type Paper struct {
	Stop     string
	Pages    func() *paper.Layout // what prints; nil, or of nothing: the lines
	Lines    func() []model.CardLine
	Shown    func() bool         // whether there is a sheet
	Headline func() model.Status // nil: no headline

	View     *paperview.SlipView
	headline *status.Text
}

// Build makes the sheet.
func (p *Paper) Build(*shell.Window) fyne.CanvasObject {
	p.View, p.headline = paperview.NewSlipView(), status.NewText()
	p.headline.Lines = 2
	if p.Headline == nil {
		return p.View
	}
	return container.NewBorder(p.headline, nil, nil, nil, p.View)
}

// Stops are the sheet, which can be scrolled.
func (p *Paper) Stops() []Stop { return []Stop{{p.Stop, p.View}} }

// First is the sheet.
func (p *Paper) First() string { return p.Stop }

// Show sets the lines of the chosen row.
func (p *Paper) Show() {
	if p.Headline != nil {
		h := p.Headline()
		p.headline.Say(h.State, h.Text)
	}
	p.fill()
	shell.SetVisible(p.View, p.Shown())
}

func (p *Paper) fill() {
	if p.Pages != nil {
		if pages := p.Pages(); pages != nil {
			p.View.SetPages(*pages)
			return
		}
	}
	p.View.SetLines(p.Lines())
}

// Story shows the chosen row as remarks one under the other.
type Story struct {
	Stop string
	Says func() []model.Status

	says   *status.List
	reader *widgets.Reader
}

// Build makes the remarks.
func (s *Story) Build(*shell.Window) fyne.CanvasObject {
	s.says = status.NewList()
	s.reader = widgets.NewReader(s.says)
	return s.reader
}

// Stops are the remarks, which can be scrolled.
func (s *Story) Stops() []Stop { return []Stop{{s.Stop, s.reader}} }

// First is the remarks.
func (s *Story) First() string { return s.Stop }

// Show sets the remarks of the chosen row.
func (s *Story) Show() {
	s.says.Set(s.Says())
	s.reader.Refresh()
}
