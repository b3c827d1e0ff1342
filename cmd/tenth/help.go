package main

import (
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
		f.Help = p.Whole(f.Help)
		if f.Group != nil {
			f.Group.Title = p.Whole(f.Group.Title)
		}
	}
	for _, arg := range n.Positional {
		arg.Help = p.Whole(arg.Help)
	}
	if n.Group != nil {
		n.Group.Title = p.Whole(n.Group.Title)
	}
	for _, child := range n.Children {
		translateNode(child, p, said)
	}
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
