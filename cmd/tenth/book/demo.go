package book

import (
	"errors"
	"fmt"
	"os"

	"tenthpoint/cmd/tenth/terminal"
	"tenthpoint/internal/book"
	"tenthpoint/internal/book/engines"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/ratefiles"
)

// Demo makes invented books.
type Demo struct {
	Season  demoSeason  `cmd:"" default:"withargs" help:"A season's book of any size."`
	Morning demoMorning `cmd:"" help:"One truck received, its papers written into a folder."`
}

// demoSeason fills a book with an invented season.
type demoSeason struct {
	Book  string `required:"" help:"The book to make; it must not be there yet." env:"TENTHPOINT_BOOK" placeholder:"PATH"`
	Loads int    `help:"How many trucks come." default:"1000"`
	Seed  uint64 `help:"The number the season is drawn from: the same number and day give the same book." default:"1"`
	// Language is that of its screens and papers.
	Language string `help:"Language of screens and papers." enum:",${languages}" default:"" placeholder:"en|es|fr"`
	terminal.RatesFlags
}

func (demoSeason) Help() string {
	return `The elevator, its growers and every load are invented: example - not for trade. Three trucks are left half done on the yard.

    tenth demo --book demo.book
    tenth demo --book big.book --loads 100000 --seed 7
    tenth verify --book demo.book`
}

func (c demoSeason) Run(t *terminal.Terminal) error {
	if _, err := os.Stat(c.Book); err == nil {
		return terminal.Refusal("Name a file that is not there yet", "there is something at %s already; a demo never writes into it", c.Book)
	}
	told := 0
	err := c.fill(t, func(loads int) {
		if t.Typing && loads/1000 > told {
			told = loads / 1000
			fmt.Fprintf(t.Stderr, "%d loads\n", loads)
		}
	})
	if err != nil {
		return err
	}
	t.Say("%s holds an invented season of %d loads, drawn from %d. Example - not for trade.", c.Book, c.Loads, c.Seed)
	return nil
}

// fill makes the book and closes it.
func (c demoSeason) fill(t *terminal.Terminal, progress func(int)) error {
	set, err := c.ReadRates(c.Book)
	if err != nil {
		return err
	}
	money := &demo.Money{}
	if money.Tariffs, err = ratefiles.ReadTariffs(c.Folder(c.Book)); err != nil {
		return err
	}
	if money.Levies, err = ratefiles.ReadLevies(c.Folder(c.Book)); err != nil {
		return err
	}
	book, err := engines.Open(c.Book, book.Options{Create: true})
	if err != nil {
		return err
	}
	err = demo.Fill(t, book, demo.Options{Loads: c.Loads, Seed: c.Seed, Now: t.Clock(), Place: t.Place, Rates: set, Language: c.Language, Money: money}, progress)
	return errors.Join(err, book.Close())
}
