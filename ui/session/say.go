package session

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// printer translates everything in the window.
var printer *message.Printer

// SetLanguage sets the language of presenters and screens. There is one language for the whole
// process; existing texts are not translated again.
func SetLanguage(p *message.Printer) { printer = p }

// Say translates an English text to the language of the desk and formats its arguments. Every text
// a person reads goes through here, in whole sentences, so that a translator never has to join
// halves.
func Say(english string, args ...any) string {
	if len(args) == 0 {
		return printer.Word(english)
	}
	return printer.Say(english, printer.AsShown(args)...)
}

// Text is a message in the language of the desk.
func Text(m message.Sayable) string { return printer.Text(m) }

// Sentence returns an error's text in the language of the desk, with a final full stop.
func Sentence(err error) string {
	if err == nil {
		return ""
	}
	text := strings.TrimSpace(printer.Error(err))
	if text == "" || strings.ContainsAny(text[len(text)-1:], ".!?") {
		return text
	}
	return text + "."
}

// OneLine sets several lines side by side, for the status line.
func OneLine(text string) string { return strings.Join(strings.Split(text, "\n"), " ") }

// Signs are those of figures in the language of the desk.
func Signs() message.Figures { return printer.Figures() }

// ParseFigure parses a figure typed in the language of the desk.
func ParseFigure(f quantity.Field, text string) (quantity.Amount, error) {
	plain, err := quantity.WithPoint(f.Name, text, printer.Figures())
	if err != nil {
		return quantity.Amount{}, err
	}
	return f.Parse(plain)
}
