// Package installer builds what people install: packages for Debian and for RPM systems, an archive
// for any other Linux, an installer and an archive for Windows, and the terminal program alone for
// six systems; beside them a checksum of each and a list of what is inside with its licences.
//
// One staged tree holds every file at the place it is installed; deb, rpm and archive are made of it
// by the tools of the system. Everything carries the time of the commit, so that the same commit and
// compiler give the same trees.
package installer

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"tenthpoint/cmd/task/toolchain"
)

// A release is one run: what is built, from which commit, and where it goes.
type release struct {
	out     string // the folder of what people get
	work    string // a temporary folder
	version string
	commit  string
	at      time.Time // of the commit
	made    []string  // paths in out
}

// A part is one kind of result.
type part struct {
	name string
	make func(*release) error
}

var parts = []part{
	{"deb", (*release).deb},
	{"rpm", (*release).rpm},
	{"tar", (*release).tarball},
	{"windows", (*release).windows},
	{"tenth", (*release).terminalPrograms},
}

// Make builds the parts that are asked for, all of them unless -only names some.
func Make(args []string) (err error) {
	flags := flag.NewFlagSet("package", flag.ContinueOnError)
	out := flags.String("out", "dist", "the folder for what is made")
	only := flags.String("only", "", "some of: "+strings.Join(names(), ","))
	if err := flags.Parse(args); err != nil {
		return err
	}
	chosen, err := choose(*only)
	if err != nil {
		return err
	}
	r, err := newRelease(*out)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(r.work)) }()
	for _, p := range chosen {
		toolchain.Say("== %s", p.name)
		if err := p.make(r); err != nil {
			return fmt.Errorf("%s: %w", p.name, err)
		}
	}
	if err := r.checksums(); err != nil {
		return err
	}
	toolchain.Say("In %s:", r.out)
	for _, path := range r.made {
		toolchain.Say("  %s", filepath.Base(path))
	}
	return nil
}

func names() []string {
	var all []string
	for _, p := range parts {
		all = append(all, p.name)
	}
	return all
}

// choose returns the parts named, in their own order.
func choose(only string) ([]part, error) {
	if only == "" {
		return parts, nil
	}
	wanted := strings.Split(only, ",")
	for _, name := range wanted {
		if !slices.Contains(names(), name) {
			return nil, fmt.Errorf("%q is not a part: choose from %s", name, strings.Join(names(), ", "))
		}
	}
	return slices.DeleteFunc(slices.Clone(parts), func(p part) bool { return !slices.Contains(wanted, p.name) }), nil
}

func newRelease(out string) (*release, error) {
	version, err := releaseNumber("internal/version/version.go")
	if err != nil {
		return nil, err
	}
	commit, at, err := commitOf(".")
	if err != nil {
		return nil, err
	}
	if out, err = filepath.Abs(out); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(out, 0o755); err != nil {
		return nil, err
	}
	work, err := os.MkdirTemp("", "tenthpoint-package-")
	return &release{out: out, work: work, version: version, commit: commit, at: at}, err
}

// commitOf reads the commit of a checkout and its time.
func commitOf(folder string) (string, time.Time, error) {
	said, err := exec.Command("git", "-c", "safe.directory=*", "-C", folder, "log", "-1", "--format=%H %cI").Output()
	if err != nil {
		return "", time.Time{}, fmt.Errorf("the commit cannot be read (%w): packages are made from a clone", err)
	}
	hash, when, _ := strings.Cut(strings.TrimSpace(string(said)), " ")
	at, err := time.Parse(time.RFC3339, when)
	return hash, at.UTC(), err
}

// result is the path of a thing people get, noted for the checksums.
func (r *release) result(name string) string {
	path := filepath.Join(r.out, name)
	r.made = append(r.made, path)
	return path
}

// run runs a tool of the system in a folder; what it says is shown only where it fails.
func (r *release) run(folder, name string, args ...string) error {
	cmd := exec.Command(name, args...)
	cmd.Dir = folder
	cmd.Env = append(os.Environ(), fmt.Sprintf("SOURCE_DATE_EPOCH=%d", r.at.Unix()), "LC_ALL=C.UTF-8")
	return quietly(cmd)
}

// quietly runs a program; what it says is shown only where it fails.
func quietly(cmd *exec.Cmd) error {
	if said, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("%s: %w\n%s", filepath.Base(cmd.Path), err, said)
	}
	return nil
}
