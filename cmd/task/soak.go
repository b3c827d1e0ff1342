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

// A soaked package has tests of what may happen to a book, a scale or a program, which can go on for
// as long as somebody waits.
type soaked struct {
	folder string
	tests  string // which of them
	flags  func(seed uint64) []string
}

var allSoaked = []soaked{
	{"./internal/simulation", "TheSameSeed|APlantedBug", func(seed uint64) []string {
		return []string{"-seed", fmt.Sprint(seed), "-acts", "1500"}
	}},
	{"./internal/book/sqlite", "BeingKilled|EachCallToTheDisk|TheDiskMayBeFull|ThePowerMayGo|NeverSyncs", func(seed uint64) []string {
		return []string{"-fault-seed", fmt.Sprint(seed), "-every-fault", "1"}
	}},
	{"./cmd/tenth", "AKilled", func(seed uint64) []string {
		return []string{"-kill-seed", fmt.Sprint(seed), "-kills", "12"}
	}},
	{"./internal/scalelink", "ABrokenFrame", func(seed uint64) []string {
		return []string{"-broken-seed", fmt.Sprint(seed), "-broken", "350000"} // for each of three profiles
	}},
}

// soakChore lets these tests run for as long as asked: a scale house drawn from a seed, calls to the
// disk that fail in turn, the disk full, the power gone, programs killed at random, broken frames of
// a scale. Each round has a seed of its own; after each part it says how far it has come.
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
	built := map[string]string{}
	for _, s := range allSoaked {
		built[s.folder] = filepath.Join(folder, filepath.Base(s.folder)+".test")
		if err := toolchain.Go(toolchain.WithoutCgo, "test", "-c", "-o", built[s.folder], s.folder).Run(); err != nil {
			return err
		}
	}
	return soak(built, *seed, *length)
}

// soak goes on after a fault: the seeds that found one are told in the end.
func soak(built map[string]string, first uint64, length time.Duration) (failed error) {
	start := time.Now()
	for seed := first; time.Since(start) < length; seed++ {
		for _, s := range allSoaked {
			out, err := soakOnce(s, built[s.folder], seed)
			if err != nil {
				failed = errors.Join(failed, fmt.Errorf("seed %d, %s: %w", seed, s.folder, err))
				toolchain.Say("seed %d, %s FAILED\n%s", seed, s.folder, out)
				continue
			}
			toolchain.Say("seed %d, %s holds, %s of %s", seed, s.folder, time.Since(start).Round(time.Second), length)
		}
		failed = errors.Join(failed, soakServer(seed))
	}
	return failed
}

func soakOnce(s soaked, tests string, seed uint64) (out []byte, err error) {
	round := exec.Command(tests, append([]string{"-test.run", s.tests}, s.flags(seed)...)...)
	round.Dir = filepath.FromSlash(s.folder)
	return round.CombinedOutput()
}

// killsASoak is how often a round kills the server.
const killsASoak = "50"

// soakServer kills a server of its own at random moments while desks write.
func soakServer(seed uint64) error {
	err := withServer(false, func(env []string) error {
		return toolchain.Go(env, "test", "-tags=postgres,crash", "-count=1", "-timeout=30m", bookOnPostgres, "-run", "KilledAtRandom", "-server-kills", killsASoak, "-crash-seed", fmt.Sprint(seed)).Run()
	})
	if err != nil {
		return fmt.Errorf("seed %d, a server that is killed: %w", seed, err)
	}
	return nil
}
