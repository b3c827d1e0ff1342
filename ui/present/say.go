package present

import (
	"fmt"
	"strings"
)

// translate gives an English text in the language of the desk.
var translate = func(english string) string { return english }

// SetLanguage gives the presenters and views their language: a function from
// the English text to the text shown. One language holds for the whole
// process; what was said before stays as it was said.
func SetLanguage(f func(english string) string) { translate = f }

// Say puts an English text into the language of the desk and fills in its
// verbs. Every text a person reads goes through here, in whole sentences, so
// that a translator never has to join halves.
func Say(english string, args ...any) string {
	if len(args) == 0 {
		return translate(english)
	}
	return fmt.Sprintf(translate(english), args...)
}

// sentence is an error's text in the language of the desk, ended like a
// sentence.
func sentence(err error) string {
	if err == nil {
		return ""
	}
	text := translate(strings.TrimSpace(err.Error()))
	if text == "" || strings.ContainsAny(text[len(text)-1:], ".!?") {
		return text
	}
	return text + "."
}

// oneLine sets several lines side by side, for the status line.
func oneLine(text string) string { return strings.Join(strings.Split(text, "\n"), " ") }
