package shell

import (
	"encoding/json"
	"maps"
	"reflect"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
	"tenthpoint/ui/session"
	"tenthpoint/ui/widgets"
)

// UseLanguage sets the language of the window: one of [i18n.Codes]; empty is English. There is one
// language for the whole process: it is called before a window is opened, and a window that is open
// is rebuilt after it.
//
// The elevator's setting decides, not the system locale: Fyne would choose by the locale, so the
// texts are registered with Fyne under whatever language it chose.
func UseLanguage(code string) error {
	if !i18n.Known(code) {
		return message.NotFound.Errorf("the desk does not speak %q; it speaks %s", code, message.Names(", ", i18n.Codes()))
	}
	texts := i18n.Texts(code)
	maps.DeleteFunc(texts, func(english, _ string) bool { return slices.Contains(reserved, strings.ToLower(english)) })
	data, err := json.Marshal(texts)
	if err != nil {
		return err
	}
	for _, locale := range []fyne.Locale{i18n.English, lang.SystemLocale()} {
		if err := lang.AddTranslationsForLocale(data, locale); err != nil {
			return err
		}
	}
	printer := i18n.In(code)
	session.SetLanguage(printer)
	widgets.SetWords(kitWords(printer.Word))
	language = code
	return nil
}

var language = i18n.English

// Language is the code of the language in use.
func Language() string { return language }

// reserved are words that Fyne's texts cannot be called by.
var reserved = []string{"id", "description", "hash", "leftdelim", "rightdelim", "zero", "one", "two", "few", "many", "other"}

// kitWords are the texts of package widgets in a language.
func kitWords(say func(english string) string) widgets.Words {
	w := widgets.EnglishWords()
	texts := reflect.ValueOf(&w).Elem()
	for i := range texts.NumField() {
		if f := texts.Field(i); f.Kind() == reflect.String {
			f.SetString(say(f.String()))
		}
	}
	return w
}
