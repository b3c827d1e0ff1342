package shell

import (
	"embed"
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"tenthpoint/internal/i18n"
	"tenthpoint/ui/session"
	"tenthpoint/ui/widgets"
)

// The texts that only screens have, a file for every language, from the English
// text to the text shown. All have the same keys; English is its own key. What
// papers and sentences of the trade say is in package i18n.
//
//go:embed translation
var translations embed.FS

// UseLanguage makes the desk speak a language: "en" or "fr"; none is English.
// One language holds for the whole process: it is called before a window is
// opened, and a window that is open is made anew after it.
//
// The house decides, not the computer: Fyne would choose by the computer's
// language, so the texts are handed to Fyne as those of whatever it chose.
func UseLanguage(code string) error {
	texts, err := TextsIn(code)
	if err != nil {
		return err
	}
	var speaking *i18n.Translator // of sentences; English ones stay
	if code != "" && code != i18n.English {
		speaking = i18n.New(maps.Clone(texts))
	}
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
	say := func(english string) string {
		if _, known := texts[english]; known {
			return lang.L(english)
		}
		return speaking.Say(english)
	}
	session.SetLanguage(say)
	widgets.SetWords(kitWords(say))
	language = code
	return nil
}

var language = i18n.English

// Language is the code of the language in use.
func Language() string { return language }

// reserved are words that Fyne's texts cannot be called by.
var reserved = []string{"id", "description", "hash", "leftdelim", "rightdelim", "zero", "one", "two", "few", "many", "other"}

// TextsIn are all texts of a language, those of the screens and those of the
// trade.
func TextsIn(code string) (map[string]string, error) {
	if code == "" {
		code = i18n.English
	}
	data, err := translations.ReadFile("translation/" + code + ".json")
	if err != nil || !i18n.Known(code) {
		return nil, fmt.Errorf("the desk does not speak %q; it speaks en and fr", code)
	}
	texts := i18n.Texts(code)
	screens := map[string]string{}
	if err := json.Unmarshal(data, &screens); err != nil {
		return nil, err
	}
	maps.Copy(texts, screens)
	return texts, nil
}

// kitWords are the kit's own words in a language.
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
