package money

import (
	"slices"
	"strconv"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/tariff"
)

// tariffCheck reads files as the desk would and reports every mistake in them.
type tariffCheck struct {
	terminal.BookFlags
	File []string `arg:"" optional:"" help:"Files or folders. Without any, the house's own tariffs." placeholder:"FILE"`
}

func (tariffCheck) Help() string {
	return `Every mistake in every file is told with its line and what to do. When all files can be read they are held against each other and against the house's others: two tariffs in force on one day, days without any, and corrections of what is not there.

    tenth tariff check
    tenth tariff check our-corn.toml`
}

func (c tariffCheck) Run(t *terminal.Terminal) error {
	paths := c.File
	if len(paths) == 0 {
		paths = ratefiles.TariffFiles(c.RatesFolder())
	}
	given, err := ratefiles.OpenTariffs(paths)
	if err != nil {
		return err
	}
	if len(given) == 0 {
		return terminal.Refusal("Name the files to check", "the house has no tariffs of its own in %s", c.RatesFolder())
	}
	if err := c.together(given); err != nil {
		return err
	}
	for _, e := range given {
		t.Say("%s: tariff %s is in order: %s, schedule %s, %s.", e.File, e.ID, message.Words(e.Commodity.Name), e.Schedule, e.Days())
		for _, caution := range e.Cautions() {
			t.Say("    worth a second look: %s", caution)
		}
	}
	return nil
}

// together checks the tariffs against each other and the elevator's others, as the desk will.
func (c tariffCheck) together(given []*tariff.Edition) error {
	others, err := ratefiles.OpenTariffs(ratefiles.TariffFiles(c.RatesFolder()))
	if err != nil {
		return err
	}
	others = slices.DeleteFunc(others, func(e *tariff.Edition) bool {
		return slices.ContainsFunc(given, func(one *tariff.Edition) bool { return one.Hash == e.Hash })
	})
	_, err = ratefiles.WithExampleTariffs(append(others, given...))
	return err
}

// tariffShow prints a tariff for people.
type tariffShow struct {
	terminal.BookFlags
	terminal.ListFlags
	Tariff string `arg:"" help:"The tariff, by id or file." placeholder:"TARIFF"`
	TOML   bool   `name:"toml" help:"Print the file itself, to begin one's own from it."`
}

func (tariffShow) Help() string {
	return `    tenth tariff show corn-main-tariff-2026
    tenth tariff show corn-main-tariff-2026 --toml > our-corn.toml`
}

func (c tariffShow) Run(t *terminal.Terminal) error {
	e, err := tariffNamed(c.BookFlags, c.Tariff)
	if err != nil {
		return err
	}
	if c.TOML {
		_, err := t.Stdout.Write(e.Text)
		return err
	}
	rows := [][]any{}
	for _, l := range e.Lines() {
		rows = append(rows, []any{strconv.Itoa(l.At), l.Section, l.Label, l.Value})
	}
	if !c.JSON {
		t.Say("%s", tariffLine(e))
	}
	return (&terminal.Session{Terminal: t}).Table(c.ListFlags, "Line\tSection\tWhat\tSays", rows, "")
}
