// Package version says which build of the program runs: the number of the release, and the commit
// it was built from, so that a fault can be told together with the text it came from.
package version

import (
	"runtime"
	"runtime/debug"
	"strings"
)

// Number is the release, the same for the window and the terminal program.
const Number = "0.5.0"

// commit is set by the linker where packages are built: -X tenthpoint/internal/version.commit=...
var commit string

// shortCommit is the number of digits of a commit's hash that are shown.
const shortCommit = 12

// Line describes this build of a program: name, release, commit, compiler and system.
func Line(program string) string {
	return strings.Join([]string{program, Number + ",", "commit", Commit() + ",", runtime.Version(), runtime.GOOS + "/" + runtime.GOARCH}, " ")
}

// Commit is the start of the hash of the commit this was built from, "unknown" where the build
// did not note it.
func Commit() string {
	if commit != "" {
		return shortened(commit)
	}
	if info, ok := debug.ReadBuildInfo(); ok {
		for _, s := range info.Settings {
			if s.Key == "vcs.revision" {
				return shortened(s.Value)
			}
		}
	}
	return "unknown"
}

func shortened(hash string) string {
	return hash[:min(len(hash), shortCommit)]
}
