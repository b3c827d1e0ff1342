package law

import (
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// How says how a rule was read into its file.
type How string

// The ways a rule is known.
const (
	Read       How = "read"            // in the document cited
	FromMemory How = "from memory"     // nobody has read it; it decides nothing
	Practice   How = "common practice" // no single source
)

// File is one dated file of rules.
type File struct {
	ID, Title    string
	Kind         string        // the kind of rule: "grades", "recording"
	Jurisdiction string        // "us", "canada"
	Subject      string        // one grain of a kind that has a file for each; else empty
	From, Until  quantity.Date // days in force; zero: before any ticket, and until replaced
	Citation     string
	How          How
	Note         string

	Name string // of the file, for messages
	Text []byte // as read
	Hash string // SHA-256 of Text, in hex
}

// Open reads the heading of a file. The error is a [tomlfile.Problems] with
// every mistake in it; the rest is for [File.Read].
func Open(name string, text []byte) (*File, error) {
	f := &File{Name: name, Text: slices.Clone(text), Hash: digest.Of(text)}
	toml := tomlfile.Parse(name, text)
	if err := toml.Problems().Err(); err != nil {
		return nil, err
	}
	f.heading(toml.Root())
	if err := toml.Problems().Err(); err != nil {
		return nil, err
	}
	return f, nil
}

// Read reads the body, below the heading. The error is a [tomlfile.Problems] with every mistake in
// the file, keys that body has not asked for among them.
func (f *File) Read(body func(t *tomlfile.Table)) error {
	toml := tomlfile.Parse(f.Name, f.Text)
	(&File{}).heading(toml.Root())
	return toml.Read(body)
}

func (f *File) heading(root *tomlfile.Table) {
	t, _ := root.Table("law", true)
	f.ID, f.Title = t.Text("id"), t.Text("title")
	f.Kind, f.Jurisdiction, f.Subject = t.Text("kind"), t.Text("jurisdiction"), t.OptionalText("subject")
	f.From, f.Until = t.OptionalDate("from"), t.OptionalDate("until")
	f.Citation, f.Note = t.Text("citation"), t.OptionalText("note")
	f.How = How(t.Choice("read", string(Read), string(FromMemory), string(Practice)))
	if strings.Trim(f.ID, nameLetters) != "" {
		t.AddProblem("id", message.New("%s is %q", t.Name("id"), f.ID), message.New("Small letters, digits and hyphens only: tickets refer to it."))
	}
	if strings.Trim(f.Jurisdiction, nameLetters) != "" {
		t.AddProblem("jurisdiction", message.New("%s is %q", t.Name("jurisdiction"), f.Jurisdiction), message.New("Small letters, digits and hyphens only, such as us or canada: houses follow it by that name."))
	}
	if !f.Until.IsZero() && f.Until.Before(f.From) {
		t.AddProblem("until", message.New("the rule ends on %s, before it begins on %s", f.Until, f.From), message.New("Swap the two days, or leave until out."))
	}
}

const nameLetters = "abcdefghijklmnopqrstuvwxyz0123456789-"

// place identifies the series in which files replace each other.
func (f *File) place() string { return f.Jurisdiction + "/" + f.Kind + "/" + f.Subject }

func (f *File) inForce(day quantity.Date) bool { return day.Between(f.From, f.Until) }

// Period is the days in force for people.
func (f *File) Period() message.Text {
	switch {
	case f.From.IsZero() && f.Until.IsZero():
		return message.New("in force until replaced")
	case f.From.IsZero():
		return message.New("in force until %s", f.Until)
	case f.Until.IsZero():
		return message.New("in force from %s", f.From)
	}
	return message.New("in force from %s to %s", f.From, f.Until)
}

// Days reads a required whole number of days, 1 or more.
func Days(t *tomlfile.Table, key string) int {
	text := t.Text(key)
	days, err := strconv.Atoi(text)
	if text != "" && (err != nil || days < 1 || days > mostDays) {
		t.AddProblem(key, message.New("%s is %q", t.Name(key), text), message.New("Write a whole number of days in quotes, from 1 to 3660."))
		return 0
	}
	return days
}

// mostDays is ten years, more than anything here waits.
const mostDays = 3660

// HowOf reads how one rule of a file is known, if the rule has its own note.
func HowOf(t *tomlfile.Table, otherwise How) How {
	if !t.Has("read") {
		return otherwise
	}
	return How(t.Choice("read", string(Read), string(FromMemory), string(Practice)))
}
