// Package money holds the commands for what follows a ticket: the tariffs of storage and
// charges, settlement sheets and payments.
package money

import (
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office/posting"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/tariff"
)

// Tariff are the commands for editions of storage and charges before they are used.
type Tariff struct {
	List    tariffList    `cmd:"" default:"withargs" help:"List the tariffs in force, today or on a day."`
	Show    tariffShow    `cmd:"" help:"Show everything a tariff says, with the line of its file."`
	Check   tariffCheck   `cmd:"" help:"Check files of tariffs before they are used, alone and against each other."`
	Try     tariffTry     `cmd:"" help:"What a tariff charges for a lot, step by step."`
	Compare tariffCompare `cmd:"" help:"One lot under two tariffs."`
	Post    tariffPost    `cmd:"" help:"A tariff as a paper to post."`
}

func (Tariff) Help() string {
	return `Tariffs say what storage, the service charge of a delayed price, elevation, receipts and interest cost. They are TOML files in the folder "tariffs" of the folder of rates; the examples inside the program are listed where the elevator has none of its own.

    tenth tariff list
    tenth tariff show corn-main-tariff-2026
    tenth tariff check our-corn.toml
    tenth tariff try corn-main-tariff-2026 --quantity 1000 --under stored --from 2026-10-01 --to 2027-01-09
    tenth tariff compare corn-main-tariff-2026 corn-river-tariff-2026 --quantity 1000 --under stored --from 2026-10-01 --to 2027-01-09
    tenth tariff post corn-main-tariff-2026 --out papers`
}

// tariffNamed finds one by its id, or reads it from the file that is named.
func tariffNamed(f terminal.BookFlags, named string) (*tariff.Edition, error) {
	if strings.HasSuffix(named, ".toml") {
		text, err := ratefiles.ReadText(named)
		if err != nil {
			return nil, terminal.Refusal("Check the path", "%v", err)
		}
		return tariff.Read(named, text)
	}
	set, err := ratefiles.ReadTariffs(f.RatesFolder())
	if err != nil {
		return nil, err
	}
	if e, known := set.ByID(named); known {
		return e, nil
	}
	var ids []string
	for _, e := range set.All() {
		ids = append(ids, e.ID)
	}
	return nil, terminal.NotFound(terminal.Refusal("Look with \"tenth tariff list --all\", or name a file", "there is no tariff %q here", named), named, ids)
}

// tariffLine says what a tariff is.
func tariffLine(e *tariff.Edition) message.Text {
	line := message.New("Tariff: %v, %v (%s), SHA-256 %v.", terminal.OneLine(e.ID), terminal.OneLine(e.Title), e.Days(), e.Hash[:12])
	if e.Status == tariff.Example {
		return message.List(" ", line, message.New("Example - not for trade."))
	}
	return line
}

type tariffPost struct {
	terminal.BookFlags
	terminal.DocumentFlags
	Tariff string `arg:"" help:"The tariff, by id or file." placeholder:"TARIFF"`
}

func (tariffPost) Help() string {
	return `    tenth tariff post corn-main-tariff-2026
    tenth tariff post our-corn.toml --out papers`
}

func (c tariffPost) Run(t *terminal.Terminal) error {
	e, err := tariffNamed(c.BookFlags, c.Tariff)
	if err != nil {
		return err
	}
	return c.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		notice, err := posting.Tariff(p, p.Desk, e)
		if err != nil {
			return err
		}
		return p.ShowDocument(c.DocumentFlags, notice, "tariff-"+terminal.FileName(e.ID), false)
	})
}
