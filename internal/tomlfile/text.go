package tomlfile

import (
	"fmt"
	"slices"
	"strings"
)

// text is the quoted value of a key. It is found false when the key is missing
// or is not quoted text, with the problem written down.
func (t *Table) text(key string, required bool) (string, bool) {
	t.used[key] = true
	v, ok := t.values[key]
	if !ok {
		if required && !t.absent {
			t.AddProblem(key, fmt.Sprintf("%s is missing", t.Name(key)), fmt.Sprintf("Add a line %s.", t.file.form.text(t.path, key)))
		}
		return "", false
	}
	s, ok := v.(string)
	if !ok {
		t.AddProblem(key, fmt.Sprintf("%s is a bare %s", t.Name(key), kindOf(v)), "Write it in quotes, with its unit if it has one, like \"15.5 %\".")
		return "", false
	}
	return strings.TrimSpace(s), true
}

func kindOf(v any) string {
	switch v.(type) {
	case int64, float64:
		return "number"
	case bool:
		return "true or false"
	case string:
		return "text"
	case map[string]any:
		return "table"
	case []any, []map[string]any:
		return "list"
	}
	return "date"
}

// Text is a required text.
func (t *Table) Text(key string) string {
	s, ok := t.text(key, true)
	if ok && s == "" {
		t.AddProblem(key, t.Name(key)+" is empty", "Write what it is.")
	}
	return s
}

// OptionalText is a text that may be left out.
func (t *Table) OptionalText(key string) string {
	s, _ := t.text(key, false)
	return s
}

// Bool is a required true or false.
func (t *Table) Bool(key string) bool {
	t.used[key] = true
	v, ok := t.values[key].(bool)
	if !ok && !t.absent {
		write := t.file.form.flag
		t.AddProblem(key, t.Name(key)+" is not true or false", fmt.Sprintf("Write %s or %s.", write(t.path, key, "true"), write(t.path, key, "false")))
	}
	return v
}

// Choice is a required text that must be one of the options.
func (t *Table) Choice(key string, options ...string) string {
	s, ok := t.text(key, true)
	if !ok {
		return ""
	}
	if !slices.Contains(options, s) {
		t.AddProblem(key, fmt.Sprintf("%s is %q", t.Name(key), s), "It must be one of: "+strings.Join(options, ", ")+".")
		return ""
	}
	return s
}

// Texts is a list of quoted texts; it may be left out.
func (t *Table) Texts(key string) []string {
	t.used[key] = true
	v, ok := t.values[key]
	if !ok {
		return nil
	}
	list, ok := v.([]any)
	if !ok {
		t.AddProblem(key, t.Name(key)+" is not a list", "Write it like [\"one\", \"two\"].")
		return nil
	}
	out := make([]string, 0, len(list))
	for _, item := range list {
		s, ok := item.(string)
		if !ok {
			t.AddProblem(key, fmt.Sprintf("%s holds a bare %s", t.Name(key), kindOf(item)), "Write every item in quotes.")
			continue
		}
		out = append(out, s)
	}
	return out
}
