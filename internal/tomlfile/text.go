package tomlfile

import (
	"slices"
	"strings"

	"tenthpoint/internal/message"
)

// text returns the quoted value of a key. It returns false when the key is missing or not quoted
// text, and reports that.
func (t *Table) text(key string, required bool) (string, bool) {
	t.used[key] = true
	v, ok := t.values[key]
	if !ok {
		if required && !t.absent {
			t.AddProblem(key, message.New("%s is missing", t.Name(key)), message.New("Add a line %v.", t.file.form.text(t.path, key)))
		}
		return "", false
	}
	s, ok := v.(string)
	if !ok {
		t.AddProblem(key, message.New("%s is a bare %s", t.Name(key), kindOf(v)), message.Words("Write it in quotes, with its unit if it has one, like \"15.5 %\"."))
		return "", false
	}
	return strings.Trim(s, " \t\r\n"), true
}

// kindOf names the type of a value.
func kindOf(v any) message.Text {
	switch v.(type) {
	case int64, float64:
		return message.New("number")
	case bool:
		return message.New("true or false")
	case string:
		return message.New("text")
	case map[string]any:
		return message.New("table")
	case []any, []map[string]any:
		return message.New("list")
	}
	return message.New("date")
}

// Text is a required text.
func (t *Table) Text(key string) string {
	s, ok := t.text(key, true)
	if ok && s == "" {
		t.AddProblem(key, message.New("%s is empty", t.Name(key)), message.New("Write what it is."))
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
		t.AddProblem(key, message.New("%s is not true or false", t.Name(key)), message.New("Write %v or %v.", write(t.path, key, "true"), write(t.path, key, "false")))
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
		t.AddProblem(key, message.New("%s is %q", t.Name(key), s), message.New("It must be one of: %v.", strings.Join(options, ", ")))
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
		t.AddProblem(key, message.New("%s is not a list", t.Name(key)), message.New("Write it like [\"one\", \"two\"]."))
		return nil
	}
	out := make([]string, 0, len(list))
	for _, item := range list {
		s, ok := item.(string)
		if !ok {
			t.AddProblem(key, message.New("%s holds a bare %s", t.Name(key), kindOf(item)), message.New("Write every item in quotes."))
			continue
		}
		out = append(out, s)
	}
	return out
}
