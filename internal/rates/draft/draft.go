// Package draft is an edition while somebody writes it: the text of its file, changed a figure at a
// time. What is there already keeps its place and its comments. The text is checked exactly as
// files are, every mistake at its figure, and nothing is in force until it has none.
package draft

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/tomlfile"
)

// Draft is the text of an edition, line by line. Changes make another draft.
type Draft struct {
	lines []string
	base  *rates.Edition // what it was begun from
}

// Head is the id, name and dates of a house's own edition.
type Head struct {
	ID, From string // the day it takes effect
	Issued   string // the day it was made
	By       string
	Document string
}

// MakeMine begins an edition of the house from another: the same figures under a new name and day. The
// mark of an example goes with the head, and with nothing else; see [Draft.SameFigures].
func MakeMine(from *rates.Edition, h Head) Draft {
	d := Draft{lines: strings.Split(strings.TrimRight(string(from.Text), "\n"), "\n"), base: from}
	d.lines = dropComments(d.lines)
	for _, head := range []struct{ table, key, value string }{
		{"edition", "id", h.ID}, {"edition", "status", string(rates.House)}, {"edition", "from", h.From},
		{"origin", "issued", h.Issued}, {"origin", "by", h.By}, {"origin", "document", h.Document},
	} {
		d.put(head.table, head.key, head.value)
	}
	d.drop("edition", "until")
	d.drop("edition", "corrects")
	return d
}

// dropComments leaves out the comments over the first table: they say whose the text was.
func dropComments(lines []string) []string {
	first := slices.IndexFunc(lines, func(l string) bool { return strings.HasPrefix(strings.TrimSpace(l), "[") })
	return slices.Clone(lines[max(0, first):])
}

// Text is the whole text, as it would stand in a file.
func (d Draft) Text() []byte { return []byte(strings.Join(d.lines, "\n") + "\n") }

// Base is the edition it was begun from.
func (d Draft) Base() *rates.Edition { return d.base }

// Figure is one line of the text that has a value.
type Figure struct {
	Line  int    // from 1, as the check counts
	Table string // "shrink", or of a row "shrink.row"
	Row   int    // which of the rows of its list, from 0
	InRow bool
	Key   string
	Value string // as it is typed, without the quotes
}

// Figures are all of them in their order.
func (d Draft) Figures() []Figure {
	var out []Figure
	table, rows, inRow := "", map[string]int{}, false
	for i, line := range d.lines {
		if name, list, is := header(line); is {
			if table, inRow = name, list; list {
				rows[name]++
			}
			if !strings.Contains(name, ".") && name == "discount" { // its rows are counted anew
				rows["discount.row"] = 0
			}
			continue
		}
		if key, value, is := pair(line); is {
			out = append(out, Figure{Line: i + 1, Table: table, Row: rows[table] - 1, InRow: inRow, Key: key, Value: value})
		}
	}
	return out
}

// header reads "[shrink]" and "[[shrink.row]]"; a list has two brackets.
func header(line string) (name string, list, is bool) {
	line = strings.TrimSpace(line)
	if inner, ok := strings.CutPrefix(line, "[["); ok {
		name, _, _ = strings.Cut(inner, "]]")
		return name, true, true
	}
	if inner, ok := strings.CutPrefix(line, "["); ok {
		name, _, _ = strings.Cut(inner, "]")
		return name, false, true
	}
	return "", false, false
}

// pair reads `key = "value"`.
func pair(line string) (key, value string, is bool) {
	left, right, ok := strings.Cut(line, "=")
	key = strings.TrimSpace(left)
	if !ok || key == "" || strings.HasPrefix(key, "#") {
		return "", "", false
	}
	right = strings.TrimSpace(right)
	if text, err := strconv.QuotedPrefix(right); err == nil {
		plain, err := strconv.Unquote(text)
		return key, plain, err == nil
	}
	value, _, _ = strings.Cut(right, "#")
	return key, strings.TrimSpace(value), true
}

// bare are values that stand without quotes: yes or no, and lists.
func bare(value string) bool {
	return value == "true" || value == "false" || strings.HasPrefix(value, "[")
}

