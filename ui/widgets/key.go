package widgets

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// Key is one key or chord a command answers to. Without a modifier it may be an F-key or Escape:
// letters and digits are for typing.
type Key struct {
	Name fyne.KeyName
	Mod  fyne.KeyModifier
}

// Bare is a key pressed alone, such as fyne.KeyF2.
func Bare(name fyne.KeyName) Key { return Key{Name: name} }

// Ctrl is a key with the platform's command modifier held.
func Ctrl(name fyne.KeyName) Key { return Key{Name: name, Mod: fyne.KeyModifierShortcutDefault} }

// CtrlShift is a key with the command modifier and Shift held.
func CtrlShift(name fyne.KeyName) Key {
	return Key{Name: name, Mod: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift}
}

// Alt is a key with Alt held.
func Alt(name fyne.KeyName) Key { return Key{Name: name, Mod: fyne.KeyModifierAlt} }

// bareKeys are the keys a command may own alone.
var bareKeys = map[fyne.KeyName]bool{
	fyne.KeyF1: true, fyne.KeyF2: true, fyne.KeyF3: true, fyne.KeyF4: true,
	fyne.KeyF5: true, fyne.KeyF6: true, fyne.KeyF7: true, fyne.KeyF8: true,
	fyne.KeyF9: true, fyne.KeyF10: true, fyne.KeyF11: true, fyne.KeyF12: true,
	fyne.KeyEscape: true,
}

// takenKeys turn into editing shortcuts before a menu is asked, so a command
// on one of them would never run.
var takenKeys = map[fyne.KeyName]string{
	fyne.KeyZ: "undo", fyne.KeyY: "redo", fyne.KeyX: "cut",
	fyne.KeyC: "copy", fyne.KeyV: "paste", fyne.KeyA: "select all",
	fyne.KeyInsert: "copy",
}

// fault returns why a command cannot have the key, or "" when it can.
func (k Key) fault() string {
	if k.Mod == 0 && !bareKeys[k.Name] {
		return "only F-keys and Escape may be used without Ctrl or Alt"
	}
	if use, taken := takenKeys[k.Name]; taken && k.Mod == fyne.KeyModifierShortcutDefault {
		return "the key is taken by " + use + " in every text field"
	}
	if k.Mod == fyne.KeyModifierShift {
		return "Shift alone makes a capital letter, not a command"
	}
	return ""
}

// shortcut is the key as a menu item shows it.
func (k Key) shortcut() fyne.KeyboardShortcut {
	return &desktop.CustomShortcut{KeyName: k.Name, Modifier: k.Mod}
}

// String returns the key in English.
func (k Key) String() string { return k.In(EnglishWords()) }

// In returns the key as printed on the keyboard, in the words of a window: "Ctrl+N".
func (k Key) In(words Words) string {
	var parts []string
	for _, m := range []struct {
		mod  fyne.KeyModifier
		name string
	}{
		{fyne.KeyModifierControl, words.Ctrl},
		{fyne.KeyModifierAlt, words.Alt},
		{fyne.KeyModifierShift, words.Shift},
		{fyne.KeyModifierSuper, words.Super},
	} {
		if k.Mod&m.mod != 0 {
			parts = append(parts, m.name)
		}
	}
	return strings.Join(append(parts, keyName(k.Name, words)), "+")
}

func keyName(name fyne.KeyName, words Words) string {
	switch name {
	case fyne.KeyEscape:
		return words.Escape
	case fyne.KeyReturn, fyne.KeyEnter:
		return words.Enter
	case fyne.KeyTab:
		return words.Tab
	case fyne.KeySpace:
		return words.Space
	case fyne.KeyDelete:
		return words.Delete
	case fyne.KeyInsert:
		return words.Insert
	case fyne.KeyHome:
		return words.Home
	case fyne.KeyEnd:
		return words.End
	case fyne.KeyPageUp:
		return words.PageUp
	case fyne.KeyPageDown:
		return words.PageDown
	case fyne.KeyUp:
		return words.ArrowUp
	case fyne.KeyDown:
		return words.ArrowDown
	case fyne.KeyLeft:
		return words.ArrowLeft
	case fyne.KeyRight:
		return words.ArrowRight
	default:
		return string(name)
	}
}
