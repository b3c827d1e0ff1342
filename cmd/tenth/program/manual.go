// Package program has what tenth says of itself: its manual page, and the words a shell completes.
// Both are made from the table of commands, so neither can name a flag that is not there.
package program

import (
	"fmt"
	"io"
	"strings"

	"github.com/alecthomas/kong"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/version"
)

// Manual writes the manual page of the whole program, in the roff of man(7).
type Manual struct{}

func (Manual) Help() string {
	return `Written for the man program. A package of the program has it in its place.

    tenth manual > tenth.1
    man ./tenth.1`
}

// Run writes the page.
func (Manual) Run(line *kong.Context, t *terminal.Terminal) error {
	return writeManual(t.Stdout, line.Model)
}

func writeManual(out io.Writer, app *kong.Application) error {
	var b strings.Builder
	fmt.Fprintf(&b, ".TH %s 1 \"\" \"tenthpoint %s\"\n", strings.ToUpper(app.Name), version.Number)
	fmt.Fprintf(&b, ".SH NAME\n%s \\- %s\n", app.Name, roff(firstSentence(app.Help)))
	fmt.Fprintf(&b, ".SH SYNOPSIS\n.B %s\n.I COMMAND\n[flags]\n", app.Name)
	b.WriteString(".SH DESCRIPTION\n")
	paragraphs(&b, app.Help)
	b.WriteString(".SH COMMANDS\n")
	for _, leaf := range leaves(app.Node) {
		writeCommand(&b, leaf)
	}
	_, err := io.WriteString(out, b.String())
	return err
}

// writeCommand writes one command with all it takes.
func writeCommand(b *strings.Builder, n *kong.Node) {
	fmt.Fprintf(b, ".SS %s\n", roff(n.FullPath()))
	paragraphs(b, n.Help)
	paragraphs(b, n.Detail)
	for _, arg := range n.Positional {
		fmt.Fprintf(b, ".TP\n.I %s\n%s\n", roff(arg.Summary()), roff(arg.Help))
	}
	for _, flag := range n.Flags {
		if !flag.Hidden {
			fmt.Fprintf(b, ".TP\n.B %s\n%s\n", roff(flag.Summary()), roff(flag.Help))
		}
	}
}

// leaves lists the commands that can be typed whole, in the order of the help.
func leaves(n *kong.Node) []*kong.Node {
	var all []*kong.Node
	for _, child := range n.Children {
		if !child.Hidden {
			all = append(all, leaves(child)...)
		}
	}
	if len(all) == 0 {
		return []*kong.Node{n}
	}
	return all
}

// paragraphs writes a page of help; what is set in from the margin stays as it is typed.
func paragraphs(b *strings.Builder, page string) {
	for _, one := range strings.Split(page, "\n\n") {
		switch {
		case one == "":
		case strings.HasPrefix(one, "    "):
			fmt.Fprintf(b, ".PP\n.nf\n%s\n.fi\n", roff(one))
		default:
			fmt.Fprintf(b, ".PP\n%s\n", roff(one))
		}
	}
}

// roff escapes a text: a backslash, a hyphen that is typed as one, and a line that would be read
// as a request of the formatter.
func roff(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(text)
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, ".") || strings.HasPrefix(line, "'") {
			lines[i] = `\&` + line
		}
	}
	return strings.Join(lines, "\n")
}

// firstSentence is the one line a page is found by.
func firstSentence(page string) string {
	line, _, _ := strings.Cut(page, "\n")
	return strings.TrimSuffix(line, ".")
}
