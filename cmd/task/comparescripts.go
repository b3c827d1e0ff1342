package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"tenthpoint/internal/transcript"
)

// runScripts types random scripts into both programs, each in fresh folders.
func (c *comparison) runScripts() error {
	if c.only > 0 {
		return c.runScript(c.only)
	}
	return c.eachOf(c.scripts, c.runScript)
}

// runScript runs one script with both and keeps it if they differ. Where one
// refuses what the other does the books have parted, so the rest is not compared.
func (c *comparison) runScript(i int) error {
	script := randomScript(drawing(c.seed, "script", i))
	dirs := [2]string{filepath.Join(c.scratch, fmt.Sprintf("script-%d-old", i)), filepath.Join(c.scratch, fmt.Sprintf("script-%d-today", i))}
	old, today := transcript.Program{Path: c.old, Dir: dirs[0]}, transcript.Program{Path: c.today, Dir: dirs[1]}
	for _, dir := range dirs {
		if err := os.MkdirAll(dir, 0o755); err != nil {
			return err
		}
		defer os.RemoveAll(dir)
	}
	differ, allowed := false, c.allowed
	if isFrench(script) {
		allowed = c.french
	}
	for n, line := range script {
		before, err := old.Say(context.Background(), line.Now, line.Args...)
		if err != nil {
			return err
		}
		after, err := today.Say(context.Background(), line.Now, line.Args...)
		if err != nil {
			return err
		}
		problems := transcript.Compare(before, after, allowed)
		c.count(fmt.Sprintf("script %d, line %d", i, n+1), problems, func() {
			c.lines++
			if before.Status == 0 {
				c.done++
			}
		})
		differ = differ || len(problems) > 0
		if before.Status != after.Status {
			break
		}
	}
	c.count("", nil, func() { c.ran++ })
	if !differ {
		return nil
	}
	path, err := keepScript(fmt.Sprintf("script-%d-%d.txt", c.seed, i), script)
	say("  kept as %s", path)
	return err
}

// isFrench reports whether the script sets up a French elevator.
func isFrench(script []transcript.Entry) bool {
	return slices.Contains(script[0].Args, "fr")
}
