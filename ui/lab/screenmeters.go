package lab

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/charts"
	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// NewMetersScreen makes the list of moisture meters over the log of the one
// chosen.
func NewMetersScreen(f *session.Session) shell.Screen {
	m := NewMeters(f)
	return listdetail.New(listdetail.Spec{
		Title: f.Say("Moisture meters"), List: m, Read: m.Refresh,
		Detail: &meterLog{meters: m}, Arrange: overLog,
		Acts: shell.ActsOf(f.Language, m, f.Say("Meters"), meterActs),
		Hint: func() string {
			return f.Say("F12 saves a round of references read on the meter. Escape goes back.")
		},
	})
}

// meterActs are the actions of meters.
var meterActs = []shell.ActRow[*Meters]{
	{ID: "meters.check", Title: "Write a check", Key: widgets.Bare(fyne.KeyF12), When: (*Meters).HasMeter, Why: "No meter is set up yet.", Do: (*Meters).AskCheck},
	{ID: "meters.withdraw", Title: "Withdraw a check", Destroys: true, Key: widgets.CtrlShift(fyne.KeyR), When: (*Meters).CanWithdraw, Why: "No check of this meter stands.", Do: (*Meters).AskWithdraw, MenuOnly: true},
	{ID: "meters.start", Title: "Start check", Key: widgets.Ctrl(fyne.KeyJ), When: (*Meters).HasMeter, Why: "No meter is set up yet.", Do: (*Meters).AskStart},
	{ID: "meters.new", Title: "New meter", Key: widgets.Ctrl(fyne.KeyE), Do: func(m *Meters) { m.AskMeter(true) }},
	{ID: "meters.change", Title: "Change the meter", Key: widgets.Ctrl(fyne.KeyK), When: (*Meters).HasMeter, Why: "No meter is set up yet.", Do: func(m *Meters) { m.AskMeter(false) }},
	{ID: "meters.policy", Title: "How we test", Key: widgets.Ctrl(fyne.KeyO), Do: (*Meters).AskPolicy},
	{ID: "meters.print", Title: "Print the log", Icon: apptheme.IconPrint, Key: widgets.Ctrl(fyne.KeyP), When: (*Meters).HasMeter, Why: "No meter is set up yet.", Do: (*Meters).PrintLog},
}

// overLog sets the list, three lines high and a half, over the log.
func overLog(head, list, detail fyne.CanvasObject) fyne.CanvasObject {
	top := container.NewVBox(head, container.New(shell.High{Lines: 3.5}, list))
	return container.NewBorder(top, nil, nil, nil, detail)
}

// meterLog shows the chosen meter: its checks, a chart of its errors, and the findings.
type meterLog struct {
	meters *Meters
	checks *widgets.Table
	chart  *charts.CheckChart
	says   *status.List
	reader *widgets.Reader
}

// Build makes chart, table, and remarks.
func (l *meterLog) Build(*shell.Window) fyne.CanvasObject {
	l.checks = widgets.NewTable(l.meters.checkColumns().Heads())
	l.checks.Small = true
	l.checks.Empty = l.meters.session.Say("No reference has been read on it. F12 writes one down.")
	l.chart, l.says = charts.NewCheckChart(), status.NewList()
	l.reader = widgets.NewReader(l.says)
	picture := container.NewBorder(widgets.NewHeading(l.meters.session.Say("Error from check to check, in points")), nil, nil, nil, l.chart)
	log := container.NewBorder(widgets.NewHeading(l.meters.session.Say("References read on it")), nil, nil, nil, container.New(shell.High{Lines: 2.5}, l.checks))
	return container.New(shell.PictureAndSays, container.NewGridWithRows(2, picture, log), l.reader)
}

// Stops are the table and the remarks.
func (l *meterLog) Stops() []listdetail.Stop {
	return []listdetail.Stop{{ID: "checks", Widget: l.checks}, {ID: "says", Widget: l.reader}}
}

// First is the table of checks.
func (l *meterLog) First() string { return "checks" }

// Show updates the log.
func (l *meterLog) Show() {
	l.checks.SetRows(l.meters.Checks())
	l.says.Set(l.meters.Statuses())
	l.reader.Refresh()
	c := l.meters.Chart()
	l.chart.Empty = c.Empty
	l.chart.Set(c.Points, c.Limits)
	l.chart.SetAxes(c.Scale, c.Days)
}
