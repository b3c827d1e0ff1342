// Package rates holds the commands that read, check, try and compare editions of
// rates.
package rates

import (
	"errors"
	"strings"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/rates"
)

// Rates are the commands for editions of rates before a truck comes: a manager reads one, compares
// it with another, tries it out and checks the file before it is used.
type Rates struct {
	List    ratesList    `cmd:"" default:"withargs" help:"List the editions in force, today or on a day."`
	Show    ratesShow    `cmd:"" help:"Show everything an edition says, with the line of its file."`
	Check   ratesCheck   `cmd:"" help:"Check files of rates before they are used, alone and against each other."`
	Diff    ratesDiff    `cmd:"" help:"Show the lines on which two editions part."`
	Try     ratesTry     `cmd:"" help:"What an edition does to a grid of moistures, as a table or CSV."`
	Upgrade ratesUpgrade `cmd:"" help:"Write an edition anew in format 2, as a file of its own."`
	Post    ratesPost    `cmd:"" help:"An edition as a paper to post."`
	Compare ratesCompare `cmd:"" help:"One load under two editions, or against the pure water formula."`
}

func (Rates) Help() string {
	return `Editions are TOML files in the folder of rates; the examples inside the program are listed where the elevator has none of its own. An edition is named by its id, or by its file if that is not in the folder yet.

    tenth rates list
    tenth rates show corn-main-2026
    tenth rates check new-corn.toml
    tenth rates diff corn-main-2025 new-corn.toml
    tenth rates try corn-river-2025 --from 15 --to 25 --factor test-weight=55
    tenth rates compare corn-statute-2025 --water --moisture 20`
}

// editionsOf are the rates beside the book, if there is a book, and those of its head office.
func editionsOf(t *terminal.Terminal, f terminal.BookFlags) (set *rates.Set, err error) {
	path, err := f.BookPath()
	if err != nil {
		path = ""
	}
	if set, err = f.ReadRates(path); err != nil || path == "" {
		return set, err
	}
	err = f.WithBook(t, terminal.ReadOnly, "", func(p *terminal.Session) error {
		set = p.Rates()
		return nil
	})
	if err != nil && !errors.Is(err, message.NotFound) {
		terminal.Warn(t, err) // the files are there to be read all the same
	}
	return set, nil
}

// editionNamed finds one by its id, or reads it from the file that is named.
func editionNamed(t *terminal.Terminal, f terminal.BookFlags, named string) (*rates.Edition, error) {
	if strings.HasSuffix(named, ".toml") {
		text, err := ratefiles.ReadText(named)
		if err != nil {
			return nil, terminal.Refusal("Check the path", "%v", err)
		}
		return rates.Read(named, text)
	}
	set, err := editionsOf(t, f)
	if err != nil {
		return nil, err
	}
	if e, ok := set.ByID(named); ok {
		return e, nil
	}
	var ids []string
	for _, e := range set.All() {
		ids = append(ids, e.ID)
	}
	return nil, terminal.NotFound(terminal.Refusal("Look with \"tenth rates list --all\", or name a file", "there is no edition %q here", named), named, ids)
}

// editionJSON is an edition, for programs.
type editionJSON struct {
	ID          string `json:"id"`
	Title       string `json:"title"`
	Commodity   string `json:"commodity"`
	Schedule    string `json:"schedule"`
	From        string `json:"from"`
	Until       string `json:"until,omitempty"`
	Status      string `json:"status"`
	Example     bool   `json:"example"`
	Corrects    string `json:"corrects,omitempty"`
	State       string `json:"state,omitempty"`
	File        string `json:"file,omitempty"`
	EditionHash string `json:"edition_sha256,omitempty"`
}

func editionForJSON(e *rates.Edition) editionJSON {
	return editionJSON{
		ID: e.ID, Title: e.Title, Commodity: e.Commodity.ID, Schedule: e.Schedule, From: e.From.String(), Until: e.Until.String(),
		Status: string(e.Status), Example: e.Status == rates.Example, Corrects: e.Corrects, File: e.File, EditionHash: e.Hash,
	}
}
