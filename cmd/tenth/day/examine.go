package day

import (
	"os"
	"path/filepath"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/office/examiner"
	"tenthpoint/internal/report"
)

// Examine writes the examiner's papers into a folder.
type Examine struct {
	terminal.BookFlags
	terminal.WhoFlags
	From  string `required:"" help:"First day of the period." placeholder:"YYYY-MM-DD"`
	To    string `required:"" help:"Last day of the period." placeholder:"YYYY-MM-DD"`
	Dir   string `required:"" help:"The folder to make; it must not be there yet, or be empty." placeholder:"DIR"`
	Sheet string `help:"Size of the PDFs' pages." enum:"letter,a4" default:"letter"`
	JSON  bool   `help:"Print for programs: every figure as text."`
}

func (Examine) Help() string {
	return `Every register as PDF and as comma-separated values, the sheet of every day, the rates in force, the state of the journal, an index and the hash of each file. The hashes are written last: a folder without them is not whole.

    tenth examine --from 2026-10-01 --to 2026-10-31 --dir october
    cd october && sha256sum -c SHA256SUMS`
}

func (c Examine) Run(t *terminal.Terminal) error {
	return c.WithBook(t, terminal.ReadOnly, c.Who, func(p *terminal.Session) error {
		from, to, err := p.Span(c.From, c.To)
		if err != nil {
			return err
		}
		if err := emptyFolder(c.Dir); err != nil {
			return err
		}
		files, err := examiner.Papers(p, p.Desk, from, to, report.Page{Paper: report.Paper(c.Sheet)}, nil)
		if err != nil {
			return err
		}
		names := []string{}
		for _, f := range files {
			path := filepath.Join(c.Dir, filepath.FromSlash(f.Name))
			if err := atomicfile.MakeFolder(filepath.Dir(path)); err != nil {
				return err
			}
			if err := terminal.WriteNew(path, f.Bytes); err != nil {
				return err
			}
			names = append(names, f.Name)
		}
		if c.JSON {
			return p.PrintJSON(map[string]any{"folder": c.Dir, "files": names})
		}
		p.Say("%s holds %d files. %s tells what they are, %s their hashes.", c.Dir, len(files), examiner.IndexFile, examiner.HashesFile)
		return nil
	})
}

// emptyFolder refuses a folder with something in it.
func emptyFolder(dir string) error {
	entries, err := os.ReadDir(dir)
	if os.IsNotExist(err) {
		return nil
	}
	if err != nil {
		return terminal.Refusal("Name a folder that is not there yet", "the folder %s cannot be used: %v", dir, err)
	}
	if len(entries) > 0 {
		return terminal.Refusal("Name a folder that is not there yet", "the folder %s is not empty", dir)
	}
	return nil
}
