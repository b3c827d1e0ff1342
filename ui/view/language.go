package view

import (
	"embed"
	"encoding/json"
	"fmt"
	"reflect"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"tenthpoint/ui/kit"
	"tenthpoint/ui/present"
)

// The texts of every language, a file each, from the English text to the text
// shown. All have the same keys; English is its own key.
//
//go:embed translation
var translations embed.FS

// english is the language the texts are written in.
const english = "en"

// UseLanguage makes the desk speak a language: "en" or "fr"; none is English.
// One language holds for the whole process, so it is called before a window is
// opened.
//
// The house decides, not the computer: Fyne would choose by the computer's
// language, so the texts are handed to Fyne as those of whatever it chose.
func UseLanguage(code string) error {
	if code == "" {
		code = english
	}
	data, err := translations.ReadFile("translation/" + code + ".json")
	if err != nil {
		return fmt.Errorf("the desk does not speak %q; it speaks en and fr", code)
	}
	for _, locale := range []fyne.Locale{english, lang.SystemLocale()} {
		if err := lang.AddTranslationsForLocale(data, locale); err != nil {
			return err
		}
	}
	t := &tongue{said: map[string]string{}}
	if err := json.Unmarshal(data, &t.texts); err != nil {
		return err
	}
	if code != english {
		t.sentences = newSentences(t.texts)
	}
	present.SetLanguage(t.say)
	kit.SetWords(kitWords(t.say))
	return nil
}

// kitWords are the kit's own words in a language.
func kitWords(say func(english string) string) kit.Words {
	w := kit.EnglishWords()
	texts := reflect.ValueOf(&w).Elem()
	for i := range texts.NumField() {
		if f := texts.Field(i); f.Kind() == reflect.String {
			f.SetString(say(f.String()))
		}
	}
	return w
}

// tongue is a language in use.
type tongue struct {
	texts     map[string]string
	sentences sentences

	mutex sync.Mutex
	said  map[string]string // what has been put into the language before
}

// mostSaid bounds what is remembered: sentences with figures in them are many.
const mostSaid = 4000

// say gives an English text in the language. What is no text of the desk, as a
// name, stays what it is.
func (t *tongue) say(english string) string {
	t.mutex.Lock()
	defer t.mutex.Unlock()
	if text, before := t.said[english]; before {
		return text
	}
	text := t.look(english)
	if len(t.said) > mostSaid {
		clear(t.said)
	}
	t.said[english] = text
	return text
}

// look finds a text, or the sentence it was made from.
func (t *tongue) look(english string) string { return t.sentences.translate(english, t.exact) }

// exact finds a text of the desk.
func (t *tongue) exact(english string) (text string, known bool) {
	if _, known = t.texts[english]; !known {
		return "", false
	}
	return lang.L(english), true
}
