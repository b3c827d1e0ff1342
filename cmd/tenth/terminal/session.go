package terminal

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/engines"
	"tenthpoint/internal/book/place"
	"tenthpoint/internal/keyfile"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture/chart"
	"tenthpoint/internal/pin"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/signing"
)

// BookFlags say which book a command works in.
type BookFlags struct {
	Book     string `help:"The book: a file, or postgres://USER@HOST/DATABASE. Without it, the one in your data folder." env:"TENTHPOINT_BOOK" placeholder:"PATH"`
	AnyPlace bool   `help:"Write also in a book on a network drive or in a synced folder."`
	RatesFlags
}

// RatesFlags say which rates a command settles under.
type RatesFlags struct {
	Schedules string `help:"A folder with the elevator's own rates, *.toml. Without it, the folder \"schedules\" beside the book." env:"TENTHPOINT_SCHEDULES" placeholder:"DIR"`
}

// WhoFlags say who acts.
type WhoFlags struct {
	Who     string `help:"Who acts, by full name. Without it, the weigher of the set-up." env:"TENTHPOINT_WHO" placeholder:"NAME"`
	PINFile string `name:"pin-file" help:"A file with the PIN of whoever acts; TENTHPOINT_PIN holds it otherwise. Without either it is asked for." placeholder:"FILE"`
	Clock   string `help:"Why the computer's clock stands before the last fact of the book, or long after it, when that was asked." placeholder:"WHY"`
}

// AfterApply passes the answer about the clock to the terminal, where the book is opened.
func (f WhoFlags) AfterApply(t *Terminal) error {
	t.ClockAnswer, t.PIN = f.Clock, os.Getenv("TENTHPOINT_PIN")
	if f.PINFile == "" {
		return nil
	}
	text, err := os.ReadFile(f.PINFile)
	if err != nil {
		return Refusal("Check --pin-file", "the file %s cannot be read", f.PINFile)
	}
	t.PIN = strings.TrimRight(string(text), "\r\n")
	return nil
}

// BookPath returns the path of the book.
func (f BookFlags) BookPath() (string, error) {
	if f.Book != "" {
		return f.Book, nil
	}
	folder, err := os.UserConfigDir()
	if err != nil {
		return "", Refusal("Name one with --book", "there is no data folder for the book: %v", err)
	}
	return filepath.Join(folder, "tenthpoint", "house.book"), nil
}

// RatesFolder returns the folder of the elevator's own rates; empty when it is unknown.
func (f BookFlags) RatesFolder() string {
	if f.Schedules != "" {
		return f.Schedules
	}
	path, err := f.BookPath()
	if err != nil {
		return ""
	}
	return ratefiles.RatesBeside(path)
}

// ReadRates are the editions to settle under, for a book or, with an empty path,
// for none.
func (f RatesFlags) ReadRates(book string) (*rates.Set, error) {
	folder := f.Schedules
	switch {
	case folder != "":
		if _, err := os.Stat(folder); err != nil {
			return nil, Refusal("Check --schedules, or TENTHPOINT_SCHEDULES", "there is no folder of rates %s", folder)
		}
	case book != "":
		folder = ratefiles.RatesBeside(book)
	}
	return ratefiles.ReadRates(folder)
}

// Session is a desk at an open book, for one command.
type Session struct {
	*scalehouse.Desk
	*Terminal
	File engines.Book
}

// How a command opens its book.
var (
	ReadOnly  = book.Options{ReadOnly: true}
	ReadWrite = book.Options{}
	CreateNew = book.Options{Create: true}
	ReadBins  = book.Options{ReadOnly: true, Bins: true} // books of old programs do not keep what lies in the bins
)

// WithBook opens the book for one command and closes it after.
func (f BookFlags) WithBook(t *Terminal, how book.Options, who string, act func(*Session) error) (err error) {
	path, err := f.BookPath()
	if err != nil {
		return err
	}
	rules, err := f.readRules(t, path, how)
	if err != nil {
		return err
	}
	how.AnyPlace = f.AnyPlace
	book, err := t.open(path, how)
	if err != nil {
		return err
	}
	defer func() {
		if closed := book.Close(); err == nil {
			err = closed
		}
	}()
	clock, err := engines.Clock(t, book, t.Clock)
	if err != nil {
		return err
	}
	d, err := scalehouse.Open(t, book, scalehouse.Options{Name: "terminal", Computer: t.Computer, Key: ComputerKey(t), Rates: rules.rates, Charts: rules.charts, Laws: rules.laws, Clock: clock, Place: t.Place})
	if err != nil {
		return err
	}
	if err := signIn(d, who); err != nil {
		return err
	}
	if err := t.provePIN(d, how); err != nil {
		return err
	}
	if err := t.answerClock(d, how); err != nil {
		return err
	}
	return named(d, act(&Session{d, t, book}))
}

