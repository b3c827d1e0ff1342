package widgets

import (
	"strings"
	"tenthpoint/ui/widgettest"
	"testing"

	"fyne.io/fyne/v2"
)

func TestCommandFaults(t *testing.T) {
	for name, c := range map[string]struct {
		list []Command
		want []string
	}{
		"no id, title or deed": {
			[]Command{{}},
			[]string{"command 1", "has no id", "has no title", "does nothing"}},
		"id twice": {
			[]Command{{ID: "a", Title: "A", Do: nothing}, {ID: "a", Title: "B", Do: nothing}},
			[]string{`command id "a" is used twice`}},
		"key twice": {
			[]Command{{ID: "a", Title: "A", Do: nothing, Keys: []Key{Bare(fyne.KeyF2)}}, {ID: "b", Title: "B", Do: nothing, Keys: []Key{Bare(fyne.KeyF2)}}},
			[]string{`the key F2 belongs to both "a" and "b"`}},
		"bare letter": {
			[]Command{{ID: "a", Title: "A", Do: nothing, Keys: []Key{Bare(fyne.KeyN)}}},
			[]string{"only F-keys and Escape"}},
		"shifted letter": {
			[]Command{{ID: "a", Title: "A", Do: nothing, Keys: []Key{{fyne.KeyN, fyne.KeyModifierShift}}}},
			[]string{"Shift alone"}},
		"two chords": {
			[]Command{{ID: "a", Title: "A", Do: nothing, Keys: []Key{Ctrl(fyne.KeyN), Alt(fyne.KeyN)}}},
			[]string{"2 keys with a modifier"}},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := NewCommands(EnglishWords(), c.list...)
			if err == nil {
				t.Fatal("no fault was found")
			}
			for _, want := range c.want {
				if !strings.Contains(err.Error(), want) {
					t.Errorf("%q is not in the report:\n%v", want, err)
				}
			}
		})
	}
}

// TestEditingKeysAreTaken: Fyne turns these into editing before any menu.
func TestEditingKeysAreTaken(t *testing.T) {
	for _, name := range []fyne.KeyName{fyne.KeyZ, fyne.KeyY, fyne.KeyX, fyne.KeyC, fyne.KeyV, fyne.KeyA} {
		_, err := NewCommands(EnglishWords(), Command{ID: "a", Title: "A", Do: nothing, Keys: []Key{Ctrl(name)}})
		if err == nil || !strings.Contains(err.Error(), "in every text field") {
			t.Errorf("%s was given to a command: %v", name, err)
		}
		if _, err := NewCommands(EnglishWords(), Command{ID: "a", Title: "A", Do: nothing, Keys: []Key{CtrlShift(name)}}); err != nil {
			t.Errorf("%s with Shift is free but was refused: %v", name, err)
		}
	}
}

func (d *deeds) commands() []Command {
	do := func(id string) func() { return func() { d.ran = append(d.ran, id) } }
	return []Command{
		{ID: "new", Title: "New load", Group: "Load", Keys: []Key{Bare(fyne.KeyF2), Ctrl(fyne.KeyN)}, Do: do("new")},
		{ID: "settle", Title: "Settle", Group: "Load", Break: true, Keys: []Key{Bare(fyne.KeyF9)}, EnabledWhen: func() bool { return d.open },
			WhyNot: func() string { return "The tare is missing." }, Do: do("settle")},
		{ID: "back", Title: "Back", Keys: []Key{Bare(fyne.KeyEscape)}, Do: do("back")},
		{ID: "help", Title: "Keys", Group: "Help", Keys: []Key{Bare(fyne.KeyF1)}, ModalSafe: true, Do: do("help")},
	}
}

func (d *deeds) table(t *testing.T) *Commands {
	t.Helper()
	c, err := NewCommands(EnglishWords(), d.commands()...)
	if err != nil {
		t.Fatal(err)
	}
	d.watch(c)
	return c
}

func (d *deeds) watch(c *Commands) {
	c.OnRefused = func(command Command, why Outcome) {
		text := command.ID
		if why == NotNow && command.WhyNot != nil {
			text += ": " + command.WhyNot()
		}
		d.refused = append(d.refused, text)
	}
}

func TestRunAsksAtTheMomentOfActing(t *testing.T) {
	d := &deeds{}
	c := d.table(t)
	widgettest.Equal(t, "settle while it makes no sense", c.Run("settle"), NotNow)
	d.open = true
	widgettest.Equal(t, "settle when it does", c.Run("settle"), Ran)
	widgettest.Equal(t, "an unknown command", c.Run("sell"), NoSuch)
	widgettest.Equal(t, "ran", strings.Join(d.ran, ","), "settle")
	widgettest.Equal(t, "refused", strings.Join(d.refused, ","), "settle: The tare is missing.")
}

