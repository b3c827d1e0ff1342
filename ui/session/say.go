package session

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// ofProcess is the language of areas that do not ask their session yet.
var ofProcess Language

// SetLanguage sets the language of areas that do not ask their session yet.
func SetLanguage(p *message.Printer) { ofProcess = Language{p} }

// Say is [Language.Say] for areas that do not ask their session yet.
func Say(english string, args ...any) string { return ofProcess.Say(english, args...) }

// Text is [Language.Text] for areas that do not ask their session yet.
func Text(m message.Sayable) string { return ofProcess.Text(m) }

// Sentence is [Language.Sentence] for areas that do not ask their session yet.
func Sentence(err error) string { return ofProcess.Sentence(err) }

// Signs is [Language.Signs] for areas that do not ask their session yet.
func Signs() message.Figures { return ofProcess.Signs() }

// ParseFigure is [Language.ParseFigure] for areas that do not ask their session yet.
func ParseFigure(f quantity.Field, text string) (quantity.Amount, error) {
	return ofProcess.ParseFigure(f, text)
}

// OneLine sets several lines side by side, for the status line.
func OneLine(text string) string { return strings.Join(strings.Split(text, "\n"), " ") }
