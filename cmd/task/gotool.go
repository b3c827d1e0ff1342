package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
)

const modulePath = "tenthpoint"

// windowPackage is the only package that opens a real window and therefore
// the only one that needs cgo.
const windowPackage = modulePath + "/cmd/tenthpoint"

var (
	withoutCgo = []string{"CGO_ENABLED=0"}
	withCgo    = []string{"CGO_ENABLED=1"}
)

// goTool prepares the go command with extra environment settings, its output
// going where ours goes. It is never given our standard input: a chore must
// not wait for somebody to type.
func goTool(env []string, args ...string) *exec.Cmd {
	cmd := exec.Command("go", args...)
	cmd.Env = append(os.Environ(), env...)
	cmd.Stdout, cmd.Stderr = os.Stdout, os.Stderr
	return cmd
}

// windowlessPackages lists every package but the one that opens a window.
func windowlessPackages() ([]string, error) {
	cmd := goTool(withoutCgo, "list", "-e", "./...")
	cmd.Stdout = nil
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("listing the packages: %w", err)
	}
	var names []string
	for _, name := range strings.Fields(string(out)) {
		if name != windowPackage && !strings.HasPrefix(name, windowPackage+"/") {
			names = append(names, name)
		}
	}
	return slowestFirst(names), nil
}

// slowest are the packages whose tests take longest, below the module.
var slowest = []string{"/ui/desktop", "/cmd/tenth", "/internal/scalehouse", "/internal/settle", "/internal/demo"}

// slowestFirst puts those packages first: tests start in the order of the names,
// and a long one that starts last keeps one processor waiting.
func slowestFirst(packages []string) []string {
	rank := func(name string) int {
		if i := slices.Index(slowest, strings.TrimPrefix(name, modulePath)); i >= 0 {
			return i
		}
		return len(slowest)
	}
	return slices.SortedStableFunc(slices.Values(packages), func(a, b string) int { return rank(a) - rank(b) })
}

// build compiles one command into the build folder and returns its path.
// Version-control stamping is off: a clone owned by another user would
// otherwise refuse to build.
func build(env []string, pkg string) (string, error) {
	dir, err := buildFolder()
	if err != nil {
		return "", err
	}
	program := filepath.Join(dir, filepath.Base(pkg))
	if runtime.GOOS == "windows" {
		program += ".exe"
	}
	return program, goTool(env, "build", "-buildvcs=false", "-o", program, pkg).Run()
}

// say prints one sentence of progress.
func say(format string, args ...any) {
	fmt.Printf(format+"\n", args...)
}