func TestDialogsHoldCommandsBack(t *testing.T) {
	d := &deeds{open: true}
	c := d.table(t)
	closed := c.BoxOpened()
	inner := c.BoxOpened()
	widgettest.Equal(t, "behind two boxes", c.Run("settle"), BehindBox)
	widgettest.Equal(t, "modal-safe", c.Run("help"), Ran)
	inner()
	inner() // counts once
	widgettest.Equal(t, "behind one box", c.Run("settle"), BehindBox)
	widgettest.Equal(t, "open", c.BoxOpen(), true)
	closed()
	widgettest.Equal(t, "open", c.BoxOpen(), false)
	widgettest.Equal(t, "in front again", c.Run("settle"), Ran)
}

func TestTakeKey(t *testing.T) {
	d := &deeds{}
	c := d.table(t)
	for _, k := range []struct {
		name  fyne.KeyName
		taken bool
	}{
		{fyne.KeyF2, true}, {fyne.KeyF9, true}, {fyne.KeyEscape, true}, {fyne.KeyF3, false}, {fyne.KeyN, false}, {fyne.KeyReturn, false},
	} {
		widgettest.Equal(t, string(k.name), c.TakeKey(&fyne.KeyEvent{Name: k.name}), k.taken)
	}
	widgettest.Equal(t, "ran", strings.Join(d.ran, ","), "new,back")
}

func TestMainMenu(t *testing.T) {
	newHouse(t)
	d := &deeds{}
	c := d.table(t)
	menu := c.MainMenu()
	var lines []string
	for _, m := range menu.Items {
		lines = append(lines, m.Label)
		for _, item := range m.Items {
			line := "-" + item.Label
			if k, ok := item.Shortcut.(fyne.KeyboardShortcut); ok {
				line += " " + Key{k.Key(), k.Mod()}.String()
			}
			if item.Disabled {
				line += " grey"
			}
			lines = append(lines, line)
		}
	}
	widgettest.Equal(t, "menu", strings.Join(lines, "\n"), "Load\n-New load Ctrl+N\n-\n-Settle F9 grey\nHelp\n-Keys F1")

	menu.Items[0].Items[2].Action() // a grey item's shortcut still fires
	widgettest.Equal(t, "ran", len(d.ran), 0)
	d.open = true
	c.Refresh()
	widgettest.Equal(t, "grey after the tare came", menu.Items[0].Items[2].Disabled, false)
	menu.Items[0].Items[2].Action()
	widgettest.Equal(t, "ran", strings.Join(d.ran, ","), "settle")
}

// TestMenusWithinMenus: groups that name one menu share it.
func TestMenusWithinMenus(t *testing.T) {
	newHouse(t)
	nothing := func() {}
	c, err := NewCommands(EnglishWords(),
		Command{ID: "a", Title: "Add", Group: "Growers", Menu: "house", Do: nothing},
		Command{ID: "b", Title: "Weigh", Group: "Load", Menu: "Load", Do: nothing},
		Command{ID: "c", Title: "Try", Group: "Rates", Menu: "house", Do: nothing},
		Command{ID: "d", Title: "Change", Group: "Growers", Menu: "house", Break: true, Do: nothing},
	)
	if err != nil {
		t.Fatal(err)
	}
	widgettest.Equal(t, "bar", menuText(c.MainMenu().Items), "house(Growers(Add - Change) Rates(Try)) Load(Weigh)")
}

// menuText is menus in one line, what they hold in brackets.
func menuText(menus []*fyne.Menu) string {
	var out []string
	for _, m := range menus {
		var items []string
		for _, item := range m.Items {
			switch {
			case item.ChildMenu != nil:
				items = append(items, menuText([]*fyne.Menu{item.ChildMenu}))
			case item.IsSeparator:
				items = append(items, "-")
			default:
				items = append(items, item.Label)
			}
		}
		out = append(out, m.Label+"("+strings.Join(items, " ")+")")
	}
	return strings.Join(out, " ")
}

func TestCommandButtons(t *testing.T) {
	newHouse(t)
	d := &deeds{}
	c := d.table(t)
	b := c.Button("settle")
	widgettest.Equal(t, "caption", b.Text+" "+b.Key, "Settle F9")
	widgettest.Equal(t, "grey", b.Disabled(), true)
	b.Press()
	d.open = true
	c.Refresh()
	b.Press()
	widgettest.Equal(t, "ran", strings.Join(d.ran, ","), "settle")
	defer func() {
		if recover() == nil {
			t.Error("a button for an unknown command was made")
		}
	}()
	c.Button("sell")
}

func TestHelpRows(t *testing.T) {
	d := &deeds{}
	rows := d.table(t).HelpRows()
	want := []HelpRow{{"Load", "New load", "F2, Ctrl+N"}, {"Load", "Settle", "F9"}, {"", "Back", "Esc"}, {"Help", "Keys", "F1"}}
	widgettest.Equal(t, "rows", len(rows), len(want))
	for i, row := range rows {
		widgettest.Equal(t, "row", row, want[i])
	}
}

func TestKeyNamesAreWords(t *testing.T) {
	w := EnglishWords()
	w.Shift, w.PageUp = "Maj", "PgPréc"
	widgettest.Equal(t, "key", CtrlShift(fyne.KeyPageUp).In(w), "Ctrl+Maj+PgPréc")
	widgettest.Equal(t, "key", Alt(fyne.KeyRight).In(w), "Alt+Right")
}
