package program

import (
	"fmt"
	"slices"
	"strings"

	"github.com/alecthomas/kong"

	"tenthpoint/cmd/tenth/terminal"
)

// scripts asks tenth itself what can follow, in the words of each shell.
var scripts = map[string]string{
	"bash": `# bash completion for tenth
_tenth() {
    local IFS=$'\n'
    COMPREPLY=($(tenth complete -- "${COMP_WORDS[@]:1:COMP_CWORD}" 2>/dev/null))
}
complete -o default -F _tenth tenth
`,
	"zsh": `#compdef tenth
_tenth() {
    local -a said
    said=("${(@f)$(tenth complete -- "${(@)words[2,CURRENT]}" 2>/dev/null)}")
    if [[ -n "$said" ]]; then compadd -a said; else _files; fi
}
_tenth "$@"
`,
	"fish": `# fish completion for tenth
complete -c tenth -a '(tenth complete -- (commandline -opc)[2..] (commandline -ct) 2>/dev/null)'
`,
}

// Completion writes the script that lets a shell complete commands, flags and their choices.
type Completion struct {
	Shell string `arg:"" help:"The shell: bash, zsh or fish." enum:"bash,zsh,fish"`
}

func (Completion) Help() string {
	return `A package of the program has the scripts in their places.

    tenth completion bash > ~/.local/share/bash-completion/completions/tenth`
}

// Run writes the script.
func (c Completion) Run(t *terminal.Terminal) error {
	_, err := fmt.Fprint(t.Stdout, scripts[c.Shell])
	return err
}

// Complete prints what can stand in place of the last of the words, a line each.
type Complete struct {
	Words []string `arg:"" optional:"" help:"The words typed so far, the unfinished one last."`
}

// Run prints them.
func (c Complete) Run(line *kong.Context, t *terminal.Terminal) error {
	for _, word := range candidates(line.Model.Node, c.Words) {
		fmt.Fprintln(t.Stdout, word)
	}
	return nil
}

// candidates lists what can stand in place of the last word; nothing where a name or a figure is
// to be typed, so that the shell offers files.
func candidates(n *kong.Node, words []string) []string {
	if len(words) == 0 {
		words = []string{""}
	}
	typed, last := words[:len(words)-1], words[len(words)-1]
	var waiting *kong.Flag // its value is to come
	for _, word := range typed {
		if waiting != nil {
			waiting = nil
			continue
		}
		if strings.HasPrefix(word, "-") {
			waiting = wantsValue(n, word)
		} else if child := childNamed(n, word); child != nil {
			n = child
		}
	}
	if waiting != nil {
		return beginning(waiting.EnumSlice(), last)
	}
	if strings.HasPrefix(last, "-") {
		return beginning(flagsOf(n), last)
	}
	return beginning(commandsOf(n), last)
}

// wantsValue is the flag of a word whose value is the next word.
func wantsValue(n *kong.Node, word string) *kong.Flag {
	if n.DefaultCmd != nil {
		n = n.DefaultCmd
	}
	for at := n; at != nil; at = at.Parent {
		for _, flag := range at.Flags {
			if "--"+flag.Name == word && !flag.IsBool() {
				return flag
			}
		}
	}
	return nil
}

func childNamed(n *kong.Node, word string) *kong.Node {
	for _, child := range n.Children {
		if child.Name == word || slices.Contains(child.Aliases, word) {
			return child
		}
	}
	return nil
}

func commandsOf(n *kong.Node) []string {
	var names []string
	for _, child := range n.Children {
		if !child.Hidden {
			names = append(names, child.Name)
		}
	}
	for _, arg := range n.Positional {
		names = append(names, arg.EnumSlice()...)
	}
	return names
}

// flagsOf lists the flags of a command and of those above it; of a group, those of the command that
// it stands for.
func flagsOf(n *kong.Node) []string {
	if n.DefaultCmd != nil {
		n = n.DefaultCmd
	}
	var names []string
	for at := n; at != nil; at = at.Parent {
		for _, flag := range at.Flags {
			if !flag.Hidden {
				names = append(names, "--"+flag.Name)
			}
		}
	}
	return names
}

// beginning keeps the words that begin with what is typed.
func beginning(words []string, typed string) []string {
	var kept []string
	for _, word := range words {
		if word != "" && strings.HasPrefix(word, typed) {
			kept = append(kept, word)
		}
	}
	return kept
}
