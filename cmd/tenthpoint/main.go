// Command tenthpoint is the desk's window. It only connects the book, the rates, the printer and
// the window. This is the only package that imports the app of Fyne, because that import needs
// OpenGL and a C compiler.
package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"os"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"github.com/alecthomas/kong"

	"tenthpoint/internal/book/engines"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/version"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/desktop"
	"tenthpoint/ui/model"
	"tenthpoint/ui/rates"
	"tenthpoint/ui/session"
	"tenthpoint/ui/shell"
)

// flags are the command line flags.
type flags struct {
	File      string  `arg:"" optional:"" name:"book" help:"The book to work in, as a file manager names it."`
	Book      string  `help:"The book to work in: a file, or postgres://USER@HOST/DATABASE. Without it, the one in your data folder." env:"TENTHPOINT_BOOK" placeholder:"PATH"`
	Demo      bool    `help:"Open a fresh book of an invented elevator: example - not for trade."`
	Schedules string  `help:"A folder with the elevator's own rates, *.toml. Without it, the folder \"schedules\" beside the book." env:"TENTHPOINT_SCHEDULES" placeholder:"DIR"`
	Who       string  `help:"Who is at the desk, by full name." env:"TENTHPOINT_WHO" placeholder:"NAME"`
	Dark      bool    `help:"Begin in the dark look."`
	Scale     float32 `help:"Size of the letters: 1, 1.25 or 1.5. Without it they go by the height of the window."`
	AnyPlace  bool    `help:"Write also in a book on a network drive or in a synced folder."`
	Full      bool    `help:"Begin in full screen."`
	Another   bool    `help:"Open another window where one is open on this book already, for a second scale."`
	View      bool    `help:"Also open each printed paper on the screen."`
	Selftest  bool    `help:"Open an invented elevator, weigh a truck from a simulated scale, print its ticket, verify the book, and end."`

	Version kong.VersionFlag `help:"Say which version this is, and of which commit."`
}

func main() {
	var f flags
	kong.Parse(&f, kong.Name("tenthpoint"), kong.Description("The desk of a scale house."), kong.Vars{"version": version.Line("tenthpoint")})
	if err := run(f); err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
}

func run(f flags) error {
	a := app.NewWithID("tenthpoint.desk")
	withoutAnimations(a)
	a.SetIcon(apptheme.AppIcon())
	look := shell.Look{Dark: f.Dark, Scale: apptheme.TextScale(f.Scale)}
	a.Settings().SetTheme(look.Theme())
	p := &program{app: a, flags: f, look: look}
	defer p.close()
	if f.Selftest {
		return p.runSelfTest()
	}
	err := p.openFirst(context.Background())
	if errors.Is(err, errAlreadyOpen) {
		fmt.Println(err)
		return nil
	}
	if err != nil {
		return err
	}
	a.Run()
	return nil
}

// program is one run of the desk.
type program struct {
	app     fyne.App
	flags   flags
	who     string // at the desk when a book is opened
	look    shell.Look
	window  fyne.Window
	frame   *session.Session // of that window
	atEnd   []func() error
	release func() error // gives the book's window free; nil where it was never claimed

	linked     []func() error // ends the link to the scale
	deck       session.Deck   // of a simulated scale
	ratesWrong error          // errors of the elevator's own rates
	keyWrong   error          // why this computer has no key
}

// openFirst opens the first book.
func (p *program) openFirst(ctx context.Context) error {
	p.who = p.flags.Who
	if p.flags.Demo {
		path, err := newDemo(ctx, func(int, int) {})
		if err != nil {
			return err
		}
		return p.openDemo(path)
	}
	path, err := bookPath(cmp.Or(p.flags.File, p.flags.Book))
	if err != nil {
		return err
	}
	if p.release, err = p.claim(path); err != nil {
		return err
	}
	return p.open(ctx, path)
}

// claim makes the window that is about to open the one of its book, unless another is wanted.
func (p *program) claim(path string) (release func() error, err error) {
	if p.flags.Another {
		return nil, nil
	}
	return claimWindow(path, func() { fyne.Do(p.comeForward) })
}

func (p *program) comeForward() {
	if p.window != nil {
		p.window.Show()
		p.window.RequestFocus()
	}
}

// openDemo opens a book of the invented elevator, with its manager at the desk.
func (p *program) openDemo(path string) error {
	p.giveFree()
	if p.flags.Who == "" {
		p.who = demo.Manager
	}
	if err := p.open(context.Background(), path); err != nil {
		return err
	}
	p.frame.OfferTruck()
	return nil
}

// open shows a book in a window of its own; an earlier window closes.
func (p *program) open(ctx context.Context, path string) error {
	d, err := p.openDesk(ctx, path)
	if err != nil {
		return err
	}
	papers := newPrinter(path, p.flags.View)
	frame := session.New(d, papers)
	frame.RatesFolder = p.ratesFolder(path)
	rates.SetRatesWrong(frame, p.ratesWrong)
	here := station{program: p, frame: frame, printer: papers, book: path}
	frame.Station = here
	retrying, stop := context.WithCancel(ctx)
	p.atEnd = append(p.atEnd, func() error { stop(); return nil })
	go papers.retry(retrying)
	unlinked := errors.Join(here.remembered(p.flags.View), here.Relink())
	frame.Files = newExports(path)
	frame.Demo, frame.OpenDemo = newDemo, p.openDemo
	window := p.app.NewWindow("Tenthpoint")
	_, err = shell.Open(frame, desktop.Screens, shell.Options{
		Window: window, Runner: shell.NewBackground(), Look: p.look, SetTheme: p.app.Settings().SetTheme,
	})
	if err != nil {
		return err
	}
	rates.SayRewritten(frame)
	if unlinked != nil { // the desk opens all the same: weights can be typed
		frame.Fail(unlinked)
	}
	if p.keyWrong != nil {
		frame.Notify(model.Warn, frame.Sentence(p.keyWrong))
	}
	if p.ratesWrong != nil {
		frame.Notify(model.Stop, frame.Say("your own rates have mistakes, so nothing can be settled. Ctrl+5 names them."))
	}
	watching, leave := context.WithCancel(ctx)
	p.atEnd = append(p.atEnd, func() error { leave(); return nil })
	go engines.Watch(watching, d.Book(), func() { fyne.Do(frame.Changed) })
	session.CheckClock(frame)
	session.CheckHead(frame)
	p.atEnd = append(p.atEnd, func() error { session.NoteHead(frame); return nil })
	window.Resize(fyne.NewSize(1280, 720))
	window.SetFullScreen(p.flags.Full)
	window.Show()
	if p.window != nil {
		p.window.Close()
	}
	p.window, p.frame = window, frame
	return nil
}

// giveFree lets another start open the book that this window had.
func (p *program) giveFree() {
	if p.release != nil {
		if err := p.release(); err != nil {
			fmt.Fprintln(os.Stderr, "error:", err)
		}
		p.release = nil
	}
}

// close closes what was opened, last first.
func (p *program) close() {
	p.giveFree()
	if err := p.unlink(); err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
	}
	for i := len(p.atEnd) - 1; i >= 0; i-- {
		if err := p.atEnd[i](); err != nil {
			fmt.Fprintln(os.Stderr, "error:", err)
		}
	}
}
