package message

import (
	"fmt"
	"slices"
	"strings"
)

// Sayable is implemented by values with a text: a text, a kind, an error of a type that callers
// test for.
type Sayable interface{ Message() Text }

// Own is a name or words that a person has typed. They are the same in every
// language, even where they happen to be a word of the program.
type Own string

// Text is a sentence or a label with its arguments. The zero Text is empty.
type Text struct {
	key  string
	args []any
	form form
	part part
}

// form is the way key and arguments are combined.
type form uint8

const (
	formatted form = iota // the key is a format
	literal               // the key is the words
	list                  // the key separates the arguments
	counted               // the first argument chooses between one and many
	named                 // the key is a name
)

// New makes a text from its English format, with the verbs of package fmt: %s for a text, an amount
// or a date, %d for a whole number, %v or %q for a name. A string for %s is looked up like a key,
// so use %v or [Own] for a name.
//
// Where one English text needs two in another language, a context in small letters distinguishes
// the keys: "screen|Day sheet" is printed "Day sheet" in English.
func New(english string, args ...any) Text {
	if false {
		_ = fmt.Sprintf(english, args...) // never done: it lets go vet check every call
	}
	return Text{key: english, args: args}
}

// Words is a text without arguments, whose percent signs are percent signs.
func Words(english string) Text { return Text{key: english, form: literal} }

// Name is a name or a person's own words as a text, the same in every language.
func Name[S ~string](name S) Text { return Text{key: string(name), form: named} }

// Count is a text about a number of things, with a format for one and another for
// any other number. The number is the first argument of both. A catalog has it by
// the format of many, with a form for each of the plurals of its language.
func Count(n int, one, many string, args ...any) Text {
	return Text{key: many, args: append([]any{n, one}, args...), form: counted}
}

// List is texts, names or amounts with a separator between, those that say nothing
// left out. Separators such as " and " are keys of their own.
func List(separator string, items ...any) Text {
	items = slices.DeleteFunc(slices.Clone(items), func(item any) bool { return english(item) == "" })
	return Text{key: separator, args: items, form: list}
}

// Names is a list of names.
func Names[S ~string](separator string, names []S) Text {
	items := make([]any, len(names))
	for i, name := range names {
		items[i] = Own(name)
	}
	return List(separator, items...)
}

// Texts is a list of things with words of their own.
func Texts[S Sayable](separator string, all []S) Text {
	items := make([]any, len(all))
	for i, one := range all {
		items[i] = one.Message()
	}
	return List(separator, items...)
}

// Stopped is the text of an error as a sentence: with a full stop, unless it ends in one or in a mark
// like it.
func Stopped(t Text) Text {
	words := strings.TrimSpace(t.String())
	if words == "" || strings.ContainsAny(words[len(words)-1:], ".?!:") {
		return t
	}
	return New("%s.", t)
}

// Message is the text itself.
func (t Text) Message() Text { return t }

// Key returns the key of the text in the catalogs.
func (t Text) Key() string { return t.key }

// Args are the arguments of the text.
func (t Text) Args() []any {
	if t.form == counted {
		return append([]any{t.args[0]}, t.args[2:]...)
	}
	return t.args
}

// IsZero reports whether the text is empty.
func (t Text) IsZero() bool { return len(t.args) == 0 && (t.key == "" || t.form == list) }

// Equal reports whether two texts say the same in English.
func (t Text) Equal(o Text) bool { return t.String() == o.String() }

// String is the text in English.
func (t Text) String() string {
	switch t.form {
	case named:
		return t.key
	case literal:
		return withoutContext(t.key)
	case list:
		words := make([]string, len(t.args))
		for i, item := range t.args {
			words[i] = english(item)
		}
		return strings.Join(words, t.key)
	case counted:
		return t.only(written(t.marked(t.format()), t.Args()))
	}
	return t.only(written(t.marked(t.format()), t.args))
}

// format is the English format for the arguments.
func (t Text) format() string {
	if t.form == counted && t.args[0] == 1 {
		return withoutContext(t.args[1].(string))
	}
	return withoutContext(t.key)
}

// withoutContext is the English of a key.
func withoutContext(key string) string {
	context, english, there := strings.Cut(key, "|")
	if there && context != "" && strings.Trim(context, "abcdefghijklmnopqrstuvwxyz") == "" {
		return english
	}
	return key
}

// written formats the English text. Arguments that are [Sayable] are formatted as their text, as is
// an error set by %w.
func written(format string, args []any) string {
	if len(args) == 0 && !strings.Contains(format, "%") {
		return format
	}
	plain := make([]any, 0, 8) // hardly a text has more, so they stay on the stack
	for _, arg := range args {
		switch said := arg.(type) {
		case Sayable:
			arg = said.Message().String()
		case error:
			arg = said.Error()
		}
		plain = append(plain, arg)
	}
	return fmt.Sprintf(strings.ReplaceAll(format, "%w", "%s"), plain...)
}

// english formats a single argument.
func english(arg any) string {
	switch arg := arg.(type) {
	case nil:
		return ""
	case string:
		return arg
	case Sayable:
		return arg.Message().String()
	}
	return fmt.Sprint(arg)
}

// MarshalText returns the English text: stored or sent data does not depend on a language.
func (t Text) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// UnmarshalText reads words back as they are; which key and arguments made them
// is not known any more.
func (t *Text) UnmarshalText(words []byte) error {
	*t = Words(string(words))
	return nil
}
