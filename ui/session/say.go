package session

import (
	"fmt"
	"strings"
)

// Translate gives an English text in the language of the desk.
var Translate = func(english string) string { return english }

// SetLanguage gives the presenters and views their language: a function from
// the English text to the text shown. One language holds for the whole
// process; what was said before stays as it was said.
func SetLanguage(f func(english string) string) { Translate = f }

// Say puts an English text into the language of the desk and fills in its
// verbs. Every text a person reads goes through here, in whole sentences, so
// that a translator never has to join halves.
func Say(english string, args ...any) string {
	if len(args) == 0 {
		return Translate(english)
	}
	return fmt.Sprintf(Translate(english), args...)
}

// Sentence is an error's text in the language of the desk, ended like a
// sentence.
func Sentence(err error) string {
	if err == nil {
		return ""
	}
	text := Translate(strings.TrimSpace(err.Error()))
	if text == "" || strings.ContainsAny(text[len(text)-1:], ".!?") {
		return text
	}
	return text + "."
}

// OneLine sets several lines side by side, for the status line.
func OneLine(text string) string { return strings.Join(strings.Split(text, "\n"), " ") }
