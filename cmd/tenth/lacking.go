package main

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"tenthpoint/internal/message"
)

// lackingIn says what is wrong in a command line of which every word is understood: a value that is
// none of the choices, flags that are missing or exclude each other, an argument or a command that
// is missing.
func lackingIn(line *kong.Context) message.Text {
	node := line.Selected()
	if node == nil {
		node = line.Model.Node
	}
	for _, wrong := range []message.Text{noChoice(line), missingFlags(line.Flags()), missingArguments(node), missingCommand(node), excludeEachOther(line.Flags())} {
		if !wrong.IsZero() {
			return wrong
		}
	}
	return message.Text{}
}

// noChoice says which value given is none of its choices.
func noChoice(line *kong.Context) message.Text {
	for _, part := range line.Path {
		v := part.Positional
		if part.Flag != nil {
			v = part.Flag.Value
		}
		if v == nil || v.Enum == "" {
			continue
		}
		for _, text := range valuesOf(v.Target) {
			if choices := v.EnumSlice(); !slices.Contains(choices, text) {
				choices = slices.DeleteFunc(choices, func(one string) bool { return one == "" })
				return message.New("%v must be one of %s, not %q", v.ShortSummary(), message.Names(", ", choices), text)
			}
		}
	}
	return message.Text{}
}

// valuesOf are the values of an argument or flag as they are typed.
func valuesOf(target reflect.Value) []string {
	switch {
	case target.Kind() == reflect.Pointer && target.IsNil():
		return nil
	case target.Kind() == reflect.Pointer:
		return valuesOf(target.Elem())
	case target.Kind() != reflect.Slice:
		return []string{fmt.Sprint(target.Interface())}
	}
	var all []string
	for i := range target.Len() {
		all = append(all, valuesOf(target.Index(i))...)
	}
	return all
}

// missingFlags names the required flags not given; of those of which one is enough, all.
func missingFlags(flags []*kong.Flag) message.Text {
	given := map[string]bool{} // groups of which one is given
	for _, f := range flags {
		for _, group := range f.Xor {
			given[group] = given[group] || f.Set
		}
	}
	var missing []any
	named := map[string]bool{}
	for _, f := range flags {
		if !f.Required || f.Set || slices.ContainsFunc(f.Xor, func(group string) bool { return given[group] || named[group] }) {
			continue
		}
		for _, group := range f.Xor {
			named[group] = true
		}
		missing = append(missing, message.Names(" or ", insteadOf(f, flags)))
	}
	if len(missing) == 0 {
		return message.Text{}
	}
	return message.New("missing flags: %s", message.List(", ", missing...))
}

// insteadOf is a flag and those that can be given instead of it.
func insteadOf(flag *kong.Flag, flags []*kong.Flag) []string {
	var all []string
	for _, f := range flags {
		if f == flag || slices.ContainsFunc(f.Xor, func(group string) bool { return slices.Contains(flag.Xor, group) }) {
			all = append(all, f.Summary())
		}
	}
	return all
}

// excludeEachOther names two flags given of which only one can be.
func excludeEachOther(flags []*kong.Flag) message.Text {
	given := map[string]*kong.Flag{}
	for _, f := range flags {
		for _, group := range f.Xor {
			switch other := given[group]; {
			case !f.Set:
			case other == nil:
				given[group] = f
			default:
				return message.New("%v and %v cannot be given together", other.ShortSummary(), f.ShortSummary())
			}
		}
	}
	return message.Text{}
}

func missingArguments(node *kong.Node) message.Text {
	var missing []string
	for _, arg := range node.Positional {
		if arg.Required && !arg.Set {
			missing = append(missing, arg.Summary())
		}
	}
	if len(missing) == 0 {
		return message.Text{}
	}
	return message.New("expected %q", strings.Join(missing, " "))
}

// mostNamed is the most commands named where one is missing.
const mostNamed = 12

func missingCommand(node *kong.Node) message.Text {
	names := commandNames(node)
	switch {
	case len(names) == 0:
		return message.Text{}
	case len(names) > mostNamed:
		return message.New("expected a command")
	}
	return message.New("expected one of %s", message.Names(", ", names))
}
