package i18n

import (
	"embed"
	"fmt"
	"slices"
	"strings"
	"sync"

	"tenthpoint/internal/message"
)

// English is the language that texts are written in. It needs no file: a text is
// its own key.
const English = "en"

// The catalog of every other language, one file each.
//
//go:embed catalog
var files embed.FS

// catalogs are those of the files, by their codes of ISO 639. They are part of the
// program, so one that cannot be read is a mistake in it.
var catalogs = sync.OnceValue(func() map[string]*message.Catalog {
	out := map[string]*message.Catalog{}
	all, err := files.ReadDir("catalog")
	if err != nil {
		panic("i18n: " + err.Error())
	}
	for _, f := range all {
		data, err := files.ReadFile("catalog/" + f.Name())
		if err != nil {
			panic("i18n: " + err.Error())
		}
		c, err := message.ReadCatalog(data)
		if err != nil || c.Code+".json" != f.Name() {
			panic(fmt.Sprintf("i18n: %s: %v", f.Name(), err))
		}
		out[c.Code] = c
	}
	return out
})

// Codes are the languages there are, English first.
func Codes() []string {
	codes := []string{English}
	for code := range catalogs() {
		codes = append(codes, code)
	}
	slices.Sort(codes[1:])
	return codes
}

// Known reports whether a language is one of those there are; none is English.
func Known(code string) bool { return code == "" || slices.Contains(Codes(), code) }

// Catalog is the catalog of a language; English and an unknown language have none.
func Catalog(code string) (*message.Catalog, bool) {
	c, there := catalogs()[code]
	return c, there
}

// Name is what its speakers call a language.
func Name(code string) string {
	if c, there := Catalog(code); there {
		return c.Name
	}
	return "English"
}

// Texts are the texts of a language that is [Known]: for each English text the
// one said in its place. English says what is written.
func Texts(code string) map[string]string {
	if c, there := Catalog(code); there {
		return c.Texts()
	}
	texts := map[string]string{}
	for _, c := range catalogs() {
		for text := range c.Texts() {
			texts[text] = text
		}
	}
	return texts
}

// speaker is a language ready to be spoken.
type speaker struct {
	plain   *Translator // figures as they are written
	printer *message.Printer
}

var speakers = sync.OnceValue(func() map[string]speaker {
	out := map[string]speaker{}
	for code, c := range catalogs() {
		spoken := newTranslator(c.Texts(), c.Figures)
		out[code] = speaker{newTranslator(c.Texts(), message.Figures{}), message.NewPrinter(c, spoken.Say)}
	}
	return out
})

// For is the translator of finished English of a house that has chosen a language;
// nil, which says English, where it has chosen none or one that is not known here.
func For(code string) *Translator { return speakers()[code].plain }

// In is the printer of a language; nil, which says English, where it is not known
// here.
func In(code string) *message.Printer { return speakers()[strings.TrimSpace(code)].printer }
