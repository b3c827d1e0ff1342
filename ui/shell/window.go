package shell

import (
	"time"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/widgets"
	"tenthpoint/ui/widgets/status"
)

// Look holds the window's theme settings.
type Look struct {
	Dark  bool
	Scale apptheme.TextScale
}

// Window is the desk's window.
type Window struct {
	Session  *session.Session
	Window   fyne.Window
	settings func(fyne.Theme) // puts a theme in force
	Look     Look
	Runner   Runner
	Commands *widgets.Commands
	UI       *widgets.UIContext
	rows     []ScreenRow
	Screens  []Screen // made from the rows
	Current  int
	before   int // the screen to go back to

	sized bool // somebody chose the text size; else it goes by the height of the window

	ends    []func() // stop the periodic refreshes
	Sidebar *Sidebar
	Alarm   *alarm
	Status  *status.Line
	clock   *Label
	Work    *widgets.WorkBar
	body    *fyne.Container
}

var _ session.Window = (*Window)(nil)

// Options are a window's dependencies besides its session.
type Options struct {
	Window fyne.Window
	Runner Runner
	Look   Look
	// SetTheme sets the theme of the whole program.
	SetTheme func(fyne.Theme)
}

// Open fills a window with the screens in the order of their rows, in the language of the elevator.
// The caller shows it.
func Open(frame *session.Session, rows []ScreenRow, o Options) (*Window, error) {
	w := &Window{Session: frame, rows: rows, Window: o.Window, Runner: o.Runner, Look: o.Look, settings: o.SetTheme}
	if w.sized = w.Look.Scale != 0; !w.sized {
		w.Look.Scale = apptheme.TextOrdinary
	}
	frame.Window = w
	frame.SetLanguage = w.setLanguage
	if err := w.useLanguage(frame.Desk.Profile().Language); err != nil {
		return nil, err
	}
	return w, w.build()
}

// build makes all that the window shows.
func (w *Window) build() error {
	words := wordsIn(w.Session.Language)
	w.Status, w.Work, w.clock, w.body = status.NewLine(words.Status), widgets.NewWorkBar(words), NewLabel("", Quiet), container.NewStack()
	w.Screens, w.before = nil, 0
	for _, row := range w.rows {
		w.Screens = append(w.Screens, row.Open(w.Session))
	}
	commands, err := widgets.NewCommands(words, w.table()...)
	if err != nil {
		return err
	}
	w.Commands = commands
	commands.OnRefused = w.refused
	commands.At = w.Front
	w.UI = widgets.NewUIContext(w.Window.Canvas(), commands, words)
	w.UI.OnScan(w.Session.Scans.Marks(), w.Session.Scans.Read)
	w.Sidebar = newSidebar(w)
	w.layOut()
	w.Window.SetMainMenu(commands.MainMenu())
	w.begin()
	return nil
}

// setLanguage rebuilds the window in another language, with the same screen in front.
func (w *Window) setLanguage(language string) error {
	if err := w.useLanguage(language); err != nil {
		return err
	}
	for _, end := range w.ends {
		end()
	}
	w.ends = nil
	front := w.Front()
	if err := w.build(); err != nil {
		return err
	}
	w.Go(front)
	return nil
}

// layOut builds every screen and puts sidebar, body and status line in place.
func (w *Window) layOut() {
	for _, s := range w.Screens {
		content := s.Build(w)
		content.Hide()
		w.body.Add(content)
	}
	w.clock.Say(w.Session.Clock()) // before it is laid out: nothing gives it room later
	clock := container.NewStack(NewGround(apptheme.ColorPlainGround), container.New(Margin{}, w.clock))
	foot := container.NewBorder(nil, nil, nil, container.NewHBox(w.Work, clock), w.Status)
	w.Alarm = newAlarm(w)
	content := container.NewBorder(w.Alarm.Bar, foot, w.Sidebar.content, nil, container.New(Margin{}, w.body))
	w.Window.SetContent(w.UI.Wrap(container.New(readable{w}, content)))
	w.Window.SetPadded(false)
}

