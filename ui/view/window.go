package view

import (
	"time"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
	"tenthpoint/ui/present"
)

// Look is how the window is drawn.
type Look struct {
	Dark  bool
	Scale kit.TextScale
}

// Window is the desk's window.
type Window struct {
	frame    *present.Frame
	window   fyne.Window
	settings func(fyne.Theme) // puts a theme in force
	look     Look
	runner   kit.Runner
	commands *kit.Commands
	stage    *kit.Stage
	rows     []screenRow
	screens  []Screen // made from the rows
	current  int
	before   int // the screen to go back to

	ends   []func() // end what is looked at again and again
	rail   *rail
	status *kit.StatusLine
	clock  *label
	work   *kit.WorkBar
	body   *fyne.Container
}

var _ present.Window = (*Window)(nil)

// Options are what a window needs besides its frame.
type Options struct {
	Window fyne.Window
	Runner kit.Runner
	Look   Look
	// SetTheme puts a theme in force for the whole program.
	SetTheme func(fyne.Theme)
}

// Open fills a window with the desk, the screens in the order of their rows. It is shown by whoever made it.
func Open(frame *present.Frame, rows []screenRow, o Options) (*Window, error) {
	w := &Window{frame: frame, rows: rows, window: o.Window, runner: o.Runner, look: o.Look, settings: o.SetTheme}
	if w.look.Scale == 0 {
		w.look.Scale = kit.TextOrdinary
	}
	frame.Attach(w)
	frame.Speak = w.speak
	return w, w.furnish()
}

// furnish makes all that the window shows.
func (w *Window) furnish() error {
	w.status, w.work, w.clock, w.body = kit.NewStatusLine(), kit.NewWorkBar(), newLabel("", quiet), container.NewStack()
	w.screens, w.before = nil, 0
	for _, row := range w.rows {
		w.screens = append(w.screens, row.open(w.frame))
	}
	commands, err := kit.NewCommands(w.table()...)
	if err != nil {
		return err
	}
	w.commands = commands
	commands.OnRefused = w.refused
	commands.At = w.place
	w.stage = kit.NewStage(w.window.Canvas(), commands)
	w.rail = newRail(w)
	w.layOut()
	w.window.SetMainMenu(commands.MainMenu())
	w.begin()
	return nil
}

// speak makes the window anew in another language, with the same screen in front.
func (w *Window) speak(language string) error {
	if err := UseLanguage(language); err != nil {
		return err
	}
	for _, end := range w.ends {
		end()
	}
	w.ends = nil
	front := w.place()
	if err := w.furnish(); err != nil {
		return err
	}
	w.Go(front)
	return nil
}

// layOut builds every screen and puts rail, body and status line in place.
func (w *Window) layOut() {
	for _, s := range w.screens {
		content := s.Build(w)
		content.Hide()
		w.body.Add(content)
	}
	clock := container.NewStack(newGround(kit.ColorPlainGround), container.New(margin{}, w.clock))
	foot := container.NewBorder(nil, nil, nil, container.NewHBox(w.work, clock), w.status)
	content := container.NewBorder(nil, foot, w.rail.content, nil, container.New(margin{}, w.body))
	w.window.SetContent(w.stage.Wrap(content))
	w.window.SetPadded(false)
}

// begin shows the first screen: the yard, or in a new book the set-up.
func (w *Window) begin() {
	w.current = -1
	if w.frame.IsNew() {
		w.Go("setup")
		w.frame.Drafts().SayBack()
		return
	}
	w.Go("yard")
	w.frame.SignInIfAlone()
	if w.frame.Desk.Who().Name != "" {
		w.frame.Drafts().SayBack()
	}
	w.ends = append(w.ends, w.runner.Every(30*time.Second, w.tick))
	// A scale may be linked, or a simulated one stand in, while the desk is open.
	w.ends = append(w.ends, w.runner.Every(scalePause, w.watchScale), w.yard().EndWait)
}

// scalePause is how often the scale is looked at.
const scalePause = 250 * time.Millisecond

// tick lets the clock go on: how long trucks have waited.
func (w *Window) tick() {
	w.yard().Refresh()
	w.rail.show()
	w.clock.say(w.frame.Clock())
}

// watchScale shows what stands on the scale, and ends a wait for it in vain.
func (w *Window) watchScale() {
	w.rail.showLive()
	w.yard().WatchScale()
}

// Stage is what the widgets of the window share.
func (w *Window) Stage() *kit.Stage { return w.stage }

// Runner runs slow work.
func (w *Window) Runner() kit.Runner { return w.runner }

// Say puts the result of an act on the status line. Nothing to say leaves the
// hint of the screen.
func (w *Window) Say(state model.State, sentence string) {
	if sentence == "" {
		state, sentence = model.Plain, w.hint()
	}
	w.status.Say(state, begun(sentence))
}

// begun is a sentence with the capital it begins with. Many are made to stand in
// the middle of another.
func begun(sentence string) string {
	if sentence == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(sentence)
	return string(unicode.ToUpper(first)) + sentence[size:]
}

// hint says what keys carry the work on this screen.
func (w *Window) hint() string {
	if w.current < 0 {
		return ""
	}
	if s, ok := w.screens[w.current].(interface{ Hint() string }); ok {
		return s.Hint()
	}
	return present.Say("F1 helps, Ctrl+F1 shows all keys, Escape goes back to the yard.")
}

// Redraw shows the facts as they now are.
func (w *Window) Redraw() {
	w.rail.show()
	w.clock.say(w.frame.Clock())
	if w.current >= 0 {
		w.screens[w.current].Refresh()
	}
	w.commands.Refresh()
	w.window.SetTitle(w.title())
}

func (w *Window) title() string { return "Tenthpoint - " + w.frame.Business() }

// Go brings a screen to the front.
func (w *Window) Go(id string) {
	for i, row := range w.rows {
		if row.id != id {
			continue
		}
		if w.current >= 0 && w.current != i {
			w.before = w.current
			w.body.Objects[w.current].Hide()
			w.yard().EndWait() // a weight is only taken while its load is in sight
		}
		w.current = i
		w.body.Objects[i].Show()
		if w.status.State() == model.Plain {
			w.Say(model.Plain, "")
		}
		w.Redraw()
		w.screens[i].Show()
		return
	}
}

// goBack returns to the screen before.
func (w *Window) goBack() { w.Go(w.rows[w.before].id) }

// place is the screen in front, by its id.
func (w *Window) place() string {
	if w.current < 0 {
		return ""
	}
	return w.rows[w.current].id
}

// isFront reports whether a screen is in front.
func (w *Window) isFront(i int) bool { return w.current == i }

// Run does slow work away from the window. A job with a title shows its bar,
// with the button that stops it.
func (w *Window) Run(job model.Job) {
	then := job.Done
	job.Done = func(err error) {
		if job.Title != "" {
			w.work.Finish()
		}
		if then != nil {
			then(err)
		}
		w.Redraw()
	}
	if job.Title == "" {
		w.runner.Run(job)
		return
	}
	job.Progress = w.work.Progress
	var stop func()
	w.work.Start(job.Title, func() { stop() })
	stop = w.runner.Run(job)
}

// refused says why a command did not run.
func (w *Window) refused(c kit.Command, why kit.Outcome) {
	if why == kit.NotNow && c.WhyNot != nil {
		if reason := c.WhyNot(); reason != "" {
			w.Say(model.Stop, reason)
		}
	}
}
