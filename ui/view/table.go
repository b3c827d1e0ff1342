package view

import (
	"fyne.io/fyne/v2"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/model"
	"tenthpoint/ui/present"
)

// table is the one table of commands: the screens by their keys, what every
// screen can do, and what belongs to the desk itself.
func (w *Window) table() []kit.Command {
	var list []kit.Command
	for i, s := range w.screens {
		for _, act := range s.Acts() {
			list = append(list, w.onScreen(i, act))
		}
	}
	for _, row := range w.rows {
		list = append(list, kit.Command{
			ID: "go." + row.id, Title: row.name(), Group: present.Say("Go to"), Keys: []kit.Key{row.key},
			EnabledWhen: func() bool { return row.id == "setup" || row.id == "keys" || !w.frame.IsNew() },
			WhyNot:      func() string { return present.Say("Set the elevator up first.") },
			Do:          func() { w.turnTo(row.id) },
		})
	}
	return append(list, w.ownCommands()...)
}

// onScreen puts an act in the menu of its screen and makes it work only while the
// screen is in front, unless it works everywhere.
func (w *Window) onScreen(i int, act Act) kit.Command {
	c := act.Command
	c.Menu = present.Say(w.rows[i].menu)
	if act.Everywhere {
		return c
	}
	c.Place = w.rows[i].id
	enabled, why := c.EnabledWhen, c.WhyNot
	c.EnabledWhen = func() bool { return w.isFront(i) && (enabled == nil || enabled()) }
	c.WhyNot = func() string {
		if !w.isFront(i) {
			return present.Say("%s belongs to the screen %s.", c.Title, w.rows[i].name())
		}
		if why != nil {
			return why()
		}
		return ""
	}
	return c
}

// ownCommands belong to no screen.
func (w *Window) ownCommands() []kit.Command {
	group := present.Say("Desk")
	return []kit.Command{
		{ID: "desk.back", Title: present.Say("Back"), Group: group, Keys: []kit.Key{kit.Bare(fyne.KeyEscape)}, Do: w.escape},
		{ID: "desk.signin", Title: present.Say("Sign in"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyL)}, Do: w.frame.SignIn},
		{ID: "desk.full", Title: present.Say("Full screen"), Group: group, Keys: []kit.Key{kit.Bare(fyne.KeyF11)}, Break: true, ModalSafe: true, Do: func() { w.window.SetFullScreen(!w.window.FullScreen()) }},
		{ID: "desk.dark", Title: present.Say("Light or dark"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyD)}, ModalSafe: true, Do: w.turnLight},
		{ID: "desk.size", Title: present.Say("Text size"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyPeriod)}, ModalSafe: true, Do: w.turnSize},
		{ID: "desk.halt", Title: present.Say("Stop the work under way"), Group: group, Keys: []kit.Key{kit.CtrlShift(fyne.KeyK)}, ModalSafe: true,
			EnabledWhen: w.work.Visible,
			WhyNot:      func() string { return present.Say("Nothing is under way.") },
			Do:          func() { w.work.Halt().Press() }},
		{ID: "desk.quit", Title: present.Say("Quit"), Group: group, Keys: []kit.Key{kit.Ctrl(fyne.KeyQ)}, Break: true, Quit: true, Do: w.window.Close},
	}
}

// turnTo goes to a screen because a person asked for it: what was said of the
// last act is read by then, and the hint of the screen takes its place.
func (w *Window) turnTo(id string) {
	w.Say(model.Plain, "")
	w.Go(id)
}

// escape backs out of a screen to the yard.
func (w *Window) escape() {
	if w.current >= 0 && w.rows[w.current].hidden {
		w.goBack()
		return
	}
	if !w.frame.IsNew() {
		w.Go("yard")
	}
}

// turnLight changes between light and dark.
func (w *Window) turnLight() {
	w.look.Dark = !w.look.Dark
	w.settings(w.look.Theme())
}

// turnSize goes on to the next text size, and from the last to the first.
func (w *Window) turnSize() {
	sizes := kit.TextScales()
	next := sizes[0]
	for i, size := range sizes[:len(sizes)-1] {
		if size == w.look.Scale {
			next = sizes[i+1]
		}
	}
	w.look.Scale = next
	w.settings(w.look.Theme())
	// Set once more, the menus have the height of their new letters, and the
	// content the room that is left.
	w.runner.Later(func() { w.window.SetMainMenu(w.window.MainMenu()) })
}

// Theme is the theme of the look.
func (l Look) Theme() fyne.Theme { return kit.NewTheme(l.Dark, l.Scale) }
