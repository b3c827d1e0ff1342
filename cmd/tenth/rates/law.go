package rates

import (
	"errors"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/paper/plain"
	"tenthpoint/internal/ratefiles"
)

// Law is what is published and dated: which rules are in force, and whether a
// file of them is in order.
type Law struct {
	List  lawList  `cmd:"" default:"withargs" help:"List the rules in force, today or on a day, with where each was read."`
	Check lawCheck `cmd:"" help:"Check files of law before they are used, alone and against each other."`
}

func (Law) Help() string {
	return `Rules of law are TOML files with the days they are in force. Those of the program are listed beside the house's own, which stand in the subfolder "law" of the folder of rates. A changed rule is a new file with a later first day. Every rule is to be confirmed locally: the program restates, it does not make law.

    tenth law
    tenth law list --on 2026-12-15
    tenth law check grades-corn-2027.toml`
}

type lawList struct {
	terminal.BookFlags
	On    string         `help:"The day to list for. Without it, today." placeholder:"YYYY-MM-DD"`
	All   bool           `help:"Also rules that are over or not yet in force."`
	Width terminal.Width `help:"Width of the page, in letters." default:"88"`
	JSON  bool           `help:"Print for programs: every figure as text."`
}

func (lawList) Help() string {
	return `    tenth law
    tenth law list --on 2026-12-15
    tenth law list --all --json`
}

func (c lawList) Run(t *terminal.Terminal) error {
	set, err := ratefiles.ReadLaws(c.RatesFolder())
	if err != nil {
		return err
	}
	day, err := dayOrToday(t, c.On)
	if err != nil {
		return err
	}
	files := set.All()
	if !c.All {
		inForce := set.On(day)
		files = inForce.Files()
	}
	if c.JSON {
		return t.PrintJSON(lawsJSON(files))
	}
	for _, f := range files {
		sayLaw(t, f, int(c.Width))
	}
	t.Say("\n%s", message.New(law.Confirm))
	return nil
}

// sayLaw says what a file of law is about, since when it holds, and how it is known.
func sayLaw(t *terminal.Terminal, f *law.File, width int) {
	t.Say("%s", f.ID)
	for _, one := range []message.Text{message.Words(f.Title), f.Period(), message.New("%s: %v", howOf(f.How), f.Citation)} {
		for _, line := range plain.Paragraph(t.Printer.Text(one), width-4) {
			t.Say("    %s", line)
		}
	}
}

// howOf says how a rule came into its file.
func howOf(how law.How) message.Text {
	switch how {
	case law.FromMemory:
		return message.New("written from memory, so it decides nothing")
	case law.Practice:
		return message.New("common practice")
	}
	return message.New("read in the document")
}

type lawCheck struct {
	terminal.BookFlags
	File []string `arg:"" optional:"" help:"Files of law. Without any, those of the house." placeholder:"FILE"`
	JSON bool     `help:"Print for programs: every figure as text."`
}

func (lawCheck) Help() string {
	return `Every mistake in every file is told with its line and what to do. When all can be read they are held against each other, against the house's own and against those of the program: no id twice, and no two about the same thing that begin on one day.

    tenth law check
    tenth law check grades-corn-2027.toml
    tenth law check retention.toml --json`
}

func (c lawCheck) Run(t *terminal.Terminal) error {
	folder := c.RatesFolder()
	paths := c.File
	if len(paths) == 0 {
		paths = ratefiles.LawFiles(folder)
	}
	files, err := ratefiles.CheckLaws(folder, paths)
	if c.JSON {
		return errors.Join(t.PrintJSON(map[string]any{"laws": lawsJSON(files), "problems": problemsJSON(err)}), counted(err))
	}
	if err != nil {
		return err
	}
	for _, f := range files {
		t.Say("%s: %s is in order: %s, %s.", f.Name, f.ID, strings.TrimSuffix(f.Title, "."), f.Period())
		if f.How == law.FromMemory {
			t.Say("    worth a second look: %s", howOf(f.How))
		}
	}
	if len(files) == 0 {
		t.Say("The house has no files of law of its own.")
	}
	return nil
}

// lawJSON is a file of law for programs.
type lawJSON struct {
	ID           string `json:"id"`
	Title        string `json:"title"`
	Kind         string `json:"kind"`
	Jurisdiction string `json:"jurisdiction"`
	Subject      string `json:"subject,omitempty"`
	From         string `json:"from,omitempty"`
	Until        string `json:"until,omitempty"`
	Read         string `json:"read"`
	Citation     string `json:"citation"`
	Confirm      string `json:"confirm"`
	File         string `json:"file,omitempty"`
	Hash         string `json:"sha256"`
}

func lawsJSON(files []*law.File) []lawJSON {
	out := []lawJSON{}
	for _, f := range files {
		out = append(out, lawJSON{
			ID: f.ID, Title: f.Title, Kind: f.Kind, Jurisdiction: f.Jurisdiction, Subject: f.Subject, From: f.From.String(), Until: f.Until.String(),
			Read: string(f.How), Citation: f.Citation, Confirm: law.Confirm, File: f.Name, Hash: f.Hash,
		})
	}
	return out
}
