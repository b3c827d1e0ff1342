// Package toolchain has what chores share: the go command, and progress messages.
package toolchain

import (
	"fmt"
	"os"
	"os/exec"
)

// Whether C code is compiled.
var (
	WithoutCgo = []string{"CGO_ENABLED=0"}
	WithCgo    = []string{"CGO_ENABLED=1"}
)

// Go prepares the go command with extra environment settings, its output
// going where ours goes. It is never given our standard input: a chore must
// not wait for somebody to type.
func Go(env []string, args ...string) *exec.Cmd {
	cmd := exec.Command("go", args...)
	cmd.Env = append(os.Environ(), env...)
	cmd.Stdout, cmd.Stderr = os.Stdout, os.Stderr
	return cmd
}

// Say prints one sentence of progress.
func Say(format string, args ...any) {
	fmt.Printf(format+"\n", args...)
}
