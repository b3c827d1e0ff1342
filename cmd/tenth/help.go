package main

import (
	"github.com/alecthomas/kong"

	"tenthpoint/internal/message"
)

// translate translates the help of every command and flag.
func translate(app *kong.Application, p *message.Printer) {
	if p == nil {
		return
	}
	if app.HelpFlag != nil {
		app.HelpFlag.Help = p.Whole(app.HelpFlag.Help)
	}
	translateNode(app.Node, p)
}

func translateNode(n *kong.Node, p *message.Printer) {
	n.Help, n.Detail = p.Whole(n.Help), p.Whole(n.Detail)
	for _, f := range n.Flags {
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
		translateNode(child, p)
	}
}
