package i18n

import (
	"embed"
	"encoding/json"
	"fmt"
	"slices"
	"sync"
)

// English is the language that texts are written in. It needs no file: a text is
// its own key.
const English = "en"

// codes are the languages there are, by their codes of ISO 639.
var codes = []string{English, "fr"}

// Known reports whether a language is one of those there are; none is English.
func Known(code string) bool { return code == "" || slices.Contains(codes, code) }

// The texts of every other language, a file each, from the English text to the
// one said in its place.
//
//go:embed texts
var files embed.FS

// Texts are the texts of a language that is [Known]: for each English text the
// one said in its place. English says what is written.
func Texts(code string) map[string]string {
	if code != "" && code != English {
		return read(code)
	}
	texts := read(codes[1])
	for text := range texts {
		texts[text] = text
	}
	return texts
}

// read reads the file of a language. The files are part of the program, so one
// that cannot be read is a mistake in it.
func read(code string) map[string]string {
	texts := map[string]string{}
	data, err := files.ReadFile("texts/" + code + ".json")
	if err == nil {
		err = json.Unmarshal(data, &texts)
	}
	if err != nil {
		panic(fmt.Sprintf("i18n: the texts of %q: %v", code, err))
	}
	return texts
}

var french = sync.OnceValue(func() *Translator { return New(Texts("fr")) })

// For is the translator of a house that has chosen a language; nil, which says
// English, where it has chosen none or one that is not known here.
func For(code string) *Translator {
	if code == "fr" {
		return french()
	}
	return nil
}
