package widgets

import (
	"errors"
	"fmt"

	"fyne.io/fyne/v2"
)

// Command is an action of the desk. It is defined once and feeds the menu, the F-keys, the buttons,
// the help sheet and the tests.
type Command struct {
	ID    string // how code asks for it: "load.settle"
	Title string // the label: "Settle"
	Group string // the area it belongs to, and the menu that lists it; empty keeps it out of the menu
	Menu  string // the menu on the bar that holds the group; empty is the group itself
	Keys  []Key  // any bare keys, and at most one with a modifier
	Icon  fyne.Resource
	// Place is the screen it works on; empty works everywhere. Commands of
	// different places may share a key.
	Place string

	// EnabledWhen reports whether the command is enabled; nil means always.
	EnabledWhen func() bool
	// WhyNot returns the message for when it is not; it may be nil.
	WhyNot func() string
	// ModalSafe lets it through while a dialog is open.
	ModalSafe bool
	// Break draws a line above it in its menu. Quit marks the one that ends
	// the program, so that no second one is added by the platform.
	Break, Quit bool
	// Destroys marks an act that takes something away; its button looks different.
	Destroys bool

	Do func()
}

// enabled calls EnabledWhen. It is called when acting, because a disabled menu item's shortcut
// still fires.
func (c Command) enabled() bool { return c.EnabledWhen == nil || c.EnabledWhen() }

// Outcome is the result of running a command.
type Outcome int

// The outcomes of Run. Only Ran means that the command's Do was called.
const (
	Ran       Outcome = iota
	NotNow            // EnabledWhen returned false
	BehindBox         // a dialog is open and the command is not modal-safe
	NoSuch            // no command has this id
)

// Commands is the one table of commands of a window.
type Commands struct {
	// OnRefused is called with a command that a person asked for and that did not run, so that the
	// status line can say why.
	OnRefused func(Command, Outcome)
	// At returns the place in front; nil when there are no places.
	At func() string

	words   Words
	list    []Command
	byID    map[string]int
	buttons map[string][]*Button
	items   map[string][]*fyne.MenuItem
	menu    *fyne.MainMenu
	boxes   int // dialogs open now
}

// NewCommands makes the table of a window that speaks some words. It reports every fault at once: an id, a key or
// a title missing or used twice, a key no command can have, nothing to do.
func NewCommands(words Words, list ...Command) (*Commands, error) {
	if err := checkCommands(list); err != nil {
		return nil, err
	}
	c := &Commands{
		words: words, list: list, byID: map[string]int{},
		buttons: map[string][]*Button{}, items: map[string][]*fyne.MenuItem{},
	}
	for i, command := range list {
		c.byID[command.ID] = i
	}
	return c, nil
}

func checkCommands(list []Command) error {
	var faults []error
	fault := func(format string, args ...any) { faults = append(faults, fmt.Errorf(format, args...)) }
	ids, keys := map[string]bool{}, map[Key][]Command{}
	for i, c := range list {
		if c.ID == "" {
			fault("command %d (%q) has no id: give it one", i+1, c.Title)
		}
		if ids[c.ID] {
			fault("command id %q is used twice: rename one", c.ID)
		}
		ids[c.ID] = true
		if c.Title == "" {
			fault("command %q has no title: people must be able to read it", c.ID)
		}
		if c.Do == nil {
			fault("command %q does nothing: give it Do", c.ID)
		}
		chords := 0
		for _, key := range c.Keys {
			if why := key.fault(); why != "" {
				fault("command %q cannot have the key %s: %s", c.ID, key, why)
			}
			for _, owner := range keys[key] {
				if clash(owner, c) {
					fault("the key %s belongs to both %q and %q: change one", key, owner.ID, c.ID)
				}
			}
			keys[key] = append(keys[key], c)
			if key.Mod != 0 {
				chords++
			}
		}
		if chords > 1 {
			fault("command %q has %d keys with a modifier: a menu item carries one", c.ID, chords)
		}
	}
	return errors.Join(faults...)
}

// List returns the commands in the order they were defined.
func (c *Commands) List() []Command { return append([]Command(nil), c.list...) }

// Find returns the command with an id.
func (c *Commands) Find(id string) (Command, bool) {
	i, ok := c.byID[id]
	if !ok {
		return Command{}, false
	}
	return c.list[i], true
}

// Run runs the command with an id, unless a dialog is open or the command is disabled. Menus, keys
// and buttons all come here.
func (c *Commands) Run(id string) Outcome {
	i, ok := c.byID[id]
	if !ok {
		return NoSuch
	}
	command := c.list[i]
	if c.boxes > 0 && !command.ModalSafe {
		return c.refuse(command, BehindBox)
	}
	if !command.enabled() {
		return c.refuse(command, NotNow)
	}
	command.Do()
	c.Refresh()
	return Ran
}

func (c *Commands) refuse(command Command, why Outcome) Outcome {
	if c.OnRefused != nil {
		c.OnRefused(command, why)
	}
	return why
}

// TakeKey offers a key pressed without a modifier. It reports whether a command owns the key; an
// owned key is used up even when the command refused.
func (c *Commands) TakeKey(ev *fyne.KeyEvent) bool {
	command, owned := c.forKey(Bare(ev.Name))
	if owned {
		c.Run(command.ID)
	}
	return owned
}

// BoxOpened notes that a dialog is open, and returns the function to call when it closes. Calling
// that twice counts once.
func (c *Commands) BoxOpened() (closed func()) {
	c.boxes++
	gone := false
	return func() {
		if !gone {
			gone = true
			c.boxes--
		}
	}
}

// BoxOpen reports whether a dialog is open.
func (c *Commands) BoxOpen() bool { return c.boxes > 0 }

// Screens share keys: what Ctrl+S does depends on the screen in front. All commands are in one
// table and one menu, so each names its Place, and of those with the same key the one whose place
// is in front runs.

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

// runChord runs a menu item's shortcut. A window looks a chord up in the menu and takes the first
// item that has it, enabled or not, which may belong to another place.
func (c *Commands) runChord(command Command) {
	if key, ok := menuKey(command); ok && command.Place != "" {
		command, _ = c.forKey(key)
	}
	c.Run(command.ID)
}

// clash reports whether two commands that have one key could both be meant.
func clash(a, b Command) bool { return a.Place == "" || b.Place == "" || a.Place == b.Place }
