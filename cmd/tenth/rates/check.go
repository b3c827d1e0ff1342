package rates

import (
	"errors"
	"os"
	"slices"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/tomlfile"
)

// ratesCheck reads files as the desk would and reports every mistake in them.
type ratesCheck struct {
	terminal.BookFlags
	File  []string `arg:"" optional:"" help:"Files or folders. Without any, the folder of rates." placeholder:"FILE"`
	Rules string   `help:"Whose rules the rates must keep: us, or canada for an elevator licensed under the Canada Grain Act." enum:"us,canada" default:"us"`
	JSON  bool     `help:"Print for programs: every figure as text."`
}

func (ratesCheck) Help() string {
	return `Every mistake in every file is told with its line and what to do. When all files can be read they are held against each other and against those already in the folder of rates: two editions in force on one day, days without any, and corrections of what is not there.

    tenth rates check
    tenth rates check new-corn.toml
    tenth rates check --rules canada new-corn.toml
    tenth rates check schedules/ --json`
}

func (c ratesCheck) Run(t *terminal.Terminal) error {
	editions, err := c.read()
	if err == nil {
		err = errors.Join(c.together(editions), c.lawful(editions))
	}
	if c.JSON {
		return errors.Join(t.PrintJSON(map[string]any{"editions": checkedEditions(editions), "problems": problemsJSON(err)}), counted(err))
	}
	if err != nil {
		return err
	}
	for _, e := range editions {
		t.Say("%s: edition %s is in order: %s, schedule %s, %s.", e.File, e.ID, message.Words(e.Commodity.Name), e.Schedule, e.Days())
		if e.Format.Number < 2 {
			t.Say("    format 1: it settles as it always did; \"tenth rates upgrade %v\" writes it in format 2.", e.File)
		}
		for _, caution := range e.Cautions() {
			t.Say("    worth a second look: %s", caution)
		}
	}
	return nil
}

// read reads the files named, or those of the folder of rates.
func (c ratesCheck) read() ([]*rates.Edition, error) {
	paths, err := c.paths()
	if err != nil {
		return nil, err
	}
	return ratefiles.ReadEditions(paths)
}

func (c ratesCheck) paths() ([]string, error) {
	named := c.File
	if len(named) == 0 {
		named = []string{c.RatesFolder()}
	}
	var paths []string
	for _, name := range named {
		info, err := os.Stat(name)
		switch {
		case err != nil && len(c.File) == 0:
			return nil, terminal.Refusal("Name the files or folders to check", "there are no rates to check in %s", name)
		case err != nil:
			return nil, terminal.Refusal("Check the path", "the file %s cannot be read: %v", name, errors.Unwrap(err))
		case !info.IsDir():
			paths = append(paths, name)
			continue
		}
		inside, err := ratefiles.EditionFiles(name)
		if err == nil && len(inside) == 0 {
			err = terminal.Refusal("Editions are files that end in .toml", "the folder %s has no rates in it", name)
		}
		if err != nil {
			return nil, err
		}
		paths = append(paths, inside...)
	}
	return paths, nil
}

// together checks the editions against each other and the elevator's others, as the desk will when
// it opens.
func (c ratesCheck) together(editions []*rates.Edition) error {
	paths, err := ratefiles.EditionFiles(c.RatesFolder())
	if err != nil {
		return err
	}
	others, err := ratefiles.ReadEditions(paths)
	if err != nil {
		return err
	}
	others = slices.DeleteFunc(others, func(e *rates.Edition) bool {
		return slices.ContainsFunc(editions, func(given *rates.Edition) bool { return given.Hash == e.Hash })
	})
	_, err = ratefiles.WithExamples(append(others, editions...))
	return err
}

// lawful checks the editions against the law of the rule set.
func (c ratesCheck) lawful(editions []*rates.Edition) error {
	if c.Rules != "canada" {
		return nil
	}
	var problems tomlfile.Problems
	for _, e := range editions {
		problems = append(problems, e.UnderGrainAct()...)
	}
	return problems.Err()
}

// editionChecked is one edition that could be read, for programs.
type editionChecked struct {
	editionJSON
	Format   int      `json:"format,string"`
	Cautions []string `json:"cautions"`
}

// english are texts for programs.
func english(texts []message.Text) []string {
	out := make([]string, len(texts))
	for i, one := range texts {
		out[i] = one.String()
	}
	return out
}

func checkedEditions(editions []*rates.Edition) []editionChecked {
	out := []editionChecked{}
	for _, e := range editions {
		out = append(out, editionChecked{editionForJSON(e), e.Format.Number, english(e.Cautions())})
	}
	return out
}

// problemJSON is one mistake for programs.
type problemJSON struct {
	File    string `json:"file,omitempty"`
	Line    string `json:"line,omitempty"`
	Excerpt string `json:"excerpt,omitempty"`
	What    string `json:"what"`
	Remedy  string `json:"remedy,omitempty"`
}

func problemsJSON(err error) []problemJSON {
	out := []problemJSON{}
	switch e := err.(type) {
	case nil:
	case tomlfile.Problems:
		for _, p := range e {
			out = append(out, problemJSON{p.File, lineNumber(p.Line), p.Excerpt, p.What.String(), p.Remedy.String()})
		}
	case interface{ Unwrap() []error }:
		for _, one := range e.Unwrap() {
			out = append(out, problemsJSON(one)...)
		}
	default:
		for _, one := range terminal.Complaints(err) {
			out = append(out, problemJSON{What: one.What, Remedy: one.Hint})
		}
	}
	return out
}

// counted is the error of a check whose problems were already printed.
func counted(err error) error {
	if n := len(problemsJSON(err)); n > 0 {
		return message.Invalid.Errorf("%d problems were found", n)
	}
	return nil
}
