package main

import (
	"github.com/alecthomas/kong"

	"tenthpoint/internal/message"
)

// translate puts the help of every command and flag into a language.
func translate(app *kong.Application, p *message.Printer) {
	if p == nil {
		return
	}
	if app.HelpFlag != nil {
		app.HelpFlag.Help = p.Word(app.HelpFlag.Help)
	}
	translateNode(app.Node, p)
}

func translateNode(n *kong.Node, p *message.Printer) {
	n.Help, n.Detail = p.Word(n.Help), p.Word(n.Detail)
	for _, f := range n.Flags {
		f.Help = p.Word(f.Help)
		if f.Group != nil {
			f.Group.Title = p.Word(f.Group.Title)
		}
	}
	for _, arg := range n.Positional {
		arg.Help = p.Word(arg.Help)
	}
	if n.Group != nil {
		n.Group.Title = p.Word(n.Group.Title)
	}
	for _, child := range n.Children {
		translateNode(child, p)
	}
}
