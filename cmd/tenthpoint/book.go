package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/desk"
	"tenthpoint/internal/store"
	"tenthpoint/schedules"
)

// bookPath is where the book lies: as named, or in the person's data folder.
func bookPath(named string) (string, error) {
	if named != "" {
		return named, nil
	}
	folder, err := os.UserConfigDir()
	if err != nil {
		return "", fmt.Errorf("there is no data folder for the book (%w). Name one with --book", err)
	}
	return filepath.Join(folder, "tenthpoint", "house.book"), nil
}

// openDesk opens a desk on a book, making the book if it is not there.
func (p *program) openDesk(ctx context.Context, path string) (*desk.Desk, error) {
	files := os.DirFS(p.flags.Schedules)
	if p.flags.Schedules == "" {
		files = schedules.Files
	}
	editions, err := schedules.ReadEditions(files)
	if err != nil {
		return nil, fmt.Errorf("the rates cannot be read:\n%w", err)
	}
	charts, err := desk.ReadCharts(p.flags.Schedules)
	if err != nil {
		return nil, fmt.Errorf("the moisture charts cannot be read:\n%w", err)
	}
	book, err := store.Open(path, store.Options{Create: true})
	if err != nil {
		return nil, err
	}
	p.closing = append(p.closing, book.Close)
	d, err := desk.Open(ctx, book, desk.Options{Name: "desk", Rates: editions, Charts: charts})
	if err != nil || p.flags.Who == "" {
		return d, err
	}
	return d, d.SignIn(p.flags.Who)
}

// demoLoads is how many trucks the invented season has brought.
const demoLoads = 240

// openDemo makes a fresh book of the invented elevator and opens it.
func (p *program) openDemo(ctx context.Context) error {
	folder, err := demoFolder()
	if err != nil {
		return err
	}
	path := filepath.Join(folder, "demo.book")
	if err := fillDemo(ctx, path); err != nil {
		return err
	}
	if p.flags.Who == "" {
		p.flags.Who = demo.Manager
	}
	return p.open(ctx, path)
}

// demoFolder is a new folder in the person's cache.
func demoFolder() (string, error) {
	cache, err := os.UserCacheDir()
	if err != nil {
		cache = os.TempDir()
	}
	root := filepath.Join(cache, "tenthpoint")
	if err := os.MkdirAll(root, 0o755); err != nil {
		return "", fmt.Errorf("the folder for the demo book cannot be made: %w", err)
	}
	return os.MkdirTemp(root, "demo-")
}

func fillDemo(ctx context.Context, path string) error {
	editions, err := schedules.Editions()
	if err != nil {
		return err
	}
	book, err := store.Open(path, store.Options{Create: true})
	if err != nil {
		return err
	}
	err = demo.Fill(ctx, book, demo.Options{Loads: demoLoads, Seed: 1, Now: time.Now(), Place: time.Local, Rates: editions}, nil)
	if closed := book.Close(); err == nil {
		err = closed
	}
	return err
}
