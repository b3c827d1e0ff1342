package rates

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of editions at the left, and at the right what the chosen
// one says and does.
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
		Title: session.Say("Rates"), List: r, Small: true, Reload: r.Reload,
		Detail: s.Views, Arrange: listdetail.Beside(shell.ListAndPage),
		Group: session.Say("Rates"), Acts: s.acts(),
		Hint: func() string {
			return session.Say("Up and Down choose an edition, Enter goes to what it says. Ctrl+T tries it, Ctrl+K compares.")
		},
	})
	return s
}

// acts are what can be done with rates. Those that turn to a view of the edition
// have their buttons over it.
func (s *Screen) acts() []shell.ActRow {
	r := s.Rates
	turn := func(to RatesView) func() { return func() { r.Turn(to); s.Refresh(); s.FocusDetail() } }
	none := func() string { return session.Say("There is no edition in hand.") }
	noOther := func() string { return session.Say("There is no choice: this grain has no further edition.") }
	return []shell.ActRow{
		{ID: "rates.rows", Title: session.Say("Rows"), Key: widgets.Ctrl(fyne.KeyR), Do: turn(RatesRows), MenuOnly: true},
		{ID: "rates.try", Title: session.Say("Try"), Key: widgets.Ctrl(fyne.KeyT), Do: turn(RatesTry), MenuOnly: true},
		{ID: "rates.compare", Title: session.Say("Compare"), Key: widgets.Ctrl(fyne.KeyK), Do: turn(RatesCompare), MenuOnly: true},
		{ID: "rates.problems", Title: session.Say("Problems"), Key: widgets.Ctrl(fyne.KeyP), Do: turn(RatesProblems), MenuOnly: true},
		{ID: "rates.load", Title: session.Say("Another load"), Key: widgets.Ctrl(fyne.KeyE), When: r.HasEdition, WhyNot: none, Do: r.AskLoad, Break: true},
		{ID: "rates.other", Title: session.Say("Compare with"), Key: widgets.Ctrl(fyne.KeyO), When: r.HasOther, WhyNot: noOther, Do: r.AskOther},
		{ID: "rates.schedule", Title: session.Say("Schedule"), Key: widgets.Ctrl(fyne.KeyU), When: r.HasEdition, WhyNot: none, Do: r.AskSchedule},
		{ID: "rates.again", Title: session.Say("Read the files"), Key: widgets.Ctrl(fyne.KeyI), Do: r.ReadAgain, Break: true},
		{ID: "rates.text", Title: session.Say("Write its text"), Key: widgets.Ctrl(fyne.KeyS), When: r.HasEdition, WhyNot: none, Do: r.SaveText},
	}
}
