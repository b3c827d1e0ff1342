package printing

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"strings"
	"time"

	"tenthpoint/internal/message"
)

// command is one program to run, as data, so that the commands of a System or a Viewer on Windows
// can be tested on any machine.
type command struct {
	name  string
	args  []string
	env   []string // added to the program's own environment
	stdin []byte
}

// mostOutput limits the output kept of a program.
const mostOutput = 2000

// killAfter is the time a cancelled program's pipes may stay open.
const killAfter = 2 * time.Second

// run waits for the program and returns its output. The error names the program, its exit status
// and its output.
func (c command) run(ctx context.Context) (string, error) {
	path, err := exec.LookPath(c.name)
	if err != nil {
		return "", message.Device.Errorf("%s cannot be run: %w", c.name, err)
	}
	cmd := exec.CommandContext(ctx, path, c.args...)
	cmd.Env = append(os.Environ(), c.env...)
	cmd.Stdin = bytes.NewReader(c.stdin)
	cmd.WaitDelay = killAfter
	said := &answer{}
	cmd.Stdout, cmd.Stderr = said, said
	err = cmd.Run()
	switch {
	case ctx.Err() != nil:
		return "", message.Errorf("%s was stopped: %w", c.name, ctx.Err())
	case err != nil:
		return "", message.Device.Errorf("%s ended with %w and said %q", c.name, err, said)
	}
	return said.String(), nil
}

// answer keeps the first mostOutput bytes written to it and drops the rest.
type answer struct{ kept []byte }

func (t *answer) Write(p []byte) (int, error) {
	room := mostOutput - len(t.kept)
	t.kept = append(t.kept, p[:min(room, len(p))]...)
	return len(p), nil
}

func (t *answer) String() string {
	return strings.TrimSpace(strings.ToValidUTF8(string(t.kept), "?"))
}
