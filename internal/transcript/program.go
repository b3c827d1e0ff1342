package transcript

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"
)

// Program is a build of the terminal program whose clock is set from outside, as the test binary of
// cmd/tenth is when it is called "tenth".
type Program struct {
	Path string // of the binary
	Dir  string // folder it works in; its book is house.book there
}

// BookName is the book a program of a transcript works on.
const BookName = "house.book"

// longest bounds one command: one that waits for input must not hang a test.
const longest = 2 * time.Minute

// Say runs one command line and returns it with its result.
func (p Program) Say(ctx context.Context, now string, args ...string) (Entry, error) {
	ctx, stop := context.WithTimeout(ctx, longest)
	defer stop()
	var out, complaints bytes.Buffer
	cmd := exec.CommandContext(ctx, p.Path, args...)
	cmd.Dir, cmd.Env = p.Dir, p.environment(now)
	cmd.Stdout, cmd.Stderr = &out, &complaints
	err := cmd.Run()
	var ended *exec.ExitError
	if err != nil && !errors.As(err, &ended) {
		return Entry{}, fmt.Errorf("running %s: %w", p.Path, err)
	}
	if ctx.Err() != nil {
		return Entry{}, fmt.Errorf("%s did not end within %s", Entry{Args: args}.Line(), longest)
	}
	return Entry{Now: now, Args: args, Out: out.String(), Err: complaints.String(), Status: cmd.ProcessState.ExitCode()}, nil
}

// environment leaves nothing of the caller's own elevator.
func (p Program) environment(now string) []string {
	var kept []string
	for _, v := range os.Environ() {
		if !strings.HasPrefix(v, "TENTHPOINT_") {
			kept = append(kept, v)
		}
	}
	data := filepath.Join(p.Dir, "data")
	return append(kept, "SCRIPT_NOW="+now, "TZ=UTC", "TENTHPOINT_BOOK="+BookName, "HOME="+data, "XDG_CONFIG_HOME="+data)
}
