package widgets

import (
	"strings"
	"tenthpoint/ui/model"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// MainMenu builds the menu bar, in the order menus first appear in the table. A group that names no
// menu is a menu of its own; the others are submenus of the menu they name. Every key with a
// modifier works through it.
func (c *Commands) MainMenu() *fyne.MainMenu {
	c.items = map[string][]*fyne.MenuItem{}
	c.menu = fyne.NewMainMenu()
	b := menuBar{bar: c.menu, menus: map[string]*fyne.Menu{}}
	for _, command := range c.list {
		if command.Group == "" {
			continue
		}
		menu := b.menu(command)
		if command.Break && len(menu.Items) > 0 {
			menu.Items = append(menu.Items, fyne.NewMenuItemSeparator())
		}
		menu.Items = append(menu.Items, c.menuItem(command))
	}
	return c.menu
}

// menuBar is the bar while it is built.
type menuBar struct {
	bar   *fyne.MainMenu
	menus map[string]*fyne.Menu // by the way to them: "House", "House/Rates"
}

// menu returns the menu that lists a command, made on first use.
func (b menuBar) menu(command Command) *fyne.Menu {
	if command.Menu == "" || command.Menu == command.Group {
		return b.onBar(command.Group)
	}
	way := command.Menu + "/" + command.Group
	if b.menus[way] == nil {
		b.menus[way] = fyne.NewMenu(command.Group)
		within := fyne.NewMenuItem(command.Group, nil)
		within.ChildMenu = b.menus[way]
		parent := b.onBar(command.Menu)
		parent.Items = append(parent.Items, within)
	}
	return b.menus[way]
}

func (b menuBar) onBar(title string) *fyne.Menu {
	if b.menus[title] == nil {
		b.menus[title] = fyne.NewMenu(title)
		b.bar.Items = append(b.bar.Items, b.menus[title])
	}
	return b.menus[title]
}

func (c *Commands) menuItem(command Command) *fyne.MenuItem {
	item := fyne.NewMenuItem(command.Title, func() { c.runChord(command) })
	item.Icon = command.Icon
	item.IsQuit = command.Quit
	item.Disabled = !command.enabled()
	if key, ok := menuKey(command); ok {
		item.Shortcut = key.shortcut()
	}
	c.items[command.ID] = append(c.items[command.ID], item)
	return item
}

// menuKey is the key a menu item shows: the chord, which fires from the menu,
// or else the first bare key, which is shown there and fires from TakeKey.
func menuKey(command Command) (Key, bool) {
	for _, key := range command.Keys {
		if key.Mod != 0 {
			return key, true
		}
	}
	if len(command.Keys) > 0 {
		return command.Keys[0], true
	}
	return Key{}, false
}

// Button makes a button for a command. It is grey while the command makes no sense, as of the last
// Refresh. An unknown id panics: that is a programming error.
func (c *Commands) Button(id string) *Button {
	command, ok := c.Find(id)
	if !ok {
		panic("kit: no command " + id)
	}
	b := NewButton(command.Title, func() { c.Run(id) })
	b.Icon, b.Destroys = command.Icon, command.Destroys
	if len(command.Keys) > 0 {
		b.Key = command.Keys[0].In(c.words)
	}
	b.setEnabled(command.enabled())
	c.buttons[id] = append(c.buttons[id], b)
	return b
}

// Refresh asks every command again whether it makes sense and greys menu items
// and buttons to match. Run calls it; a view calls it when facts change.
func (c *Commands) Refresh() {
	menuChanged := false
	for _, command := range c.list {
		enabled := command.enabled()
		for _, b := range c.buttons[command.ID] {
			b.setEnabled(enabled)
		}
		for _, item := range c.items[command.ID] {
			menuChanged = menuChanged || item.Disabled == enabled
			item.Disabled = !enabled
		}
	}
	if menuChanged {
		c.menu.Refresh()
	}
}

// offerMenu shows a menu at a place of the window: what can be done now on the screen in front, then
// some items of its own.
func (s *focusStop) offerMenu(at fyne.Position, own ...*fyne.MenuItem) {
	if s.order == nil {
		return
	}
	items := s.order.ui.commands.offered()
	if len(items) > 0 && len(own) > 0 {
		items = append(items, fyne.NewMenuItemSeparator())
	}
	widget.ShowPopUpMenuAtPosition(fyne.NewMenu("", append(items, own...)...), s.order.ui.canvas, at)
}

// offered are the commands of the place in front that make sense now.
func (c *Commands) offered() []*fyne.MenuItem {
	if c == nil || c.BoxOpen() {
		return nil
	}
	var items []*fyne.MenuItem
	for _, command := range c.list {
		if command.Place != "" && command.Place == c.here() && command.enabled() {
			item := fyne.NewMenuItem(command.Title, func() { c.Run(command.ID) })
			item.Icon = command.Icon
			items = append(items, item)
		}
	}
	return items
}

// HelpRow is one line of the help sheet.
type HelpRow struct{ Group, Title, Keys string }

// HelpRows lists every command that has a key, in table order.
func (c *Commands) HelpRows() []HelpRow {
	var rows []HelpRow
	for _, command := range c.list {
		if len(command.Keys) == 0 {
			continue
		}
		var keys []string
		for _, key := range command.Keys {
			keys = append(keys, key.In(c.words))
		}
		rows = append(rows, HelpRow{Group: command.Group, Title: command.Title, Keys: strings.Join(keys, ", ")})
	}
	return rows
}

// tableMenu is what a table offers besides its rows: its text to be copied, and at a right click what
// can be done with the row.
type tableMenu struct {
	table    *Table
	offering bool // a click asks what can be done, and opens nothing
}

// TappedSecondary chooses the row under the pointer and offers what can be done with it.
func (m *tableMenu) TappedSecondary(ev *fyne.PointEvent) {
	m.offering = true
	m.table.Table.Tapped(ev)
	m.offering = false
	words := m.table.words()
	m.table.offerMenu(ev.AbsolutePosition,
		fyne.NewMenuItem(words.CopyRow, func() { m.copyRow(fyne.CurrentApp().Clipboard()) }),
		fyne.NewMenuItem(words.CopyAll, func() { m.copyAll(fyne.CurrentApp().Clipboard()) }))
}

// TypedShortcut copies the chosen row. Select all copies the table: there is nothing else to do with
// all of it.
func (m *tableMenu) TypedShortcut(s fyne.Shortcut) {
	switch s := s.(type) {
	case *fyne.ShortcutCopy:
		m.copyRow(s.Clipboard)
	case *fyne.ShortcutSelectAll:
		m.copyAll(fyne.CurrentApp().Clipboard())
	}
}

func (m *tableMenu) copyRow(to fyne.Clipboard) {
	if m.table.rows.Has(m.table.rows.Chosen) {
		to.SetContent(model.TabSeparated(nil, m.table.rows.Rows[m.table.rows.Chosen:m.table.rows.Chosen+1]))
	}
}

func (m *tableMenu) copyAll(to fyne.Clipboard) {
	to.SetContent(model.TabSeparated(m.table.fitted.columns, m.table.rows.Rows))
}
