package rates

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of editions at the left, and the views of the chosen one at the right.
type Screen struct {
	*listdetail.Screen
	Rates *Rates
	Views *views
}

// NewScreen makes the screen of a session.
func NewScreen(f *session.Session) shell.Screen {
	r := NewRates(f)
	s := &Screen{Rates: r, Views: newViews(r)}
	s.Screen = listdetail.New(listdetail.Spec{
		Title: f.Say("Rates"), List: r, Small: true, Reload: r.Reload,
		Detail: s.Views, Arrange: listdetail.Beside(shell.ListAndPage),
		Acts: shell.ActsOf(f.Language, s, f.Say("Rates"), rateActs),
		Hint: func() string {
			return f.Say("Up and Down choose an edition, Enter goes to what it says. Ctrl+T tries it, Ctrl+K compares.")
		},
	})
	return s
}

// rateActs are the actions of rates. Those that turn to a view of the edition have their buttons
// over it.
var rateActs = []shell.ActRow[*Screen]{
	{ID: "rates.rows", Title: "Rows", Key: widgets.Ctrl(fyne.KeyR), Do: turn(RatesRows), MenuOnly: true},
	{ID: "rates.try", Title: "Try", Key: widgets.Ctrl(fyne.KeyT), Do: turn(RatesTry), MenuOnly: true},
	{ID: "rates.compare", Title: "Compare", Key: widgets.Ctrl(fyne.KeyK), Do: turn(RatesCompare), MenuOnly: true},
	{ID: "rates.problems", Title: "Problems", Key: widgets.Ctrl(fyne.KeyP), Do: turn(RatesProblems), MenuOnly: true},
	{ID: "rates.load", Title: "Try a load", Key: widgets.Ctrl(fyne.KeyE), When: can((*Rates).HasEdition), Why: "No edition is chosen.", Do: act((*Rates).AskLoad), Break: true},
	{ID: "rates.other", Title: "Compare with", Key: widgets.Ctrl(fyne.KeyO), When: can((*Rates).HasOther), Why: "There is no choice: this grain has no further edition.", Do: act((*Rates).AskOther)},
	{ID: "rates.schedule", Title: "Schedule", Key: widgets.Ctrl(fyne.KeyU), When: can((*Rates).HasEdition), Why: "No edition is chosen.", Do: act((*Rates).AskSchedule)},
	{ID: "rates.mine", Title: "Make mine", Key: widgets.Ctrl(fyne.KeyM), When: can((*Rates).HasEdition), Why: "No edition is chosen.", Do: act(makeMine)},
	{ID: "rates.prices", Title: "Prices of the day", Key: widgets.CtrlShift(fyne.KeyU), Do: act(func(r *Rates) { ask.Prices(r.session) }), Break: true},
	{ID: "rates.again", Title: "Read files again", Key: widgets.Ctrl(fyne.KeyI), Do: act((*Rates).ReadAgain), Break: true},
	{ID: "rates.text", Title: "Save its text", Key: widgets.Ctrl(fyne.KeyS), When: can((*Rates).HasEdition), Why: "No edition is chosen.", Do: act((*Rates).SaveText)},
	{ID: "rates.post", Title: "Print to post", Key: widgets.CtrlShift(fyne.KeyN), When: can((*Rates).HasEdition), Why: "No edition is chosen.", Do: act(printPosted), MenuOnly: true},
	{ID: "rates.page", Title: "Page for growers", Key: widgets.CtrlShift(fyne.KeyG), Do: act(savePage), MenuOnly: true},
}

// act does something with the editions, can asks them, and turn turns to a view.
func act(do func(*Rates)) func(*Screen) { return func(s *Screen) { do(s.Rates) } }

func can(may func(*Rates) bool) func(*Screen) bool {
	return func(s *Screen) bool { return may(s.Rates) }
}

func turn(to RatesView) func(*Screen) {
	return func(s *Screen) { s.Rates.Turn(to); s.Refresh(); s.FocusDetail() }
}
