package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"time"

	"tenthpoint/cmd/task/toolchain"
)

// soakTests are the tests of what may happen to a book: its program killed at random,
// each call to the disk failing in turn, the disk full, the power gone.
const (
	soakPackage = "./internal/book/sqlite"
	soakTests   = "BeingKilled|EachCallToTheDisk|TheDiskMayBeFull|ThePowerMayGo|NeverSyncs"
)

// soakChore repeats those tests for as long as asked, each round with a seed of its
// own, and says after each how far it has come.
func soakChore(args []string) error {
	flags := flag.NewFlagSet("soak", flag.ContinueOnError)
	length := flags.Duration("for", time.Hour, "how long")
	seed := flags.Uint64("seed", 1, "the seed of the first round; the next ones count on from it")
	if err := flags.Parse(args); err != nil {
		return err
	}
	folder, err := os.MkdirTemp("", "tenthpoint-soak-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	tests := filepath.Join(folder, "book.test")
	if err := toolchain.Go(toolchain.WithoutCgo, "test", "-c", "-o", tests, soakPackage).Run(); err != nil {
		return err
	}
	return soak(tests, *seed, *length)
}

func soak(tests string, first uint64, length time.Duration) (failed error) {
	start := time.Now()
	for seed := first; time.Since(start) < length; seed++ {
		round := exec.Command(tests, "-test.run", soakTests, "-every-fault", "1", "-fault-seed", fmt.Sprint(seed))
		round.Dir = filepath.FromSlash(soakPackage)
		if out, err := round.CombinedOutput(); err != nil {
			failed = errors.Join(failed, fmt.Errorf("seed %d: %w", seed, err))
			toolchain.Say("seed %d FAILED\n%s", seed, out)
		}
		toolchain.Say("seed %d done, %s of %s", seed, time.Since(start).Round(time.Second), length)
	}
	return failed
}
