package tomlfile

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"tenthpoint/internal/quantity"
)

// Table is one table of a file. Each getter marks its key as known; [Table.Close]
// reports the keys nobody asked for.
type Table struct {
	file     *File
	path     string
	title    string // the table's name for people, where it has a better one
	values   map[string]any
	used     map[string]bool
	children []*Table
}

// Path is the table's place in the file: "drying", "discount.0".
func (t *Table) Path() string { return t.path }

// Call gives the table a name for people in place of its path, so that a row
// of the third discount is quoted as "discount damage".
func (t *Table) Call(title string) { t.title = title }

// Place is where a key stands, for people: "shrink.to, line 35". An empty key
// is the table itself.
func (t *Table) Place(key string) string {
	name := t.path
	if t.title != "" {
		name = t.title
	}
	if key != "" {
		name += ", " + key
	}
	return fmt.Sprintf("%s, line %d", name, t.Line(key))
}

// Line is where a key of the table stands, or the table's own heading when the
// key is missing or empty.
func (t *Table) Line(key string) int {
	if line := t.file.at[join(t.path, key)]; key != "" && line > 0 {
		return line
	}
	return t.file.at[t.path]
}

// Wrong writes a problem at a key of the table.
func (t *Table) Wrong(key, what, remedy string) {
	t.file.add(join(t.path, key), t.Line(key), what, remedy)
}

// Has reports whether the key is there, without marking it as known.
func (t *Table) Has(key string) bool {
	_, ok := t.values[key]
	return ok
}

func (t *Table) name(key string) string { return join(t.path, key) }

// text is the quoted value of a key. It is found false when the key is missing
// or is not quoted text, with the problem written down.
func (t *Table) text(key string, required bool) (string, bool) {
	t.used[key] = true
	v, ok := t.values[key]
	if !ok {
		if required {
			t.Wrong(key, fmt.Sprintf("%s is missing", t.name(key)), fmt.Sprintf("Add a line %s = \"…\".", key))
		}
		return "", false
	}
	s, ok := v.(string)
	if !ok {
		t.Wrong(key, fmt.Sprintf("%s is a bare %s", t.name(key), kindOf(v)), "Write it in quotes, with its unit if it has one, like \"15.5 %\".")
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
	case map[string]any, []map[string]any:
		return "table"
	case []any:
		return "list"
	}
	return "date"
}

