package shell

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/model"
	"tenthpoint/ui/widgets"
)

// table returns all commands: the screens by their keys, the acts of every screen, and the desk's
// own.
func (w *Window) table() []widgets.Command {
	var list []widgets.Command
	for i, s := range w.Screens {
		for _, act := range s.Acts() {
			list = append(list, w.onScreen(i, act))
		}
	}
	for _, row := range w.rows {
		list = append(list, widgets.Command{
			ID: "go." + row.ID, Title: w.Session.Say(row.Title), Group: w.Session.Say("Go to"), Keys: []widgets.Key{row.Key},
			EnabledWhen: func() bool { return row.ID == "setup" || row.ID == "keys" || !w.Session.IsNew() },
			WhyNot:      func() string { return w.Session.Say("Set the elevator up first.") },
			Do:          func() { w.turnTo(row.ID) },
		})
	}
	return append(list, w.ownCommands()...)
}

// onScreen puts an act in the menu of its screen and enables it only while the screen is in front,
// unless it works everywhere.
func (w *Window) onScreen(i int, act Act) widgets.Command {
	c := act.Command
	c.Menu = w.Session.Say(w.rows[i].Menu)
	if act.Everywhere {
		return c
	}
	c.Place = w.rows[i].ID
	enabled, why := c.EnabledWhen, c.WhyNot
	c.EnabledWhen = func() bool { return w.IsFront(i) && (enabled == nil || enabled()) }
	c.WhyNot = func() string {
		if !w.IsFront(i) {
			return w.Session.Say("%s belongs to the screen %s.", c.Title, w.Session.Say(w.rows[i].Title))
		}
		if why != nil {
			return why()
		}
		return ""
	}
	return c
}

// ownCommands belong to no screen.
func (w *Window) ownCommands() []widgets.Command {
	group := w.Session.Say("Desk")
	return []widgets.Command{
		{ID: "desk.back", Title: w.Session.Say("Back"), Group: group, Keys: []widgets.Key{widgets.Bare(fyne.KeyEscape)}, Do: w.escape},
		{ID: "desk.signin", Title: w.Session.Say("Sign in"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyL)}, Do: w.Session.SignIn},
		{ID: "desk.full", Title: w.Session.Say("Full screen"), Group: group, Keys: []widgets.Key{widgets.Bare(fyne.KeyF11)}, Break: true, ModalSafe: true, Do: func() { w.Window.SetFullScreen(!w.Window.FullScreen()) }},
		{ID: "desk.dark", Title: w.Session.Say("Light or dark"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyD)}, ModalSafe: true, Do: w.turnLight},
		{ID: "desk.size", Title: w.Session.Say("Text size"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyPeriod)}, ModalSafe: true, Do: w.turnSize},
		{ID: "desk.halt", Title: w.Session.Say("Stop the work under way"), Group: group, Keys: []widgets.Key{widgets.CtrlShift(fyne.KeyK)}, ModalSafe: true,
			EnabledWhen: w.Work.Visible,
			WhyNot:      func() string { return w.Session.Say("Nothing is under way.") },
			Do:          func() { w.Work.Halt().Press() }},
		{ID: "desk.quit", Title: w.Session.Say("Quit"), Group: group, Keys: []widgets.Key{widgets.Ctrl(fyne.KeyQ)}, Break: true, Quit: true, Do: func() { w.Session.Prints.Quit(w.Window.Close) }},
	}
}

// turnTo opens a screen at a person's request: the message of the last act has been read by then,
// and the hint of the screen replaces it.
func (w *Window) turnTo(id string) {
	w.Say(model.Plain, "")
	w.Go(id)
}

// escape leaves a screen for the yard.
func (w *Window) escape() {
	if w.Current >= 0 && w.rows[w.Current].Hidden {
		w.GoBack()
		return
	}
	if !w.Session.IsNew() {
		w.Go("yard")
	}
}

// turnLight changes between light and dark.
func (w *Window) turnLight() {
	w.Look.Dark = !w.Look.Dark
	w.settings(w.Look.Theme())
}

// turnSize cycles to the next text size.
func (w *Window) turnSize() {
	sizes := apptheme.TextScales()
	next := sizes[0]
	for i, size := range sizes[:len(sizes)-1] {
		if size == w.Look.Scale {
			next = sizes[i+1]
		}
	}
	w.sized = true
	w.setScale(next)
}

// setScale sets the text size.
func (w *Window) setScale(scale apptheme.TextScale) {
	w.Look.Scale = scale
	w.settings(w.Look.Theme())
	// Setting the menu again gives the menus the height of their new letters, and the content the
	// remaining room.
	w.Runner.Later(func() { w.Window.SetMainMenu(w.Window.MainMenu()) })
}

// Theme is the theme of the look.
func (l Look) Theme() fyne.Theme { return apptheme.NewTheme(l.Dark, l.Scale) }
