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

// catalogs are those of the files, by their codes of ISO 639, each read when it is
// first asked for: an English house needs none of them.
var catalogs = sync.OnceValue(func() map[string]func() *message.Catalog {
	out := map[string]func() *message.Catalog{}
	all, err := files.ReadDir("catalog")
	if err != nil {
		panic("i18n: " + err.Error())
	}
	for _, f := range all {
		out[strings.TrimSuffix(f.Name(), ".json")] = sync.OnceValue(func() *message.Catalog { return read(f.Name()) })
	}
	return out
})

// read reads a built-in catalog; one that cannot be read is a programming error.
func read(name string) *message.Catalog {
	data, err := files.ReadFile("catalog/" + name)
	if err != nil {
		panic("i18n: " + err.Error())
	}
	c, err := message.ReadCatalog(data)
	if err != nil || c.Code+".json" != name {
		panic(fmt.Sprintf("i18n: %s: %v", name, err))
	}
	return c
}

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
	read, there := catalogs()[code]
	if !there {
		return nil, false
	}
	return read(), true
}

// Name returns the name of a language in that language.
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
	for _, read := range catalogs() {
		for text := range read().Texts() {
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

var speakers = sync.OnceValue(func() map[string]func() speaker {
	out := map[string]func() speaker{}
	for code, read := range catalogs() {
		out[code] = sync.OnceValue(func() speaker {
			c := read()
			spoken := newTranslator(c.Texts(), c.Figures)
			return speaker{newTranslator(c.Texts(), message.Figures{}), message.NewPrinter(c, spoken.Say)}
		})
	}
	return out
})

// speakerOf is the speaker of a language; English and an unknown one have none.
func speakerOf(code string) speaker {
	if speak, there := speakers()[code]; there {
		return speak()
	}
	return speaker{}
}

// For is the translator of finished English of a house that has chosen a language;
// nil, which says English, where it has chosen none or one that is not known here.
func For(code string) *Translator { return speakerOf(code).plain }

// In is the printer of a language; nil, which says English, where it is not known
// here.
func In(code string) *message.Printer { return speakerOf(strings.TrimSpace(code)).printer }
