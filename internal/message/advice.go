package message

import (
	"slices"
	"strings"
)

// part is the part of a text that is printed.
type part uint8

const (
	whole   part = iota
	problem      // without the advice at the end
	advice       // the advice alone
)

// Advice parts a text into what is wrong and the advice that its format ends with, if it does:
// "a ticket is voided only with a reason; type one". Formats are looked at, never their arguments,
// so that nothing a person has typed is taken for advice.
func (t Text) Advice() (what, todo Text) {
	if t.form != formatted && t.form != counted {
		return t, Text{}
	}
	if what, todo, there := t.adviceOfLast(); there {
		return what, todo
	}
	if t.adviceAt() < 0 {
		return t, Text{}
	}
	what, todo = t, t
	what.part, todo.part = problem, advice
	return what, todo
}

// adviceOfLast parts a text that ends with another one, which has the advice.
func (t Text) adviceOfLast() (what, todo Text, there bool) {
	format := strings.TrimSuffix(t.format(), ".")
	verbs := verbsOf(format)
	if len(verbs) == 0 || verbs[len(verbs)-1].to != len(format) {
		return Text{}, Text{}, false
	}
	last := verbs[len(verbs)-1].arg + len(t.args) - len(t.Args())
	if last >= len(t.args) {
		return Text{}, Text{}, false
	}
	inner := Text{}
	switch arg := t.args[last].(type) {
	case error:
		inner = Of(arg)
	case Sayable:
		inner = arg.Message()
	}
	innerWhat, todo := inner.Advice()
	if todo.IsZero() {
		return Text{}, Text{}, false
	}
	what = t
	what.args = slices.Clone(t.args)
	what.args[last] = innerWhat
	return what, todo, true
}

// adviceAt returns where the advice of the English format begins, with what parts it from the rest: its
// last sentence, or in one of one sentence what follows the last semicolon; -1 if it has none.
func (t Text) adviceAt() int {
	format := t.format()
	for _, between := range []string{". ", "; "} {
		if at := strings.LastIndex(format, between); at >= 0 && isAdvice(t.opened(format[at+len(between):])) {
			return at
		}
	}
	return -1
}

// opened is the end of a format; where that is one other text alone, the format of this.
func (t Text) opened(end string) string {
	if end != "%s" {
		return end
	}
	if said, is := t.Args()[len(t.Args())-1].(Text); is {
		return said.format()
	}
	return end
}

// explains are words that begin an explanation rather than advice.
var explains = []string{"nothing", "it", "the", "this", "they", "there", "in", "so", "known", "a", "editions", "that"}

func isAdvice(text string) bool {
	first, _, more := strings.Cut(text, " ")
	first = strings.ToLower(strings.Trim(first, ".,:"))
	return more && !slices.Contains(explains, first) && strings.Trim(first, "abcdefghijklmnopqrstuvwxyz") == ""
}

// partMark stands in a format where its advice begins.
const partMark = "\x00"

// marked is a format of the text in some language, with a mark where the advice begins if only a part
// of it is to be printed. A translation parts its sentences where the English does.
func (t Text) marked(format string) string {
	if t.part == whole {
		return format
	}
	at := max(strings.LastIndex(format, ". "), strings.LastIndex(format, "; "))
	if format == t.format() {
		at = t.adviceAt()
	}
	if at < 0 {
		return format
	}
	return strings.TrimRight(format[:at], " \u00a0\u202f") + partMark + format[at+len("; "):]
}

// only is the part of the finished text that is printed.
func (t Text) only(said string) string {
	if t.part == whole {
		return said
	}
	what, todo, _ := strings.Cut(said, partMark)
	if t.part == problem {
		return what
	}
	return todo
}
