package shell

import (
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strings"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"tenthpoint/internal/i18n"
	"tenthpoint/ui/session"
	"tenthpoint/ui/widgets"
)

// useLanguage sets the language of the window by its code. What is built already is built anew after it.
func (w *Window) useLanguage(code string) error {
	if err := w.Session.Speak(code); err != nil {
		return err
	}
	return teachFyne(code)
}

// teachFyne gives Fyne the texts of a language, for its own dialogs alone. Fyne has one language for
// the whole program, so where two windows speak two, its dialogs speak that of the later one.
//
// The elevator's setting decides, not the system locale: Fyne would choose by the locale, so the
// texts are registered with Fyne under whatever language it chose.
func teachFyne(code string) error {
	texts := i18n.Texts(code)
	maps.DeleteFunc(texts, func(english, _ string) bool { return slices.Contains(reserved, strings.ToLower(english)) })
	data, err := json.Marshal(texts)
	if err != nil {
		return err
	}
	for _, locale := range []fyne.Locale{i18n.English, systemLocale()} {
		if err := lang.AddTranslationsForLocale(data, locale); err != nil {
			return err
		}
	}
	return nil
}

// systemLocale is asked of the system once, which does not change while the program runs.
var systemLocale = sync.OnceValue(lang.SystemLocale)

// reserved are words that Fyne's texts cannot be called by.
var reserved = []string{"id", "description", "hash", "leftdelim", "rightdelim", "zero", "one", "two", "few", "many", "other"}

// wordsIn are the texts of package widgets in a language.
func wordsIn(language session.Language) widgets.Words {
	w := widgets.EnglishWords()
	texts := reflect.ValueOf(&w).Elem()
	for i := range texts.NumField() {
		if f := texts.Field(i); f.Kind() == reflect.String {
			f.SetString(language.Say(f.String()))
		}
	}
	return w
}
