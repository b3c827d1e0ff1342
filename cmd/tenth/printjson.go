package main

import (
	"encoding/json"
)

// asJSON prints a value for programs. Figures are text in it, never numbers:
// whoever reads a JSON number may make a binary fraction of it.
func (t *terminal) asJSON(v any) error {
	e := json.NewEncoder(t.out)
	e.SetIndent("", "  ")
	e.SetEscapeHTML(false)
	return e.Encode(v)
}
