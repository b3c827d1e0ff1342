package main

import (
	"fmt"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"tenthpoint/cmd/task/toolchain"
)

const modulePath = "tenthpoint"

// windowPackage is the only package that opens a real window and therefore
// the only one that needs cgo.
const windowPackage = modulePath + "/cmd/tenthpoint"

// windowlessPackages lists every package but the one that opens a window.
func windowlessPackages() ([]string, error) {
	cmd := toolchain.Go(toolchain.WithoutCgo, "list", "-e", "./...")
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
	return program, toolchain.Go(env, "build", "-buildvcs=false", "-o", program, pkg).Run()
}
