package tomlfile

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"tenthpoint/internal/message"
)

// Table is one table of a file. Each getter marks its key as known; [Table.RejectUnknownKeys]
// reports the keys never read.
type Table struct {
	file     *File
	path     string
	title    message.Text // the table's name for people, where it has a better one
	values   map[string]any
	used     map[string]bool
	children []*Table
	// absent marks a table that the file does not have. That was reported once; its keys are not
	// reported missing again.
	absent bool
}

// Path is the table's place in the file: "drying", "discount.0".
func (t *Table) Path() string { return t.path }

// SetTitle sets a name for people that replaces the table's path, so that a row of the third
// discount is quoted as "discount damage".
func (t *Table) SetTitle(title message.Text) { t.title = title }

// Source returns the reference to a key, for people: "corn-main-2026: shrink, to, line 35". An
// empty key is the table itself.
func (t *Table) Source(key string) message.Text {
	name := t.title
	if name.IsZero() {
		name = message.New("%v", t.path)
	}
	place := message.New("%v, line %d", message.List(", ", name, message.Own(key)), t.Line(key))
	if t.file.id == "" {
		return place
	}
	return message.New("%v: %s", t.file.id, place)
}

// Name returns the name of a key of the table in problems: "shrink.to", or "discount damage row 2,
// upto" in a table with a name of its own. An empty key is the table itself.
func (t *Table) Name(key string) message.Text {
	if t.title.IsZero() {
		return message.New("%v", join(t.path, key))
	}
	return message.List(", ", t.title, message.Own(key))
}

// Line returns the line of a key of the table, or the nearest heading around it when the key is
// missing or empty.
func (t *Table) Line(key string) int { return lineOf(t.file.at, join(t.path, key)) }

// AddProblem writes a problem at a key of the table.
func (t *Table) AddProblem(key string, what, remedy message.Text) {
	t.file.add(join(t.path, key), t.Line(key), what, remedy)
}

// Has reports whether the key is there, without marking it as known.
func (t *Table) Has(key string) bool {
	_, ok := t.values[key]
	return ok
}

// heading is the text in brackets above a table inside this one: elements of an array have no
// numbers there.
func (t *Table) heading(key string) string {
	parts := strings.Split(join(t.path, key), ".")
	return strings.Join(slices.DeleteFunc(parts, isNumber), ".")
}

func isNumber(part string) bool { return strings.Trim(part, "0123456789") == "" }

// Table returns a table inside this one. A missing required table is a problem; the result is then
// empty, so that the caller can continue.
func (t *Table) Table(key string, required bool) (*Table, bool) {
	t.used[key] = true
	v, ok := t.values[key].(map[string]any)
	switch {
	case ok:
	case t.Has(key):
		t.AddProblem(key, message.New("%s is a %s where a table belongs", t.Name(key), kindOf(t.values[key])), message.New("Write it as a table of its own, headed [%v].", t.heading(key)))
	case required && !t.absent:
		t.AddProblem(key, t.file.form.missing(t.heading(key)), message.New("Add it, also where it only says that nothing is done."))
	}
	c := t.child(join(t.path, key), v)
	c.absent = !ok
	return c, ok
}

// Tables is an array of tables inside this one; it may be left out.
func (t *Table) Tables(key string) []*Table {
	t.used[key] = true
	list, ok := t.values[key].([]map[string]any)
	if !ok {
		if t.Has(key) {
			t.AddProblem(key, message.New("%s is not a list of tables", t.Name(key)), message.New("Write each as [[%v]].", t.heading(key)))
		}
		return nil
	}
	out := make([]*Table, len(list))
	for i, v := range list {
		out[i] = t.child(fmt.Sprintf("%s.%d", join(t.path, key), i), v)
	}
	return out
}

func (t *Table) child(path string, values map[string]any) *Table {
	c := &Table{file: t.file, path: path, values: values, used: map[string]bool{}}
	t.children = append(t.children, c)
	return c
}

// IgnoreRest takes every key of the table as known. It is for a table in which a
// mistake, already reported, takes the meaning from all other keys.
func (t *Table) IgnoreRest() {
	for key := range t.values {
		t.used[key] = true
	}
}

// RejectUnknownKeys reports the keys of this table and its subtables that were never read.
func (t *Table) RejectUnknownKeys() {
	var unknown []string
	for key := range t.values {
		if !t.used[key] {
			unknown = append(unknown, key)
		}
	}
	sort.Strings(unknown)
	for _, key := range unknown {
		t.AddProblem(key, message.New("%s is not a key of this file", t.Name(key)), message.New("Known here: %v. Mend the spelling or take the line out.", t.known()))
	}
	for _, c := range t.children {
		c.RejectUnknownKeys()
	}
}

func (t *Table) known() string {
	keys := make([]string, 0, len(t.used))
	for key := range t.used {
		keys = append(keys, key)
	}
	sort.Strings(keys)
	return strings.Join(keys, ", ")
}
