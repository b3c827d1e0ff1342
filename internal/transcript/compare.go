package transcript

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
)

// Compare returns the differences between two programs given the same command line: a sentence for
// each of output, complaints and exit status, or none.
func Compare(before, after Entry, allowed *Allowed) []string {
	line := before.Line()
	problems := part(line, "output", before.Out, after.Out, allowed)
	if !allowed.otherComplaint(before, after) {
		problems = append(problems, part(line, "complaints", before.Err, after.Err, allowed)...)
	}
	if before.Status != after.Status {
		problems = append(problems, fmt.Sprintf("%s\n  exit status was %d, is %d", line, before.Status, after.Status))
	}
	return problems
}

// part compares one stream, line by line; JSON is compared value by value, in any order of names.
func part(line, what, before, after string, allowed *Allowed) []string {
	if before == after {
		return nil
	}
	was, is := lines(before), lines(after)
	if w, i, ok := bothJSON(before, after); ok {
		was, is = w, i
	}
	if w, i, differ := allowed.first(line, was, is); differ {
		return []string{fmt.Sprintf("%s\n  %s was: %s\n  %s is:  %s", line, what, w, what, i)}
	}
	return nil
}

func lines(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(strings.TrimSuffix(text, "\n"), "\n")
}

func bothJSON(before, after string) (was, is []string, ok bool) {
	if was, ok = values(before); !ok {
		return nil, nil, false
	}
	is, ok = values(after)
	return was, is, ok
}

// values takes JSON apart into one line for each value, with the way to it.
// Numbers stay as written.
func values(text string) ([]string, bool) {
	if !strings.HasPrefix(text, "{") && !strings.HasPrefix(text, "[") {
		return nil, false
	}
	d := json.NewDecoder(strings.NewReader(text))
	d.UseNumber()
	var root any
	if err := d.Decode(&root); err != nil || d.More() {
		return nil, false
	}
	all := leaves("", root)
	slices.Sort(all) // lists by id may have another order
	return all, true
}

// place identifies a value in a list: by its id if it has one, else its number.
func place(i int, v any) string {
	fields, _ := v.(map[string]any)
	if id, named := fields["id"].(string); named {
		return id
	}
	return strconv.Itoa(i)
}

func leaves(at string, v any) []string {
	var out []string
	switch v := v.(type) {
	case map[string]any:
		for _, name := range slices.Sorted(maps.Keys(v)) {
			out = append(out, leaves(at+"."+name, v[name])...)
		}
		if len(v) == 0 {
			out = append(out, at+" = {}")
		}
	case []any:
		for i, each := range v {
			out = append(out, leaves(at+"["+place(i, each)+"]", each)...)
		}
		if len(v) == 0 {
			out = append(out, at+" = []")
		}
	default:
		text, _ := json.Marshal(v) // of text, a number, a bool or null: cannot fail
		out = append(out, at+" = "+string(text))
	}
	return out
}
