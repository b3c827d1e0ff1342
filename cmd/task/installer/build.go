package installer

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"

	"tenthpoint/cmd/task/toolchain"
)

var numberLine = regexp.MustCompile(`(?m)^const Number = "([0-9]+\.[0-9]+\.[0-9]+)"$`)

// releaseNumber reads the number of the release from its place in the program's text.
func releaseNumber(path string) (string, error) {
	text, err := os.ReadFile(path)
	if err != nil {
		return "", err
	}
	found := numberLine.FindSubmatch(text)
	if found == nil {
		return "", fmt.Errorf("%s has no line with the number of the release", path)
	}
	return string(found[1]), nil
}

// A target is a system that a program is built for.
type target struct{ system, processor string }

func (t target) String() string { return t.system + "-" + t.processor }

func (t target) program(name string) string {
	if t.system == "windows" {
		return name + ".exe"
	}
	return name
}

func (t target) env() []string { return []string{"GOOS=" + t.system, "GOARCH=" + t.processor} }

// build compiles a command for a target with the commit inside.
func (r *release) build(t target, env []string, pkg, path, linker string) error {
	flags := "-s -w -X tenthpoint/internal/version.commit=" + r.commit
	if linker != "" {
		flags += " " + linker
	}
	cmd := toolchain.Go(append(t.env(), env...), "build", "-buildvcs=false", "-trimpath", "-ldflags", flags, "-o", path, pkg)
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("building %s for %s: %w", pkg, t, err)
	}
	return nil
}

// terminalTargets are the systems that tenth alone is built for.
var terminalTargets = []target{
	{"linux", "amd64"}, {"linux", "arm64"}, {"windows", "amd64"}, {"windows", "arm64"}, {"darwin", "amd64"}, {"darwin", "arm64"},
}

// terminalPrograms builds tenth, which needs no C, for each system.
func (r *release) terminalPrograms() error {
	for _, t := range terminalTargets {
		path := r.result(t.program(fmt.Sprintf("tenth-%s-%s", r.version, t)))
		if err := r.build(t, toolchain.WithoutCgo, "./cmd/tenth", path, ""); err != nil {
			return err
		}
	}
	return nil
}

// desk builds the window and the terminal program for this computer into a folder.
func (r *release) desk(folder string) error {
	here := target{"linux", thisProcessor}
	if err := r.build(here, toolchain.WithCgo, "./cmd/tenthpoint", filepath.Join(folder, "tenthpoint"), ""); err != nil {
		return err
	}
	return r.build(here, toolchain.WithoutCgo, "./cmd/tenth", filepath.Join(folder, "tenth"), "")
}
