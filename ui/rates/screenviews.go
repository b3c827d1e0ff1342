package rates

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/model"
	"tenthpoint/ui/paperview"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// views show the chosen edition in one of four ways, with a button for each.
type views struct {
	rates *Rates

	headline    *status.Text
	Paper       *paperview.SlipView
	Trial       *widgets.Table
	Compared    *widgets.Table
	Explanation *status.Text
	bodies      *fyne.Container
	right       *fyne.Container
	turns       [RatesProblems + 1]*widgets.Button
}

// turnIDs are the commands of the views.
var turnIDs = [RatesProblems + 1]string{RatesRows: "rates.rows", RatesTry: "rates.try", RatesCompare: "rates.compare", RatesProblems: "rates.problems"}

func newViews(r *Rates) *views { return &views{rates: r} }

// Build makes headline, buttons, and the views.
func (v *views) Build(w *shell.Window) fyne.CanvasObject {
	v.headline, v.Explanation = status.NewText(), status.NewText()
	v.headline.Lines, v.Explanation.Lines = 2, 3
	v.Paper = paperview.NewSlipView()
	v.Trial = v.newTable(v.rates.Trial)
	v.Compared = v.newTable(v.rates.Compared)
	turns := container.New(shell.Spread{})
	for view, id := range turnIDs {
		v.turns[view] = w.Commands.Button(id)
		turns.Add(v.turns[view])
	}
	v.bodies = container.NewStack(v.Paper, v.Trial, v.Compared)
	v.right = container.NewBorder(container.NewVBox(v.headline, turns, v.Explanation), nil, nil, nil, v.bodies)
	return v.right
}

// newTable makes a table that shows its chosen row in full over it.
func (v *views) newTable(of func() *Table) *widgets.Table {
	t := widgets.NewTable(nil)
	t.Small = true
	t.Empty = v.rates.session.Say("Nothing can be worked out. What stands in the way is said above.")
	t.OnChoose = func(_ int, key string) { v.Explanation.Say(model.Plain, of().Said(key)) }
	return t
}

// Stops are the focus stops of the views, of which one shows, and their buttons.
func (v *views) Stops() []listdetail.Stop {
	out := []listdetail.Stop{{ID: "paper", Widget: v.Paper}, {ID: "trial", Widget: v.Trial}, {ID: "compared", Widget: v.Compared}}
	for view, id := range turnIDs {
		out = append(out, listdetail.Stop{ID: id, Widget: v.turns[view]})
	}
	return out
}

// First returns the focus stop of the view shown.
func (v *views) First() string {
	_, id := v.shown()
	return id
}

// shown returns the view of the edition that is shown, with its focus stop.
func (v *views) shown() (fyne.CanvasObject, string) {
	switch v.rates.Shows() {
	case RatesTry:
		return v.Trial, "trial"
	case RatesCompare:
		return v.Compared, "compared"
	}
	return v.Paper, "paper"
}

// Show updates the view of the chosen edition.
func (v *views) Show() {
	h := v.rates.Headline()
	v.headline.Say(h.State, h.Text)
	for view, b := range v.turns {
		b.SetCurrent(RatesView(view) == v.rates.Shows())
	}
	shown, _ := v.shown()
	for _, o := range v.bodies.Objects {
		shell.SetVisible(o, o == shown)
	}
	v.fill()
	shell.SetVisible(v.Explanation, v.Explanation.Text() != "")
	v.right.Refresh()
}

func (v *views) fill() {
	r := v.rates
	switch r.Shows() {
	case RatesTry:
		v.list(v.Trial, r.Trial())
	case RatesCompare:
		v.list(v.Compared, r.Compared())
	default:
		v.Explanation.Say(model.Plain, "")
		v.Paper.SetLines(r.Paper())
	}
}

func (v *views) list(shown *widgets.Table, t *Table) {
	v.Explanation.Say(model.Plain, t.Said(shown.ChosenKey()))
	shown.SetColumns(t.Columns)
	shown.SetRows(t.Rows)
}
