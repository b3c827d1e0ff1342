package day

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/charts"
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgets"
)

// bars is a picture under its title.
type bars struct {
	title   *widgets.Heading
	chart   *charts.Columns
	content fyne.CanvasObject
}

func newBars() *bars {
	b := &bars{title: widgets.NewHeading(""), chart: charts.NewColumns()}
	b.content = container.NewBorder(b.title, nil, nil, nil, b.chart)
	return b
}

func (b *bars) set(from model.Picture) {
	b.title.SetText(from.Title)
	b.chart.Set(from)
}
