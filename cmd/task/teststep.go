package main

import (
	"bufio"
	"io"
	"os"
	"slices"

	"tenthpoint/cmd/task/toolchain"
)

// rareCollection has tests collect their memory less often: a window drawn a thousand
// times is mostly garbage.
var rareCollection = []string{"GOGC=300"}

// testStep runs the tests of some packages, prints as they end, and counts. They were vetted
// before, and packages compiled in another checkout are reused (-trimpath).
func testStep(name string, env []string, packages ...string) tally {
	toolchain.Say("\n== %s", name)
	args := append([]string{"test", "-json", "-vet=off", "-trimpath", "-timeout", "30m"}, packages...)
	cmd := toolchain.Go(slices.Concat(testLanguage(), rareCollection, env), args...)
	cmd.Stdout = nil
	events, err := cmd.StdoutPipe()
	if err == nil {
		err = cmd.Start()
	}
	if err != nil {
		toolchain.Say("FAILED %s: %v", name, err)
		return tally{failed: 1}
	}
	r := newReport(os.Stdout)
	readErr := r.readAll(events)
	err = cmd.Wait()
	if readErr != nil {
		toolchain.Say("FAILED %s: reading the results: %v", name, readErr)
		r.count(false)
	}
	// A failure that produced no event (a bad package name, say) still counts.
	if err != nil && r.failed == 0 {
		toolchain.Say("FAILED %s: %v", name, err)
		r.count(false)
	}
	if err == nil && r.tally == (tally{}) {
		toolchain.Say("FAILED %s: there was no test to run", name)
		r.count(false)
	}
	return r.tally
}

// testLanguage settles the language when the machine has none, so that the
// window toolkit does not complain about it in the middle of the results.
func testLanguage() []string {
	if os.Getenv("LANG") != "" {
		return nil
	}
	return []string{"LANG=en_US.UTF-8"}
}

// readAll takes events line by line until the stream ends. Lines have no
// limit: a failing golden can print a whole slip.
func (r *report) readAll(stream io.Reader) error {
	lines := bufio.NewReader(stream)
	for {
		line, err := lines.ReadBytes('\n')
		if len(line) > 0 {
			r.take(line)
		}
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return err
		}
	}
}
