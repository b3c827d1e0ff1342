package main

import "strings"

// benchChore runs every benchmark that needs no window. Flags go on to
// `go test`, after ours, so a later -bench narrows the choice; arguments
// starting with ./ name packages to measure instead of all.
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
	return goTool(withoutCgo, append(line, packages...)...).Run()
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
