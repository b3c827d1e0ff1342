package main

import (
	"maps"
	"slices"
	"strings"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// texts are texts of a load by the ids of their fields.
type texts map[string]string

// put puts a text that was given into its field.
func (t texts) put(field, text string) {
	if text != "" {
		t[field] = text
	}
}

// results put results typed as FACTOR=RESULT into their fields.
func (t texts) results(all []string) error {
	for _, text := range all {
		factor, result, err := resultOf(text)
		if err != nil {
			return err
		}
		t[factor] = result
	}
	return nil
}

// resultOf parts "test-weight=54.2".
func resultOf(text string) (factor, result string, err error) {
	factor, result, ok := strings.Cut(text, "=")
	if !ok || strings.TrimSpace(factor) == "moisture" {
		return "", "", refusal("Write it like test-weight=54.2 or musty=yes", "%q is no factor and its result", text)
	}
	return strings.TrimSpace(factor), result, nil
}

// into types them into a form.
func (t texts) into(f *entry.Form) {
	for _, id := range slices.Sorted(maps.Keys(t)) {
		f.Set(id, t[id])
	}
}

// entered types texts into a form; the error is the first text that cannot stand.
func entered(f *entry.Form, all ...texts) (*entry.Form, error) {
	for _, t := range all {
		t.into(f)
	}
	_, err := f.FirstRefused()
	return f, err
}

// trial reads a load that is in no book. The error is the first text that cannot
// stand, with its field.
func trial(e *rates.Edition, load texts, needed ...string) (settle.Facts, error) {
	facts, faults := entry.Trial{Edition: e, Needed: needed, Source: "as given"}.Read(load)
	if len(faults) > 0 {
		return facts, faults[0]
	}
	return facts, nil
}
