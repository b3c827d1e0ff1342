package model

import (
	"sort"
	"strings"

	"tenthpoint/internal/textsearch"
)

// Option is one thing to find: a grower, a truck, a commodity. All three parts
// are ready to read; Code is what identifies it.
type Option struct {
	Code   string // short and unique: "114"
	Name   string // "Hollow Oak Farm"
	Detail string // shown small: "3 shares, truck 22"
	// ByName hides the code: it is internal, and people search and read the name.
	ByName bool
}

// Shown are the code and the name as people see them.
func (o Option) Shown() (code, name string) {
	if o.ByName {
		return o.Name, ""
	}
	return o.Code, o.Name
}

// String is the text of a chosen option in its field.
func (o Option) String() string {
	code, name := o.Shown()
	if name == "" || name == code {
		return code
	}
	return code + "  " + name
}

// How well an option matches the text typed, best first.
const (
	fitCode     = iota // the code itself
	fitCodeHead        // the code begins so
	fitNameHead        // the name begins so
	fitWords           // every part begins some word
	fitAnywhere        // every word occurs somewhere
	fitNot
)

// Matching returns the options that match the text typed, best first and otherwise in the given
// order. An empty text matches everything.
func Matching(options []Option, typed string) []Option {
	query := textsearch.Fold(strings.TrimSpace(typed))
	if query == "" {
		return options
	}
	fits := make([]int, 0, len(options))
	found := make([]Option, 0, len(options))
	for _, o := range options {
		if fit := fitOf(o, query); fit != fitNot {
			fits, found = append(fits, fit), append(found, o)
		}
	}
	order := byFit{fits, found}
	sort.Stable(order)
	return order.found
}

// fitOf ranks one option against a folded query.
func fitOf(o Option, query string) int {
	code, name := o.Shown()
	code, name = textsearch.Fold(code), textsearch.Fold(name)
	switch {
	case code == query:
		return fitCode
	case strings.HasPrefix(code, query):
		return fitCodeHead
	case strings.HasPrefix(name, query):
		return fitNameHead
	}
	all := code + " " + name + " " + textsearch.Fold(o.Detail)
	best := fitWords
	for _, part := range strings.Fields(query) {
		switch {
		case strings.HasPrefix(all, part) || strings.Contains(all, " "+part):
		case strings.Contains(all, part):
			best = fitAnywhere
		default:
			return fitNot
		}
	}
	return best
}

// Exact returns the option whose code was typed in full, and whether no other code begins the same
// way, so that nothing more could follow.
func Exact(options []Option, typed string) (o Option, found, final bool) {
	query := textsearch.Fold(strings.TrimSpace(typed))
	final = true
	for _, each := range options {
		code, _ := each.Shown()
		code = textsearch.Fold(code)
		switch {
		case query == "":
		case code == query:
			o, found = each, true
		case strings.HasPrefix(code, query):
			final = false
		}
	}
	return o, found, found && final
}

type byFit struct {
	fits  []int
	found []Option
}

func (b byFit) Len() int           { return len(b.fits) }
func (b byFit) Less(i, j int) bool { return b.fits[i] < b.fits[j] }
func (b byFit) Swap(i, j int) {
	b.fits[i], b.fits[j] = b.fits[j], b.fits[i]
	b.found[i], b.found[j] = b.found[j], b.found[i]
}
