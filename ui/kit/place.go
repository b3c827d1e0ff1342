package kit

// Screens share keys: what Ctrl+S does is for the screen in front to say. So
// that every command still stands in one table and one menu, a command names
// its Place, and of those with one key the one whose place is in front is
// meant.

// here is the place in front.
func (c *Commands) here() string {
	if c.At == nil {
		return ""
	}
	return c.At()
}

// forKey is the command that a key means now: the one that works everywhere or
// in the place in front, or else the first, which will say why it cannot run.
func (c *Commands) forKey(key Key) (Command, bool) {
	var first *Command
	for i, command := range c.list {
		if !command.has(key) {
			continue
		}
		if command.Place == "" || command.Place == c.here() {
			return command, true
		}
		if first == nil {
			first = &c.list[i]
		}
	}
	if first == nil {
		return Command{}, false
	}
	return *first, true
}

func (c Command) has(key Key) bool {
	for _, own := range c.Keys {
		if own == key {
			return true
		}
	}
	return false
}

// runChord is what a menu item does. A window looks a chord up in the menu and
// takes the first item that has it, grey or not, which may be that of another
// place.
func (c *Commands) runChord(command Command) {
	if key, ok := menuKey(command); ok && command.Place != "" {
		command, _ = c.forKey(key)
	}
	c.Run(command.ID)
}

// clash reports whether two commands that have one key could both be meant.
func clash(a, b Command) bool { return a.Place == "" || b.Place == "" || a.Place == b.Place }
