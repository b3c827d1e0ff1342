package main

import (
	"reflect"
	"strings"
	"testing"

	"github.com/alecthomas/kong"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
)

// The help of every command, argument and flag is in every catalog.
func TestHelpIsInTheCatalogs(t *testing.T) {
	for _, code := range i18n.Codes()[1:] {
		catalog, _ := i18n.Catalog(code)
		var c commands
		parser, err := kong.New(&c, kong.Name("tenth"), kong.Description(about), groups, named)
		if err != nil {
			t.Fatal(err)
		}
		p := message.NewPrinter(catalog)
		translate(parser.Model, p)
		if n := nodes(parser.Model.Node); n < 70 {
			t.Fatalf("only %d commands were looked at", n)
		}
		if lost := p.Missing(); len(lost) > 0 {
			t.Errorf("%s: %d texts are said in English:\n%s", code, len(lost), strings.Join(lost, "\n-----\n"))
		}
	}
}

// The headings of a page of help are of the language too.
func TestHelpHasNoEnglishHeading(t *testing.T) {
	for _, args := range [][]string{{"show", "--help"}, {"--help"}} {
		var out strings.Builder
		var c commands
		parser, err := kong.New(&c, kong.Name("tenth"), kong.Description(about), kong.Writers(&out, &out), kong.Exit(func(int) { panic("printed") }), groups, named,
			kong.Help(func(o kong.HelpOptions, line *kong.Context) error { return printHelp(o, line, i18n.In("fr")) }))
		if err != nil {
			t.Fatal(err)
		}
		func() {
			defer func() { _ = recover() }() // the page is printed, and the program would end
			_, _ = parser.Parse(args)
		}()
		for _, line := range strings.Split(out.String(), "\n") {
			for _, head := range []string{"Usage:", "Arguments:", "Flags:", "Commands:", "Run \""} {
				if strings.HasPrefix(line, head) {
					t.Errorf("%s: %q", args, line)
				}
			}
		}
		if !strings.HasPrefix(out.String(), i18n.In("fr").Word("Usage:")) {
			t.Errorf("%s prints %q", args, out.String())
		}
	}
}

// A command whose help is in no catalog is found.
func TestHelpInTheCatalogsCanFail(t *testing.T) {
	var c struct {
		One one `cmd:"" help:"Nobody has said this in French."`
	}
	parser, err := kong.New(&c)
	if err != nil {
		t.Fatal(err)
	}
	catalog, _ := i18n.Catalog("fr")
	p := message.NewPrinter(catalog)
	translate(parser.Model, p)
	want := []string{"Nobody has said this in French.", "Nor this, which is longer."}
	if lost := p.Missing(); !reflect.DeepEqual(lost, want) {
		t.Errorf("lost are %q, want %q", lost, want)
	}
}

type one struct{}

func (one) Help() string { return "Nor this, which is longer." }

func (one) Run() error { return nil }

// nodes counts a command and all below it.
func nodes(n *kong.Node) int {
	count := 1
	for _, child := range n.Children {
		count += nodes(child)
	}
	return count
}
