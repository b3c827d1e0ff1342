package message

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"
)

// Catalog has all texts of the program in one language, read from one file.
type Catalog struct {
	// Code is the language by ISO 639: "fr".
	Code string
	// Name is the language's own name.
	Name string
	// Check says who should review the translation, and its limits until then.
	Check string
	// Figures are the signs of its numbers.
	Figures Figures

	tag     language.Tag
	entries map[string]entry
}

// entry is the translation of a key.
type entry struct {
	key   string
	forms map[string]string // by the name of the plural; "other" is always there
	own   []bool            // which arguments are names, by the verbs of the key
}

// catalogFile is the file format of a catalog. A text is a string, or an object with a string for
// each plural form of the language.
type catalogFile struct {
	Language string                     `json:"language"`
	Name     string                     `json:"name"`
	Check    string                     `json:"check"`
	Figures  Figures                    `json:"figures"`
	Texts    map[string]json.RawMessage `json:"texts"`
}

// ReadCatalog reads the file of a language. Every text with other gaps than its
// key, or without words, is refused.
func ReadCatalog(data []byte) (*Catalog, error) {
	var file catalogFile
	if err := json.Unmarshal(data, &file); err != nil {
		return nil, fmt.Errorf("this is no catalog: %w", err)
	}
	tag, err := language.Parse(file.Language)
	if err != nil {
		return nil, fmt.Errorf("a catalog of the language %q: %w", file.Language, err)
	}
	c := &Catalog{file.Language, file.Name, file.Check, file.Figures, tag, make(map[string]entry, len(file.Texts))}
	var faults []error
	for key, raw := range file.Texts {
		faults = append(faults, c.add(key, raw))
	}
	return c, errors.Join(faults...)
}

// Plain is the catalog with figures as programs read them.
func (c *Catalog) Plain() *Catalog {
	plain := *c
	plain.Figures = Figures{}
	return &plain
}

func (c *Catalog) add(key string, raw json.RawMessage) error {
	e := entry{key: key, forms: map[string]string{}}
	one := ""
	if json.Unmarshal(raw, &one) == nil {
		e.forms["other"] = one
	} else if err := json.Unmarshal(raw, &e.forms); err != nil {
		return fmt.Errorf("%s: %q is neither a text nor its plurals", c.Code, key)
	}
	for _, v := range verbsOf(key) {
		for len(e.own) <= v.arg {
			e.own = append(e.own, false)
		}
		e.own[v.arg] = v.letter == 'v' || v.letter == 'q'
	}
	for name, text := range e.forms {
		if strings.TrimSpace(text) == "" && strings.TrimSpace(key) != "" || !sameGaps(key, text, name == "other") {
			return fmt.Errorf("%s: %q says %q: the gaps differ, or there are no words", c.Code, key, text)
		}
	}
	if e.forms["other"] == "" {
		return fmt.Errorf("%s: %q has no text for \"other\"", c.Code, key)
	}
	if other, twice := c.entries[plain(key)]; twice {
		return fmt.Errorf("%s: %q and %q are one key", c.Code, key, other.key)
	}
	c.entries[plain(key)] = e
	return nil
}

// sameGaps reports whether a text has the arguments of its key, each set alike. A
// form for one thing may leave the number out.
func sameGaps(key, text string, all bool) bool {
	specs := func(format string) []string {
		var out []string
		for _, v := range verbsOf(format) {
			out = append(out, fmt.Sprint(v.arg, v.spec))
		}
		slices.Sort(out)
		return slices.Compact(out)
	}
	want, got := specs(key), specs(text)
	if !all && len(got) == len(want)-1 {
		return slices.Equal(want[1:], got)
	}
	return slices.Equal(want, got)
}

// find returns the entry of a key without verbs. It also finds a text that differs in the final
// full stop or a small first letter.
func (c *Catalog) find(key string) (entry, bool) {
	if e, ok := c.stopped(key); ok {
		return e, true
	}
	first, size := utf8.DecodeRuneInString(key)
	if !unicode.IsLower(first) {
		return entry{}, false
	}
	e, ok := c.stopped(string(unicode.ToUpper(first)) + key[size:])
	return e.changed(smallFirst), ok
}

func smallFirst(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToLower(first)) + text[size:]
}

func (c *Catalog) stopped(key string) (entry, bool) {
	if e, ok := c.entries[key]; ok {
		return e, true
	}
	if bare, stops := strings.CutSuffix(key, "."); stops {
		e, ok := c.entries[bare]
		return e.changed(func(text string) string { return text + "." }), ok
	}
	e, ok := c.entries[key+"."]
	return e.changed(func(text string) string { return strings.TrimSuffix(text, ".") }), ok
}

// changed is an entry with each of its texts changed.
func (e entry) changed(change func(string) string) entry {
	forms := make(map[string]string, len(e.forms))
	for name, text := range e.forms {
		forms[name] = change(text)
	}
	e.forms = forms
	return e
}

// form is the text for a number of things, or the one text there is.
func (c *Catalog) form(e entry, n any) string {
	if number, whole := n.(int); whole && len(e.forms) > 1 {
		name := pluralNames[plural.Cardinal.MatchPlural(c.tag, number, 0, 0, 0, 0)]
		if text, there := e.forms[name]; there {
			return text
		}
	}
	return e.forms["other"]
}

var pluralNames = map[plural.Form]string{
	plural.Other: "other", plural.Zero: "zero", plural.One: "one", plural.Two: "two", plural.Few: "few", plural.Many: "many",
}

// Has reports whether the catalog has a text for a key.
func (c *Catalog) Has(key string) bool {
	_, there := c.find(plain(key))
	return there
}

// Texts returns the catalog's text for each of its keys; of plurals the form for many.
func (c *Catalog) Texts() map[string]string {
	out := make(map[string]string, len(c.entries))
	for _, e := range c.entries {
		out[e.key] = e.forms["other"]
	}
	return out
}

// Part is the file of a catalog with those of its texts alone that are kept, by their keys.
func (c *Catalog) Part(keep func(key string) bool) ([]byte, error) {
	file := catalogFile{c.Code, c.Name, c.Check, c.Figures, map[string]json.RawMessage{}}
	for _, e := range c.entries {
		if !keep(e.key) {
			continue
		}
		text, err := json.Marshal(e.forms)
		if err != nil {
			return nil, err
		}
		file.Texts[e.key] = text
	}
	return json.Marshal(file)
}
