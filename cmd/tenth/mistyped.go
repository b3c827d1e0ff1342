package main

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"github.com/alecthomas/kong"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
)

// mistyped turns a fault of the command line into a complaint with the way to the command's help.
// What is wrong is found in the commands and the words typed, so that it can be said in every
// language; the parser's own sentence is the last resort.
func mistyped(err error) error {
	var own terminal.Complaint
	if errors.As(err, &own) {
		return own
	}
	what, name := message.Name(err.Error()), "tenth"
	var parse *kong.ParseError
	if errors.As(err, &parse) && parse.Context != nil {
		if selected := parse.Context.Selected(); selected != nil {
			name = "tenth " + selected.Path()
		}
		if found := wrongIn(parse.Context, err); !found.IsZero() {
			what = found
		}
	}
	return terminal.Advised(what, message.New("Type \"%v --help\" to see what it takes", name))
}

// wrongIn says what is wrong in a command line; nothing where it cannot be told.
func wrongIn(line *kong.Context, err error) message.Text {
	var said *message.Error
	switch {
	case line.Error != nil:
		return stoppedAt(line, err)
	case errors.As(err, &said):
		return said.Message()
	}
	return lackingIn(line)
}

// stoppedAt says what is wrong with the word that parsing stopped at: the first after all that was
// understood.
func stoppedAt(line *kong.Context, err error) message.Text {
	rest := line.Path[len(line.Path)-1].Remainder()
	noFlags := slices.Contains(line.Args[:max(0, len(line.Args)-len(rest))], "--")
	if len(rest) > 0 && rest[0] == "--" && !noFlags {
		rest, noFlags = rest[1:], true
	}
	switch node := reached(line); {
	case len(rest) == 0:
		return message.Text{}
	case !noFlags && isFlag(rest[0]):
		return wrongFlag(flagsAt(line, node), rest, err)
	default:
		return wrongWord(line, node, rest[0], err)
	}
}

// reached is the command that parsing had come to.
func reached(line *kong.Context) *kong.Node {
	node := line.Model.Node
	for _, part := range line.Path {
		if n := part.Node(); n != nil {
			node = n
		}
	}
	return node
}

func isFlag(word string) bool { return len(word) > 1 && word[0] == '-' }

// flagsAt are the flags that can follow: of the command, of those above it, and of the one it
// stands for.
func flagsAt(line *kong.Context, node *kong.Node) []*kong.Flag {
	flags := line.Flags()
	if standsFor := node.DefaultCmd; standsFor != nil && standsFor.Tag.Default == "withargs" {
		flags = append(flags, standsFor.Flags...)
	}
	return flags
}

// wrongFlag says what is wrong with the flag at the beginning of words.
func wrongFlag(flags []*kong.Flag, words []string, err error) message.Text {
	word, value, joined := strings.Cut(words[0], "=")
	name, long := strings.CutPrefix(word, "--")
	at := slices.IndexFunc(flags, func(f *kong.Flag) bool {
		return long && f.Name == name || !long && f.Short != 0 && strings.HasPrefix(word, "-"+string(f.Short))
	})
	switch {
	case at < 0:
		return unknownFlag(flags, word)
	case !long:
		return message.Text{}
	case joined || flags[at].IsBool():
	case len(words) == 1:
		return message.New("%v needs a value", word)
	case isFlag(words[1]):
		return message.New("%v needs a value, and %v looks like a flag; if it is the value, type %v=%v", word, words[1], word, words[1])
	default:
		value = words[1]
	}
	return wrongValue(flags[at].Value, value, err)
}

func unknownFlag(flags []*kong.Flag, word string) message.Text {
	var names []string
	for _, f := range flags {
		if !f.Hidden {
			names = append(names, f.Name)
		}
	}
	near := terminal.Nearest(strings.TrimLeft(word, "-"), names)
	if len(near) == 0 {
		return message.New("unknown flag %v", word)
	}
	for i, name := range near {
		near[i] = "--" + name
	}
	return message.New("unknown flag %v, did you mean %s?", word, message.Names(" or ", near))
}

// wrongWord says what is wrong with a word that is no flag: an argument, a command or one too many.
func wrongWord(line *kong.Context, node *kong.Node, word string, err error) message.Text {
	given := 0
	for _, part := range line.Path {
		if part.Positional != nil && part.Parent == node {
			given++
		}
	}
	if given < len(node.Positional) {
		return wrongValue(node.Positional[given], word, err)
	}
	names := commandNames(asTyped(line, node))
	switch near := terminal.Nearest(word, names); {
	case slices.Contains(names, word): // flags before it are of the command taken for want of it
		return message.New("type the command %v before its flags", word)
	case len(near) > 0:
		return message.New("unknown command %v, did you mean %s?", word, message.Names(" or ", near))
	case node.Leaf():
		return message.New("unexpected argument %v", word)
	}
	return message.New("unknown command %v", word)
}

// asTyped is the group that was typed where a command of it was taken for want of another.
func asTyped(line *kong.Context, node *kong.Node) *kong.Node {
	if group := node.Parent; group != nil && group.DefaultCmd == node && !slices.Contains(line.Args, node.Name) {
		return group
	}
	return node
}

func commandNames(node *kong.Node) []string {
	var names []string
	for _, child := range node.Children {
		if !child.Hidden {
			names = append(names, child.Name)
		}
	}
	return names
}

// wrongValue says why a value is not taken: in the words of what reads it, or by the type it has to
// have.
func wrongValue(v *kong.Value, text string, err error) message.Text {
	var said *message.Error
	if errors.As(err, &said) {
		return message.New("%v: %s", v.ShortSummary(), said)
	}
	switch {
	case v.IsBool():
		return message.New("%v takes yes or no, not %q", v.ShortSummary(), text)
	case v.Target.CanInt():
		if _, bad := strconv.ParseInt(text, 0, v.Target.Type().Bits()); errors.Is(bad, strconv.ErrRange) {
			return message.New("%v takes no number as large as %v", v.ShortSummary(), text)
		}
		return message.New("%v takes a whole number, not %q", v.ShortSummary(), text)
	}
	return message.Text{}
}
