package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"tenthpoint/cmd/task/toolchain"
)

// benchChore runs every benchmark that needs no window. Flags are passed on to `go test`, after
// ours, so a later -bench narrows the choice; arguments starting with ./ name packages to measure
// instead of all.
func benchChore(args []string) error {
	flags, packages := splitBenchArgs(args)
	if len(packages) == 0 {
		var err error
		if packages, err = windowlessPackages(); err != nil {
			return err
		}
	}
	line := append([]string{"test", "-run", "^$", "-bench", ".", "-benchmem", "-timeout", "30m"}, flags...)
	// One package after the other: two benchmarks at once measure each other.
	line = append(line, "-p", "1")
	return toolchain.Go(toolchain.WithoutCgo, append(line, packages...)...).Run()
}

func splitBenchArgs(args []string) (flags, packages []string) {
	for _, arg := range args {
		if strings.HasPrefix(arg, "./") {
			packages = append(packages, arg)
		} else {
			flags = append(flags, arg)
		}
	}
	return flags, packages
}

// benchmarkStep runs every benchmark once, so that one that no longer works is
// found. What one turn measures is of no use. In -short the benchmarks leave
// their largest books out, which take minutes to fill.
func benchmarkStep(packages []string) bool {
	measured, err := packagesWithBenchmarks(packages)
	if err != nil {
		toolchain.Say("FAILED finding the benchmarks: %v", err)
		return false
	}
	line := append([]string{"test", "-trimpath", "-vet=off", "-run", "^$", "-bench", ".", "-benchtime", "1x", "-short", "-timeout", "10m"}, measured...)
	return goStep("every benchmark, once", append(testLanguage(), toolchain.WithoutCgo...), line...)
}

// packagesWithBenchmarks leaves the others out: linking their tests again only
// to run nothing would take longer than the benchmarks.
func packagesWithBenchmarks(packages []string) ([]string, error) {
	var out []string
	for _, name := range packages {
		tests, err := filepath.Glob(filepath.Join(filepath.FromSlash(strings.TrimPrefix(strings.TrimPrefix(name, modulePath), "/")), "*_test.go"))
		if err != nil {
			return nil, err
		}
		has, err := anyHolds(tests, "\nfunc Benchmark")
		if err != nil {
			return nil, err
		}
		if has {
			out = append(out, name)
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("no package has any")
	}
	return out, nil
}

// anyHolds reports whether any of some files contains a text.
func anyHolds(paths []string, text string) (bool, error) {
	for _, path := range paths {
		file, err := os.ReadFile(path)
		if err != nil {
			return false, err
		}
		if strings.Contains(string(file), text) {
			return true, nil
		}
	}
	return false, nil
}
