package main

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"time"

	"tenthpoint/internal/account"
	"tenthpoint/internal/atomicfile"
	"tenthpoint/internal/book"
	"tenthpoint/internal/demo"
	"tenthpoint/internal/keyfile"
	"tenthpoint/internal/message"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/signing"

	"tenthpoint/internal/book/engines"
)

// bookPath returns the path of the book: as named, or in the person's data folder. The terminal
// program looks in the same place.
func bookPath(named string) (string, error) {
	if named != "" {
		return named, nil
	}
	folder, err := os.UserConfigDir()
	if err != nil {
		return "", message.Storage.Errorf("there is no data folder for the book (%w). Name one with --book", err)
	}
	return filepath.Join(folder, "tenthpoint", "house.book"), nil
}

// ratesFolder returns the folder of the rates and charts of a book: the folder named, else the one
// beside the book.
func (p *program) ratesFolder(book string) string {
	if p.flags.Schedules != "" {
		return p.flags.Schedules
	}
	return ratefiles.RatesBeside(book)
}

// openDesk opens a desk on a book, making the book if it is not there. With a mistake in the
// elevator's own rates the desk opens without any: nothing may be settled under examples instead,
// and the screen of rates shows the mistakes.
func (p *program) openDesk(ctx context.Context, path string) (*scalehouse.Desk, error) {
	folder := p.ratesFolder(path)
	if p.flags.Schedules != "" {
		if _, err := os.Stat(folder); err != nil {
			return nil, message.Storage.Errorf("there is no folder of rates %s. Check --schedules", folder)
		}
	}
	var editions *rates.Set
	if editions, p.ratesWrong = ratefiles.ReadRates(folder); p.ratesWrong != nil {
		editions, _ = rates.NewSet()
	}
	charts, err := ratefiles.ReadCharts(folder)
	if err != nil {
		return nil, message.Storage.Errorf("the moisture charts cannot be read:\n%w", err)
	}
	laws, err := ratefiles.ReadLaws(folder)
	if err != nil {
		return nil, message.Storage.Errorf("the rules of law cannot be read:\n%w", err)
	}
	book, err := engines.Open(path, book.Options{Create: true, AnyPlace: p.flags.AnyPlace})
	if err != nil {
		return nil, err
	}
	p.atEnd = append(p.atEnd, book.Close)
	clock, err := engines.Clock(ctx, book, nil)
	if err != nil {
		return nil, err
	}
	d, err := scalehouse.Open(ctx, book, scalehouse.Options{Name: "desk", Computer: account.Here(), Key: p.computerKey(), Rates: editions, Charts: charts, Laws: laws, Clock: clock})
	if err != nil || p.who == "" {
		return d, err
	}
	return d, d.SignIn(p.who)
}

// computerKey is the key of this computer, made at the first start. Without it the desk opens all
// the same: what it issues is unsigned, and says so.
func (p *program) computerKey() signing.Key {
	_, k, err := keyfile.MakeOwn()
	p.keyWrong = err
	return k
}

// demoLoads is the number of loads of the invented season.
const demoLoads = 240

// newDemo makes a new book of the invented elevator in the person's cache and returns its path.
func newDemo(ctx context.Context, report func(done, total int)) (path string, err error) {
	cache, err := os.UserCacheDir()
	if err != nil {
		cache = os.TempDir()
	}
	root := filepath.Join(cache, "tenthpoint")
	if err := atomicfile.MakeFolder(root); err != nil {
		return "", message.Storage.Errorf("the folder for the demo book cannot be made: %w", err)
	}
	folder, err := os.MkdirTemp(root, "demo-")
	if err != nil {
		return "", message.Storage.Errorf("the folder for the demo book cannot be made: %w", err)
	}
	path = filepath.Join(folder, "demo.book")
	return path, fillDemo(ctx, path, time.Now(), func(loads int) { report(loads, demoLoads) })
}

// fillDemo invents a season that ends at a moment.
func fillDemo(ctx context.Context, path string, now time.Time, progress func(loads int)) error {
	editions, err := ratefiles.ReadRates("")
	if err != nil {
		return err
	}
	money := &demo.Money{}
	if money.Tariffs, err = ratefiles.ReadTariffs(""); err != nil {
		return err
	}
	if money.Levies, err = ratefiles.ReadLevies(""); err != nil {
		return err
	}
	book, err := engines.Open(path, book.Options{Create: true})
	if err != nil {
		return err
	}
	err = demo.Fill(ctx, book, demo.Options{Loads: demoLoads, Seed: 1, Now: now, Place: time.Local, Rates: editions, Money: money}, progress)
	return errors.Join(err, book.Close())
}
