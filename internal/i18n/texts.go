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

// catalogs are loaded from the files on first use, by their codes of ISO 639: an English elevator
// needs none of them.
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

// Texts returns the translation of each English text in a language that is [Known]. English is
// unchanged.
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

// speaker holds a language's printers.
type speaker struct{ printer, programs *message.Printer }

var speakers = sync.OnceValue(func() map[string]func() speaker {
	out := map[string]func() speaker{}
	for code, read := range catalogs() {
		out[code] = sync.OnceValue(func() speaker {
			return speaker{message.NewPrinter(read()), message.NewPrinter(read().Plain())}
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

// In returns the printer of a language; nil, which prints English, for an unknown one.
func In(code string) *message.Printer { return speakerOf(strings.TrimSpace(code)).printer }

// ForPrograms is the printer of a language that writes figures as programs read them; nil for
// English and an unknown one.
func ForPrograms(code string) *message.Printer { return speakerOf(strings.TrimSpace(code)).programs }