// begin shows the first screen: the yard, or in a new book the set-up.
func (w *Window) begin() {
	w.Current = -1
	w.ends = append(w.ends, w.Runner.Every(alarmPause, w.Alarm.Watch))
	if w.Session.IsNew() {
		w.Go("setup")
		w.Session.Drafts().SayBack()
		return
	}
	w.Go("yard")
	w.Session.SignInIfAlone()
	if w.Session.Desk.Who().Name != "" {
		w.Session.Drafts().SayBack()
	}
	w.ends = append(w.ends, w.Runner.Every(30*time.Second, w.tick))
	// A scale, or a simulated one, may be linked while the window is open.
	w.ends = append(w.ends, w.Runner.Every(scalePause, w.watchScale), w.Yard().EndWait)
}

// scalePause is the interval between scale readings.
const scalePause = 250 * time.Millisecond

// tick refreshes what depends on the clock: how long trucks have waited.
func (w *Window) tick() {
	w.Yard().Refresh()
	w.Sidebar.Show()
	w.clock.Say(w.Session.Clock())
}

// watchScale shows the weight on the scale, and ends a wait for it in vain.
func (w *Window) watchScale() {
	w.Sidebar.showLive()
	w.Yard().WatchScale()
}

// Say shows the result of an act on the status line. An empty sentence restores the hint of the
// screen.
func (w *Window) Say(state model.State, sentence string) {
	if sentence == "" {
		state, sentence = model.Plain, w.hint()
	}
	w.Status.Say(state, begun(sentence))
}

// begun capitalizes a sentence. Many are written to appear in the middle of another.
func begun(sentence string) string {
	if sentence == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(sentence)
	return string(unicode.ToUpper(first)) + sentence[size:]
}

// hint returns the main keys of the screen.
func (w *Window) hint() string {
	if w.Current < 0 {
		return ""
	}
	if s, ok := w.Screens[w.Current].(interface{ Hint() string }); ok {
		return s.Hint()
	}
	return w.Session.Say("F1 helps, Ctrl+F1 shows all keys, Escape goes back to the yard.")
}

// Redraw shows the current facts.
func (w *Window) Redraw() {
	w.Sidebar.Show()
	w.clock.Say(w.Session.Clock())
	if w.Current >= 0 {
		w.Screens[w.Current].Refresh()
	}
	w.Commands.Refresh()
	w.Window.SetTitle(w.title())
}

func (w *Window) title() string { return "Tenthpoint - " + w.Session.Masthead().Business }

// Go brings a screen to the front.
func (w *Window) Go(id string) {
	for i, row := range w.rows {
		if row.ID != id {
			continue
		}
		if w.Current >= 0 && w.Current != i {
			w.before = w.Current
			w.UI.Leave()
			w.body.Objects[w.Current].Hide()
			w.Yard().EndWait() // a weight is only taken while its load is in sight
		}
		w.Current = i
		w.body.Objects[i].Show()
		if w.Status.State() == model.Plain {
			w.Say(model.Plain, "")
		}
		w.Redraw()
		w.Screens[i].Show()
		return
	}
}

// GoBack returns to the screen before.
func (w *Window) GoBack() { w.Go(w.rows[w.before].ID) }

// Front is the screen in front, by its id.
func (w *Window) Front() string {
	if w.Current < 0 {
		return ""
	}
	return w.rows[w.Current].ID
}

// IsFront reports whether a screen is in front.
func (w *Window) IsFront(i int) bool { return w.Current == i }

// Run does slow work away from the window. A job with a title shows its bar,
// with the button that stops it.
func (w *Window) Run(job model.Job) {
	then := job.Done
	job.Done = func(err error) {
		if job.Title != "" {
			w.Work.Finish()
		}
		if then != nil {
			then(err)
		}
		w.Redraw()
	}
	if job.Title == "" {
		w.Runner.Run(job)
		return
	}
	job.Progress = w.Work.Progress
	var stop func()
	w.Work.Start(job.Title, func() { stop() })
	stop = w.Runner.Run(job)
}

// refused says why a command did not run.
func (w *Window) refused(c widgets.Command, why widgets.Outcome) {
	if why == widgets.NotNow && c.WhyNot != nil {
		if reason := c.WhyNot(); reason != "" {
			w.Say(model.Stop, reason)
		}
	}
}
