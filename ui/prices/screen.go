package prices

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/listdetail"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
	"tenthpoint/ui/widgets"
)

// Screen is the list of the bids of a day.
type Screen struct {
	*listdetail.Screen
	Prices *Prices
}

// NewScreen makes the screen of a session.
func NewScreen(f *session.Session) shell.Screen {
	p := NewPrices(f)
	return &Screen{Prices: p, Screen: listdetail.New(listdetail.Spec{
		Title: f.Say("Prices"), List: p, Reload: p.Reload, Read: p.Reload,
		Head: listdetail.Head{Counted: p.Counted, Figures: 26}, Arrange: listdetail.Alone,
		Acts: shell.ActsOf(f.Language, p, f.Say("Prices"), priceActs),
		Hint: func() string {
			return f.Say("F12 posts the prices of today, Ctrl+K one bid. Alt+Left and Alt+Right turn the days.")
		},
	})}
}

// priceActs are the commands of bids.
var priceActs = []shell.ActRow[*Prices]{
	{ID: "prices.post", Title: "Post prices", Key: widgets.Bare(fyne.KeyF12), Do: (*Prices).PostAll},
	{ID: "prices.bid", Title: "Post a bid", Key: widgets.Ctrl(fyne.KeyK), Do: (*Prices).PostOne},
	{ID: "prices.before", Title: "Day before", Key: widgets.Alt(fyne.KeyLeft), Do: func(p *Prices) { p.Step(-1) }},
	{ID: "prices.after", Title: "Day after", Key: widgets.Alt(fyne.KeyRight), Do: func(p *Prices) { p.Step(+1) }},
}
