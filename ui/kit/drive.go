package kit

import "fyne.io/fyne/v2"

// Press sends keys to whatever has the keyboard, one after another, as a
// window does. Tests walk a screen with it.
func (s *Stage) Press(keys ...fyne.KeyName) {
	for _, key := range keys {
		ev := &fyne.KeyEvent{Name: key}
		focused := s.canvas.Focused()
		tabbable, takesTab := focused.(fyne.Tabbable)
		switch {
		case key == fyne.KeyTab && !(takesTab && tabbable.AcceptsTab()):
			s.nextInTree()
		case focused != nil:
			focused.TypedKey(ev)
		case s.canvas.OnTypedKey() != nil:
			s.canvas.OnTypedKey()(ev)
		}
	}
}

// nextInTree is what a window does with Tab that no widget takes.
func (s *Stage) nextInTree() {
	if c, ok := s.canvas.(interface{ FocusNext() }); ok {
		c.FocusNext()
	}
}

// Write types letters into whatever has the keyboard.
func (s *Stage) Write(letters string) {
	for _, letter := range letters {
		if focused := s.canvas.Focused(); focused != nil {
			focused.TypedRune(letter)
		}
	}
}

// Chord presses a key with a modifier, which a window looks up in the menu. It
// answers whether a command has that key.
func (s *Stage) Chord(key Key) bool {
	command, owned := s.commands.forKey(key)
	if owned {
		s.commands.Run(command.ID)
	}
	return owned
}
