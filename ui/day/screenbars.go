package day

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
)

// bars is a chart of bars under its title.
type bars struct {
	title   *kit.Heading
	chart   *kit.BarChart
	content fyne.CanvasObject
}

func newBars() *bars {
	b := &bars{title: kit.NewHeading(""), chart: kit.NewBarChart()}
	b.content = container.NewBorder(b.title, nil, nil, nil, b.chart)
	return b
}

func (b *bars) set(from model.Bars) {
	b.title.SetText(from.Title)
	b.chart.Empty = from.Empty
	b.chart.Set(from.Bars)
}