// Text is a required text.
func (t *Table) Text(key string) string {
	s, ok := t.text(key, true)
	if ok && s == "" {
		t.Wrong(key, t.name(key)+" is empty", "Write what it is.")
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
	if !ok {
		t.Wrong(key, t.name(key)+" is not true or false", fmt.Sprintf("Write %s = true or %s = false.", key, key))
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
		t.Wrong(key, fmt.Sprintf("%s is %q", t.name(key), s), "It must be one of: "+strings.Join(options, ", ")+".")
		return ""
	}
	return s
}

// Amount is a required figure in one of the units.
func (t *Table) Amount(key string, units ...quantity.Unit) quantity.Amount {
	a, _ := t.amount(key, true, units)
	return a
}

// OptionalAmount is a figure that may be left out; found tells whether it is
// there.
func (t *Table) OptionalAmount(key string, units ...quantity.Unit) (a quantity.Amount, found bool) {
	return t.amount(key, false, units)
}

func (t *Table) amount(key string, required bool, units []quantity.Unit) (quantity.Amount, bool) {
	s, ok := t.text(key, required)
	if !ok {
		return fallback(units), false
	}
	a, err := quantity.ParseAmount(s)
	if err != nil {
		t.Wrong(key, fmt.Sprintf("%s: %v", t.name(key), err), "")
		return fallback(units), false
	}
	if len(units) > 0 && !slices.Contains(units, a.Unit()) {
		t.Wrong(key, fmt.Sprintf("%s is in %s", t.name(key), a.Unit()), "It must be in "+unitList(units)+".")
		return fallback(units), false
	}
	return a, true
}

// fallback lets the caller go on with nought in a fitting unit after a problem.
func fallback(units []quantity.Unit) quantity.Amount {
	if len(units) == 0 {
		return quantity.Amount{}
	}
	return quantity.Zero(units[0])
}

func unitList(units []quantity.Unit) string {
	names := make([]string, len(units))
	for i, u := range units {
		names[i] = u.String()
	}
	return strings.Join(names, " or ")
}

// Rounding is a required step and rule.
func (t *Table) Rounding(key string) quantity.Rounding {
	r, _ := t.rounding(key, true)
	return r
}

// OptionalRounding is a step and rule, or otherwise when it is left out.
func (t *Table) OptionalRounding(key string, otherwise quantity.Rounding) quantity.Rounding {
	if r, ok := t.rounding(key, false); ok {
		return r
	}
	return otherwise
}

func (t *Table) rounding(key string, required bool) (quantity.Rounding, bool) {
	s, ok := t.text(key, required)
	if !ok {
		return quantity.Unrounded, false
	}
	r, err := quantity.ParseRounding(s)
	if err != nil {
		t.Wrong(key, fmt.Sprintf("%s: %v", t.name(key), err), "")
		return quantity.Unrounded, false
	}
	return r, true
}

// Date is a required day.
func (t *Table) Date(key string) quantity.Date {
	d, _ := t.date(key, true)
	return d
}

// OptionalDate is a day that may be left out; it is then the zero Date.
func (t *Table) OptionalDate(key string) quantity.Date {
	d, _ := t.date(key, false)
	return d
}

func (t *Table) date(key string, required bool) (quantity.Date, bool) {
	s, ok := t.text(key, required)
	if !ok {
		return quantity.Date{}, false
	}
	d, err := quantity.ParseDate(s)
	if err != nil {
		t.Wrong(key, fmt.Sprintf("%s: %v", t.name(key), err), "")
	}
	return d, err == nil
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
		t.Wrong(key, t.name(key)+" is not a list", "Write it like [\"one\", \"two\"].")
		return nil
	}
	out := make([]string, 0, len(list))
	for _, item := range list {
		s, ok := item.(string)
		if !ok {
			t.Wrong(key, fmt.Sprintf("%s holds a bare %s", t.name(key), kindOf(item)), "Write every item in quotes.")
			continue
		}
		out = append(out, s)
	}
	return out
}

// Table is a table inside this one. A missing required table is a problem; the
// answer is then empty, so that the caller can go on.
func (t *Table) Table(key string, required bool) (*Table, bool) {
	t.used[key] = true
	v, ok := t.values[key].(map[string]any)
	if !ok {
		if required || t.Has(key) {
			t.Wrong(key, fmt.Sprintf("the table [%s] is missing", t.name(key)), "Every edition says it, even when it is \"none\".")
		}
		v = map[string]any{}
	}
	return t.child(join(t.path, key), v), ok
}

// Tables is an array of tables inside this one; it may be left out.
func (t *Table) Tables(key string) []*Table {
	t.used[key] = true
	list, ok := t.values[key].([]map[string]any)
	if !ok {
		if t.Has(key) {
			t.Wrong(key, t.name(key)+" is not a list of tables", fmt.Sprintf("Write each as [[%s]].", t.name(key)))
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

// Close reports the keys of this table and of those inside it that nobody
// asked for.
func (t *Table) Close() {
	var unknown []string
	for key := range t.values {
		if !t.used[key] {
			unknown = append(unknown, key)
		}
	}
	sort.Strings(unknown)
	for _, key := range unknown {
		t.Wrong(key, fmt.Sprintf("%s is not a key of this file", t.name(key)), "Known here: "+t.known()+". Mend the spelling or take the line out.")
	}
	for _, c := range t.children {
		c.Close()
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
