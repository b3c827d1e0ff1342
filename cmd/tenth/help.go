package main

import (
	"errors"
	"io"
	"regexp"
	"strings"

	"github.com/alecthomas/kong"

	"tenthpoint/internal/message"
)

// translate translates the help of every command and flag.
func translate(app *kong.Application, p *message.Printer) {
	if p == nil {
		return
	}
	said := map[*kong.Flag]bool{} // a flag of all commands is met in each
	if app.HelpFlag != nil {
		app.HelpFlag.Help, said[app.HelpFlag] = p.Whole(app.HelpFlag.Help), true
	}
	translateNode(app.Node, p, said)
}

func translateNode(n *kong.Node, p *message.Printer, said map[*kong.Flag]bool) {
	n.Help, n.Detail = paragraphs(n.Help, p), paragraphs(n.Detail, p)
	for _, f := range n.Flags {
		if said[f] {
			continue
		}
		said[f] = true
		f.Help, f.PlaceHolder = p.Whole(f.Help), placeholder(f.PlaceHolder, p)
		if f.Group != nil {
			f.Group.Title = p.Whole(f.Group.Title)
		}
	}
	for _, arg := range n.Positional {
		arg.Help, arg.Name = p.Whole(arg.Help), strings.ToLower(placeholder(strings.ToUpper(arg.Name), p))
	}
	if n.Group != nil {
		n.Group.Title = p.Whole(n.Group.Title)
	}
	for _, child := range n.Children {
		translateNode(child, p, said)
	}
}

// aPlace is a word that stands in help for what is typed: WEIGHT, or each half of BIN=WEIGHT. Small
// letters, digits and signs are typed as they stand.
var aPlace = regexp.MustCompile(`[A-Z]{2,}(-[A-Z]+)*`)

// placeholder says the words that stand for what is typed.
func placeholder(text string, p *message.Printer) string {
	return aPlace.ReplaceAllStringFunc(text, func(word string) string { return p.Whole("typed|" + word) })
}

// paragraphs says a page of help, each of its paragraphs by itself. What is set in
// from the margin is typed as it stands, in every language.
func paragraphs(page string, p *message.Printer) string {
	all := strings.Split(page, "\n\n")
	for i, one := range all {
		if !strings.HasPrefix(one, "    ") {
			all[i] = p.Whole(one)
		}
	}
	return strings.Join(all, "\n\n")
}

// headsOfHelp begin lines of a page of help.
var headsOfHelp = []message.Text{message.New("Usage:"), message.New("Arguments:"), message.New("Flags:"), message.New("Commands:")}

// printHelp prints a page of help, its headings in the language too.
func printHelp(o kong.HelpOptions, line *kong.Context, p *message.Printer) error {
	if p == nil {
		return kong.DefaultHelpPrinter(o, line)
	}
	var page strings.Builder
	to := line.Stdout
	line.Stdout = &page
	err := kong.DefaultHelpPrinter(o, line)
	line.Stdout = to
	lines := strings.Split(page.String(), "\n")
	for i, text := range lines {
		lines[i] = headOfHelp(text, p)
	}
	_, failed := io.WriteString(to, strings.Join(lines, "\n"))
	return errors.Join(err, failed)
}

// headOfHelp says the words in a line of help that are not of the commands themselves.
func headOfHelp(line string, p *message.Printer) string {
	for _, head := range headsOfHelp {
		if rest, begins := strings.CutPrefix(line, head.String()); begins {
			return p.Text(head) + rest
		}
	}
	if rest, begins := strings.CutPrefix(line, "Run \""); begins {
		if command, ends := strings.CutSuffix(rest, "\" for more information on a command."); ends {
			return p.Say("Run \"%v\" for more information on a command.", command)
		}
	}
	return line
}
