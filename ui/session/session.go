package session

import (
	"context"
	"errors"
	"time"

	"tenthpoint/internal/message"
	"tenthpoint/internal/pin"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
)

// Session holds what the screens of one window share: the desk, the person signed in, the lists of
// growers and trucks, and the window itself.
type Session struct {
	// Language is the language of the window; set it by [Session.Speak].
	Language
	Desk    *scalehouse.Desk
	Printer Printer
	Prints  Prints
	// Indicator is the truck scale's display; nil where weights are typed.
	Indicator Indicator
	// Deck is the deck of a simulated scale; nil where the scale is a real one.
	Deck Deck
	// OfferTruck offers a truck on a simulated scale; nil before the screens are made.
	OfferTruck func()
	// Station is this computer; nil where nothing of it can be changed.
	Station Station
	// Files saves exports: workbooks, figures for other programs.
	Files Files
	// Zone is the elevator's time zone, for printing.
	Zone *time.Location
	// SetLanguage turns the window to another language at once; nil where there is none
	// to turn.
	SetLanguage func(language string) error
	// Demo makes a book of the invented elevator and returns its path, OpenDemo opens it in place
	// of this one; nil where the program has none.
	Demo     func(ctx context.Context, report func(done, total int)) (path string, err error)
	OpenDemo func(path string) error

	// RatesFolder is the folder of the elevator's own rates; RatesWrong its mistakes, one to a
	// line.
	RatesFolder string
	RatesWrong  []message.Text
	// RatesBegun is the edition that one's own is to be begun from, on the screen where editions are
	// made; empty once it was taken up.
	RatesBegun string

	// Scans are the codes that screens read.
	Scans Scans

	Window Window
	opens  map[string]func(what string) // how screens open something of their own
	Lists  *Lists
	manual string  // why weights are typed, by whom and on what day
	failed error   // of the last act that failed
	asking bool    // the act is done on an answer, and its question deals with what it fails for
	drafts *Drafts // typed texts that are no facts, once loaded
}

// New makes the session of a window on a desk. Set its Window before using it.
func New(d *scalehouse.Desk, printer Printer) *Session {
	return &Session{Desk: d, Printer: printer, Zone: time.Local, Window: nowhere{}, Scans: Scans{}}
}

// Speak sets the language of the window, by its code, and drops the state of the screens: they are
// rebuilt after it, since texts made before stay as they are.
func (f *Session) Speak(code string) error {
	language, err := LanguageOf(code)
	if err != nil {
		return err
	}
	f.Language, f.drafts, f.Lists, f.opens, f.Scans = language, nil, nil, nil, Scans{}
	return nil
}

// Notify shows the result of an act on the status line.
func (f *Session) Notify(state model.State, sentence string) {
	f.Window.Say(state, OneLine(f.Say(sentence)))
}

// Fail says on the status line why an act failed. A box whose act fails so stays open;
// see [Session.Put].
func (f *Session) Fail(err error) {
	f.failed = err
	f.Notify(model.Stop, f.Sentence(err))
	var locked pin.Asked
	switch {
	case errors.Is(err, message.ClockStepped):
		askClock(f, err)
	case errors.As(err, &locked) && !f.asking:
		askPIN(f, locked.Who, func() {
			f.Notify(model.OK, f.Say("The PIN is right. Do again what you were about to do."))
		}, nil)
	}
}

// Put opens a dialog for a question. When the act on the answer fails, the dialog opens again with
// all that was typed and the reason.
func (f *Session) Put(ask model.Ask) { f.Window.Put(withDraft(f, keptOpen(f, ask))) }

// Run does slow work away from the window.
func (f *Session) Run(job model.Job) { f.Window.Run(job) }

// Go brings a screen to the front.
func (f *Session) Go(screen string) { f.Window.Go(screen) }

// Open brings a screen to the front with something of its own chosen: a load on the yard, a search
// of the tickets, a grower who is settled with.
func (f *Session) Open(screen, what string) {
	if open := f.opens[screen]; open != nil {
		open(what)
	}
	f.Go(screen)
}

// OnOpen sets how a screen opens something of its own.
func (f *Session) OnOpen(screen string, open func(what string)) {
	if f.opens == nil {
		f.opens = map[string]func(string){}
	}
	f.opens[screen] = open
}

// Changed drops the cached data of the book and refreshes the window.
func (f *Session) Changed() {
	f.Lists = nil
	f.Window.Redraw()
}

// IsNew reports whether the elevator has not been set up.
func (f *Session) IsNew() bool { return f.Desk.Profile().Business == "" }

// Clock is the time on the wall, to the minute.
func (f *Session) Clock() string { return f.Desk.Local(f.Desk.Now()) }

// nowhere is the window of a session that has none yet.
type nowhere struct{}

func (nowhere) Say(model.State, string) {}
func (nowhere) Put(model.Ask)           {}
func (nowhere) Redraw()                 {}
func (nowhere) Go(string)               {}
func (nowhere) Run(job model.Job) {
	err := job.Do(context.Background(), func(int, int) {})
	if job.Done != nil {
		job.Done(err)
	}
}