// ComputerKey is the key of this computer; zero where it has none. One that cannot be read stops
// nothing: what is issued is unsigned and says so.
func ComputerKey(t *Terminal) signing.Key {
	path, err := keyfile.Path()
	if err != nil {
		return signing.Key{} // no settings, no key
	}
	k, err := keyfile.Read(path)
	if err != nil {
		Warn(t, err)
	}
	return k
}

// MakeComputerKey makes the key of this computer where it has none. That it could not be made stops
// nothing.
func MakeComputerKey(t *Terminal) {
	if _, _, err := keyfile.MakeOwn(); err != nil {
		Warn(t, err)
	}
}

// rules are the elevator's own rates, charts and rules of law.
type rules struct {
	rates  *rates.Set
	charts *chart.Set
	laws   *law.Set
}

// readRules reads the rules beside a book. A mistake in them stops what settles or tests, since
// nothing may be settled under others in their place; commands that only read the book continue
// without them, with a warning.
func (f BookFlags) readRules(t *Terminal, path string, how book.Options) (rules, error) {
	set, ratesErr := f.ReadRates(path)
	charts, chartsErr := f.ReadCharts(path)
	laws, lawsErr := ratefiles.ReadLaws(f.Folder(path))
	wrong := errors.Join(ratesErr, chartsErr, lawsErr)
	if wrong == nil || !how.ReadOnly {
		return rules{set, charts, laws}, wrong
	}
	Warn(t, wrong)
	if ratesErr != nil {
		set, _ = rates.NewSet()
	}
	if chartsErr != nil {
		charts, _ = chart.NewSet()
	}
	return rules{set, charts, laws}, nil
}

// Warn prints an error that stops nothing.
func Warn(t *Terminal, wrong error) {
	for _, c := range Complaints(wrong) {
		fmt.Fprintln(t.Stderr, t.Printer.Word("note:"), Sentence(c.In(t.Printer).What))
	}
}

// answerClock records the reason for the clock's time, where one was given.
func (t *Terminal) answerClock(d *scalehouse.Desk, how book.Options) error {
	if t.ClockAnswer == "" || how.ReadOnly {
		return nil
	}
	return scalehouse.AnswerClock(t, d, t.ClockAnswer)
}

// open opens a book. One that is too old for reading is migrated first, as any command that writes
// would do; the copy made of it is named.
func (t *Terminal) open(path string, how book.Options) (engines.Book, error) {
	kept, err := engines.Open(path, how)
	if !errors.Is(err, book.ErrOld) {
		return kept, err
	}
	old, failed := engines.Open(path, book.Options{AnyPlace: how.AnyPlace})
	if failed != nil {
		return nil, failed
	}
	if err := old.Close(); err != nil {
		return nil, err
	}
	if !place.OnServer(path) {
		fmt.Fprintf(t.Stderr, "note: The book was brought up to date. As it was it lies beside it, as %s.before-....\n", filepath.Base(path))
	}
	return engines.Open(path, how)
}

// provePIN takes the PIN of whoever acts, where one is locked by it: as it was given, or asked of who
// sits there.
func (t *Terminal) provePIN(d *scalehouse.Desk, how book.Options) (err error) {
	name, typed := d.Who().Name, t.PIN
	if how.ReadOnly || !scalehouse.HasPIN(d, name) {
		return nil
	}
	if typed == "" && t.Typing && scalehouse.AsksPIN(d) {
		if typed, err = t.Secret(message.New("PIN of %v: ", name)); err != nil {
			return err
		}
	}
	if typed == "" {
		return nil // an act that asks for it says so
	}
	return scalehouse.Prove(t, d, name, typed)
}

// named adds to an error how to name the person acting, when nobody was named.
func named(d *scalehouse.Desk, err error) error {
	if errors.Is(err, message.ClockStepped) {
		return asked(err)
	}
	if errors.As(err, new(pin.Asked)) {
		return errors.Join(err, Refusal("Give it by --pin-file or TENTHPOINT_PIN", "nothing more was written"))
	}
	if err == nil || d.Who().Name != "" || !errors.Is(err, message.NotSignedIn) {
		return err
	}
	return Refusal("Say who acts: --who \"Full Name\", or TENTHPOINT_WHO", "nobody is signed in")
}

// asked adds to an error how to answer about the clock.
func asked(err error) error {
	return errors.Join(err, Refusal("To go on as it is, say why: --clock \"the battery was replaced\"", "nothing was written"))
}

// signIn signs in who was named, or the weigher of the set-up. Without either
// nobody is signed in, which only reading allows.
func signIn(d *scalehouse.Desk, who string) error {
	if who == "" {
		who = d.Profile().Weigher
	}
	if who == "" {
		return nil
	}
	return d.SignIn(who)
}

// ReadCharts are the moisture charts in use with a book or, with an empty path,
// with none.
func (f RatesFlags) ReadCharts(book string) (*chart.Set, error) {
	return ratefiles.ReadCharts(f.Folder(book))
}

// Folder returns the folder of the elevator's rates, charts and rules of law.
func (f RatesFlags) Folder(book string) string {
	if f.Schedules == "" && book != "" {
		return ratefiles.RatesBeside(book)
	}
	return f.Schedules
}
