package book

import (
	"fmt"
	"path/filepath"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/imports"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse/intake"
)

// Import takes lists over that were kept elsewhere.
type Import struct {
	terminal.BookFlags
	terminal.WhoFlags
	Kind        string `arg:"" help:"What the list is of: growers, trucks, loads or temperatures." enum:"growers,trucks,loads,temperatures"`
	File        string `arg:"" optional:"" help:"Comma-separated values with a heading row." placeholder:"FILE"`
	Example     bool   `help:"Print a list of this kind to begin from, and do nothing else."`
	Preview     bool   `help:"Say what would be done, and do nothing."`
	LeaveBadOut bool   `help:"Take the good rows and leave the others out."`
	JSON        bool   `help:"Print for programs: every figure as text."`
}

func (Import) Help() string {
	return `Everything that is wrong is said by line and column before anything is written. Then all of it goes into the book, or nothing: after a power cut there is no half. Past loads are settled under the rates of their day and get new numbers; their old ones stand in the remark. The same file is not taken over twice.

    tenth import growers --example > growers.csv
    tenth import growers growers.csv --preview
    tenth import loads season.csv --leave-bad-out --who "Mae Orton"
    tenth import temperatures cables.csv --preview`
}

func (c Import) Run(t *terminal.Terminal) error {
	kind := imports.Kind(c.Kind)
	if c.Example {
		fmt.Fprint(t.Stdout, imports.Example(kind))
		return nil
	}
	if c.File == "" {
		return terminal.Refusal("Name one, or ask for an example with --example", "no file is named")
	}
	text, err := intake.ReadFile(c.File)
	if err != nil {
		return err
	}
	how := terminal.ReadWrite
	if c.Preview {
		how = terminal.ReadOnly
	}
	return c.WithBook(t, how, c.Who, func(p *terminal.Session) error {
		list, problems, err := intake.Preview(p, p.Desk, kind, filepath.Base(c.File), text)
		if err != nil {
			return err
		}
		if len(problems) > 0 {
			return listProblems{c.File, problems}
		}
		if c.Preview {
			return preview(p, c, list)
		}
		taken, left, err := intake.Take(p, p.Desk, list, c.LeaveBadOut, progress(p, "rows"))
		if err != nil {
			return err
		}
		if c.JSON {
			return p.PrintJSON(map[string]string{"taken": fmt.Sprint(taken), "left_out": fmt.Sprint(left)})
		}
		p.Say("%d rows of %s are in the book, %d were left out.", taken, c.File, left)
		return nil
	})
}

// listProblems are the problems of a file, each a complaint.
type listProblems struct {
	file     string
	problems []imports.Problem
}

// Error returns every problem on a line of its own, in English.
func (l listProblems) Error() string { return l.Message().String() }

// Message returns every problem on a line of its own.
func (l listProblems) Message() message.Text {
	lines := make([]any, len(l.problems))
	for i, p := range l.problems {
		lines[i] = message.New("%v, %s", l.file, p)
	}
	return message.List("\n", lines...)
}

// progress shows the progress of long work on a terminal.
func progress(p *terminal.Session, what string) func(done, all int) {
	const every = 500
	return func(done, all int) {
		if p.Typing && done%every == 0 {
			fmt.Fprintln(p.Stderr, p.Printer.Say("%d of %d %s", done, all, what))
		}
	}
}

// preview prints row by row what a list would change.
func preview(p *terminal.Session, c Import, list intake.List) error {
	rows := [][]any{}
	for i, r := range list.Rows {
		change := list.Change[i]
		if !change.IsZero() {
			rows = append(rows, []any{fmt.Sprint(r.Line), change, ""})
		}
		for _, one := range r.Remarks {
			rows = append(rows, []any{fmt.Sprint(r.Line), message.New("look again"), message.New("%v: %s", one.Column, one.Reason)})
		}
		for _, one := range r.Problems {
			rows = append(rows, []any{fmt.Sprint(r.Line), message.New("cannot be taken"), message.New("%v: %s", one.Column, one.Reason)})
		}
	}
	if err := p.Table(terminal.ListFlags{JSON: c.JSON}, "Line\tWhat\tProblem", rows, "The list has no rows."); err != nil || c.JSON {
		return err
	}
	p.Say("%d of %d rows can be taken over. Nothing was written.", list.Good(), len(list.Rows))
	return nil
}