// Set is the draft with another value at a line.
func (d Draft) Set(line int, value string) Draft {
	key, old, is := pair(d.lineAt(line))
	if !is {
		return d
	}
	return d.with(line-1, 1, written(key, strings.TrimSpace(value), bare(old)))
}

// written is a line of the file.
func written(key, value string, asBare bool) string {
	if asBare && bare(value) {
		return key + " = " + value
	}
	return key + " = " + strconv.Quote(value)
}

func (d Draft) lineAt(line int) string {
	if line < 1 || line > len(d.lines) {
		return ""
	}
	return d.lines[line-1]
}

// with is the draft with some lines replaced by others.
func (d Draft) with(at, count int, by ...string) Draft {
	d.lines = slices.Replace(slices.Clone(d.lines), at, at+count, by...)
	return d
}

// put sets a value of a table, at its end where the key is not there.
func (d *Draft) put(table, key, value string) {
	last := -1
	for i, f := range d.Figures() {
		if f.Table != table {
			continue
		}
		last = i
		if f.Key == key {
			*d = d.with(f.Line-1, 1, written(key, value, false))
			return
		}
	}
	if last >= 0 {
		line := d.Figures()[last].Line
		*d = d.with(line, 0, written(key, value, false))
	}
}

// drop takes a value out of a table.
func (d *Draft) drop(table, key string) {
	for _, f := range d.Figures() {
		if f.Table == table && f.Key == key {
			*d = d.with(f.Line-1, 1)
			return
		}
	}
}

// block is the first and last line of the row that a line is in, its blank lines before it included.
func (d Draft) block(line int) (from, to int, inRow bool) {
	from = line - 1
	for from >= 0 {
		if _, list, is := header(d.lineAt(from + 1)); is {
			inRow = list
			break
		}
		from--
	}
	if from < 0 || !inRow {
		return 0, 0, false
	}
	to = from + 1
	for to < len(d.lines) && !isHeader(d.lines[to]) {
		to++
	}
	return from, to, true
}

func isHeader(line string) bool {
	_, _, is := header(line)
	return is
}

// CanChangeRows reports whether a line is in a row, of which there may be more or fewer.
func (d Draft) CanChangeRows(line int) bool {
	from, _, inRow := d.block(line)
	if !inRow {
		return false
	}
	name, _, _ := header(d.lines[from])
	return strings.Contains(name, ".")
}

// AddRow is the draft with the row of a line once more after it, to be changed, and the line where it
// begins.
func (d Draft) AddRow(line int) (Draft, int) {
	from, to, inRow := d.block(line)
	if !inRow {
		return d, line
	}
	row := slices.Clone(d.lines[from:to])
	if strings.TrimSpace(row[len(row)-1]) != "" {
		row = append([]string{""}, row...)
	}
	added := d.with(to, 0, row...)
	for at := to; at < len(added.lines); at++ {
		if _, _, is := pair(added.lines[at]); is {
			return added, at + 1
		}
	}
	return added, line
}

// RemoveRow is the draft without the row of a line.
func (d Draft) RemoveRow(line int) Draft {
	from, to, inRow := d.block(line)
	if !inRow {
		return d
	}
	return d.with(from, to-from)
}

// Check reads the draft exactly as a file is read, under a name. Mistakes are at their lines.
func (d Draft) Check(name string) (*rates.Edition, tomlfile.Problems) {
	e, err := rates.Read(name, d.Text())
	if err == nil {
		return e, nil
	}
	var problems tomlfile.Problems
	if errors.As(err, &problems) {
		return nil, problems
	}
	return nil, tomlfile.Problems{{File: name, What: message.Of(err)}}
}

// SameFigures reports whether nothing was changed but the head: an example taken as it is.
func (d Draft) SameFigures() bool {
	return digest.Of(figuresOf(d.lines)) == digest.Of(figuresOf(dropComments(strings.Split(strings.TrimRight(string(d.base.Text), "\n"), "\n"))))
}

// figuresOf is the part of a text under its head.
func figuresOf(lines []string) []byte {
	var out strings.Builder
	for _, f := range (Draft{lines: lines}).Figures() {
		if f.Table != "edition" && f.Table != "origin" {
			out.WriteString(strings.Join([]string{f.Table, f.Key, f.Value}, "\x00") + "\n")
		}
	}
	return []byte(out.String())
}
