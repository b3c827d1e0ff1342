package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"tenthpoint/cmd/task/toolchain"
)

// The most that a key of a large book may be drawn after a key of an empty entry.
const (
	keyMedian = "8ms"
	keyWorst  = "16ms"
)

// keysChore measures in the real window how long keys take to be drawn, on a book of a large season,
// which is made once and kept among the temporary files.
// Only a machine that does nothing else gives figures worth keeping.
func keysChore(args []string) error {
	flags := flag.NewFlagSet("keys", flag.ContinueOnError)
	loads := flags.Int("loads", 100_000, "loads of the book")
	rounds := flags.Int("rounds", 100, "how often each key is pressed")
	if err := flags.Parse(args); err != nil {
		return err
	}
	book, err := largeBook(*loads)
	if err != nil {
		return err
	}
	line := []string{"test", "-trimpath", "-tags", "keys", "-count", "1", "-timeout", "1h", "-v", "./cmd/tenthpoint", "-run", "^TestKeysAreDrawnAtOnce$",
		"-key-book", book, "-key-rounds", fmt.Sprint(*rounds), "-key-median", keyMedian, "-key-p99", keyWorst}
	return toolchain.Go(append(testLanguage(), toolchain.WithCgo...), line...).Run()
}

// largeBook is the path of the book of a season, made now if it is not there yet. One that was not
// finished has another name.
func largeBook(loads int) (string, error) {
	whole := filepath.Join(os.TempDir(), fmt.Sprintf("tenthpoint-season-%d.book", loads))
	if _, err := os.Stat(whole); !errors.Is(err, os.ErrNotExist) {
		return whole, err
	}
	folder, err := os.MkdirTemp("", "tenthpoint-season-")
	if err != nil {
		return "", err
	}
	defer os.RemoveAll(folder)
	half := filepath.Join(folder, "half.book")
	if err := toolchain.Go(toolchain.WithoutCgo, "run", "./cmd/tenth", "demo", "season", "--book", half, "--loads", fmt.Sprint(loads)).Run(); err != nil {
		return "", err
	}
	return whole, os.Rename(half, whole)
}
