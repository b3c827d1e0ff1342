package widgets

import "tenthpoint/ui/model"

// Words are the texts built into this package, in the language of a window, which hands them to its
// [UIContext], commands and status line. All other texts come from the users of the package.
type Words struct {
	Agree   string // the button that confirms
	Cancel  string // the button that leaves things as they are
	Close   string // the button under a notice
	Halt    string // the button that stops long work
	NoMatch string // under a find field when nothing fits
	More    string // "%d more": a list longer than it is drawn
	Needed  string // beside a field that must be filled

	CopyRow, CopyAll, CopyText string // in the menu of a table, of a paper

	NoLetters string // a letter was typed into a field for figures
	TooLong   string // "%d letters": more was typed or pasted than a field takes

	// What a status line says before the sentence.
	StatusOK, StatusWarn, StatusStop, StatusWait string

	// Names of keys, as printed on the keyboard.
	Ctrl, Shift, Alt, Super                   string
	Escape, Enter, Tab, Space, Delete, Insert string
	Home, End, PageUp, PageDown               string
	ArrowUp, ArrowDown, ArrowLeft, ArrowRight string
}

// EnglishWords are the texts of this package in English.
func EnglishWords() Words {
	return Words{
		Agree: "OK", Cancel: "Cancel", Close: "Close", Halt: "Stop",
		NoMatch: "Nothing fits", More: "%d more", Needed: "This is needed.",
		CopyRow: "Copy the row", CopyAll: "Copy the table", CopyText: "Copy the text",
		NoLetters: "Only figures go here: the letter is left out.", TooLong: "At most %d letters go here: the rest is left out.",
		StatusOK: "Done", StatusWarn: "Take care", StatusStop: "Not done", StatusWait: "Working",
		Ctrl: "Ctrl", Shift: "Shift", Alt: "Alt", Super: "Super",
		Escape: "Esc", Enter: "Enter", Tab: "Tab", Space: "Space", Delete: "Del", Insert: "Ins",
		Home: "Home", End: "End", PageUp: "PgUp", PageDown: "PgDn",
		ArrowUp: "Up", ArrowDown: "Down", ArrowLeft: "Left", ArrowRight: "Right",
	}
}

// Status is the word that a status line says of a state before its sentence; none for a plain one.
func (w Words) Status(state model.State) string {
	switch state {
	case model.OK:
		return w.StatusOK
	case model.Warn, model.Missing:
		return w.StatusWarn
	case model.Stop:
		return w.StatusStop
	case model.Wait:
		return w.StatusWait
	default:
		return ""
	}
}
