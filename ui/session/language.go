package session

import (
	"strings"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// Language is the language of the texts of a window. It belongs to a session, so that two windows
// of one program may speak two languages. The zero Language is English.
type Language struct{ printer *message.Printer }

// LanguageOf is the language of a code: one of [i18n.Codes]; empty is English.
func LanguageOf(code string) (Language, error) {
	if !i18n.Known(code) {
		return Language{}, message.NotFound.Errorf("the desk does not speak %q; it speaks %s", code, message.Names(", ", i18n.Codes()))
	}
	return Language{i18n.In(code)}, nil
}

// Code is the code of the language.
func (l Language) Code() string { return l.printer.Code() }

// Printer is the printer of the language; nil for English.
func (l Language) Printer() *message.Printer { return l.printer }

// Say translates an English text and formats its arguments. Every text a person reads goes through
// here, in whole sentences, so that a translator never has to join halves.
func (l Language) Say(english string, args ...any) string {
	if len(args) == 0 {
		return l.printer.Word(english)
	}
	return l.printer.Say(english, l.printer.AsShown(args)...)
}

// Text is a message in the language.
func (l Language) Text(m message.Sayable) string { return l.printer.Text(m) }

// Sentence returns an error's text with a final full stop.
func (l Language) Sentence(err error) string {
	if err == nil {
		return ""
	}
	text := strings.TrimSpace(l.printer.Error(err))
	if text == "" || strings.ContainsAny(text[len(text)-1:], ".!?") {
		return text
	}
	return text + "."
}

// Signs are those of figures in the language.
func (l Language) Signs() message.Figures { return l.printer.Figures() }

// ParseFigure parses a figure typed in the language.
func (l Language) ParseFigure(f quantity.Field, text string) (quantity.Amount, error) {
	plain, err := quantity.WithPoint(f.Name, text, l.Signs())
	if err != nil {
		return quantity.Amount{}, err
	}
	return f.Parse(plain)
}
