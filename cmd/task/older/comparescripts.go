package older

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"

	"tenthpoint/cmd/task/toolchain"

	"tenthpoint/internal/transcript"
)

// runScripts types random scripts into both programs, each in fresh folders.
func (c *comparison) runScripts() error {
	if c.only > 0 {
		return c.runScript(c.only)
	}
	return c.eachOf(c.scripts, c.runScript)
}

// runScript runs one script with both and keeps it if they differ. Once one refuses what the other
// accepts the books differ, so the rest is not compared.
func (c *comparison) runScript(i int) error {
	script := randomScript(drawing(c.seed, "script", i))
	dirs := [2]string{filepath.Join(c.scratch, fmt.Sprintf("script-%d-old", i)), filepath.Join(c.scratch, fmt.Sprintf("script-%d-today", i))}
	old, today := transcript.Program{Path: c.old, Dir: dirs[0]}, transcript.Program{Path: c.today, Dir: dirs[1]}
	for _, dir := range dirs {
		if err := c.giveRates(dir); err != nil {
			return err
		}
		defer os.RemoveAll(dir)
	}
	differ := false
	var saidBy [2][]transcript.Entry
	for n, line := range script {
		before, err := old.Say(context.Background(), line.Now, line.Args...)
		if err != nil {
			return err
		}
		after, err := typed(today, line)
		if err != nil {
			return err
		}
		saidBy[0], saidBy[1] = append(saidBy[0], before), append(saidBy[1], after)
		problems := transcript.Compare(before, after, c.allowed)
		c.count(fmt.Sprintf("script %d, line %d", i, n+1), problems, func() {
			c.lines++
			if before.Status == 0 {
				c.done++
			}
			if len(problems) == 0 && (before.Out != after.Out || before.Err != after.Err) {
				c.meant++
			}
		})
		differ = differ || len(problems) > 0
		if n == 0 {
			if err := askNothing(today, line.Now); err != nil {
				return err
			}
		}
		if before.Status != after.Status {
			break
		}
	}
	c.count("", nil, func() { c.ran++ })
	if !differ {
		return nil
	}
	return c.keepScript(i, saidBy)
}

// typed runs a line with today's program, which prints one line of a ticket by default.
func typed(p transcript.Program, line transcript.Entry) (transcript.Entry, error) {
	args := slices.Clone(line.Args)
	if slices.Contains([]string{"receive", "issue", "correct", "reissue"}, args[0]) && !slices.Contains(args, "--json") {
		args = append(args, "--show")
	}
	said, err := p.Say(context.Background(), line.Now, args...)
	said.Args = line.Args
	return said, err
}

// askNothing turns off the guards of today's program, which the older one did not have.
func askNothing(p transcript.Program, now string) error {
	list, err := p.Say(context.Background(), now, "guard", "list", "--json")
	if err != nil {
		return err
	}
	for _, m := range guardInList.FindAllStringSubmatch(list.Out, -1) {
		if _, err := p.Say(context.Background(), now, "guard", "set", m[1], "off", "--who", "Mae Orton"); err != nil {
			return err
		}
	}
	return nil
}

var guardInList = regexp.MustCompile(`(?i)"guard": "([a-z-]+)"`)

// keepScript writes what each program said of a script, for inspection.
func (c *comparison) keepScript(i int, saidBy [2][]transcript.Entry) error {
	for n, whose := range []string{"old", "today"} {
		path := filepath.Join(os.TempDir(), fmt.Sprintf("script-%d-%d-%s.txt", c.seed, i, whose))
		file, err := os.Create(path)
		if err != nil {
			return err
		}
		if err := errors.Join(transcript.Write(file, saidBy[n]), file.Close()); err != nil {
			return err
		}
		toolchain.Say("  kept as %s", path)
	}
	return nil
}
