// Package older compares this program with those of older revisions: random loads and scripts run
// by both, and the books of testdata/books made with the programs of their time.
package older

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"sync"

	"tenthpoint/cmd/task/toolchain"

	"tenthpoint/internal/transcript"
)

// The lists of allowed differences, with reasons: for old books, and additionally for data written
// again, whose codes follow from other facts.
var allowedLists = []string{"allowed.txt", "allowed-anew.txt"}

// mostShown is the number of differences printed; all are counted.
const mostShown = 60

// comparison compares the terminal program of another revision with that of this tree.
type comparison struct {
	old, today string // programs
	scratch    string
	seed       uint64
	loads      int
	scripts    int
	only       int
	workers    int
	allowed    *transcript.Allowed
	editions   []offer

	mutex sync.Mutex
	shown int
	differ,
	rows, settled, lines, done, meant, ran int
}

// Compare settles random loads and runs random scripts with both programs; their output must be the
// same.
func Compare(args []string) error {
	c := &comparison{}
	flags := flag.NewFlagSet("compare", flag.ContinueOnError)
	old := flags.String("old", beforeRebuild, "revision to compare with, or a program of it with a clock (see books)")
	flags.IntVar(&c.loads, "loads", 50_000, "random loads to settle")
	flags.IntVar(&c.scripts, "scripts", 500, "random scripts to run")
	flags.IntVar(&c.only, "script", 0, "run only the script of this number")
	flags.IntVar(&c.workers, "workers", runtime.NumCPU(), "how many are run at once")
	flags.Uint64Var(&c.seed, "seed", 1, "what the loads and scripts are drawn from")
	if err := flags.Parse(args); err != nil {
		return err
	}
	var err error
	if c.scratch, err = os.MkdirTemp("", "compare-"); err != nil {
		return err
	}
	defer os.RemoveAll(c.scratch)
	if err := c.prepare(*old); err != nil {
		return err
	}
	return errors.Join(c.settleLoads(), c.runScripts(), c.told())
}

func (c *comparison) prepare(old string) error {
	var err error
	if c.allowed, err = readAllowedLists(allowedLists); err != nil {
		return err
	}
	if c.old, err = programAt(old, filepath.Join(c.scratch, "old")); err != nil {
		return err
	}
	here, err := os.Getwd()
	if err != nil {
		return err
	}
	if c.today, err = terminalProgram(here, filepath.Join(c.scratch, "today")); err != nil {
		return err
	}
	return c.readOffers()
}

func readAllowedLists(names []string) (*transcript.Allowed, error) {
	all := &transcript.Allowed{}
	for _, name := range names {
		file, err := os.Open(filepath.Join(booksFolder, name))
		if err != nil {
			return nil, err
		}
		list, err := transcript.ReadAllowed(file)
		if err = errors.Join(err, file.Close()); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		all.Join(list)
	}
	return all, nil
}

// told prints the result; any difference is an error.
func (c *comparison) told() error {
	toolchain.Say("Seed %d: %d rows of loads, %d of them settled by the older program; %d scripts with %d command lines, %d of them done and not refused, %d with a difference that is on the list.", c.seed, c.rows, c.settled, c.ran, c.lines, c.done, c.meant)
	if c.differ > 0 {
		return fmt.Errorf("%d differences that are on no list", c.differ)
	}
	toolchain.Say("No difference that is not on the list.")
	return nil
}

// count adds the result of one comparison, and prints the first differences.
func (c *comparison) count(where string, problems []string, enter func()) {
	c.mutex.Lock()
	defer c.mutex.Unlock()
	enter()
	c.differ += len(problems)
	for _, p := range problems {
		if c.shown < mostShown {
			toolchain.Say("%s: %s", where, p)
			c.shown++
		}
	}
}

// eachOf calls do with 1 to n, several at once, and returns the errors.
func (c *comparison) eachOf(n int, do func(i int) error) error {
	next := make(chan int)
	wrong := make(chan error, c.workers)
	for range c.workers {
		go func() {
			var all error
			for i := range next {
				all = errors.Join(all, do(i))
			}
			wrong <- all
		}()
	}
	for i := range n {
		next <- i + 1
	}
	close(next)
	var all error
	for range c.workers {
		all = errors.Join(all, <-wrong)
	}
	return all
}
