package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"strings"

	"tenthpoint/cmd/task/toolchain"
)

// provide makes sure that the needs are met. On Debian and Ubuntu it installs what is missing when
// it may; otherwise it returns an error that names what is missing and what to do.
func provide(needs []need) error {
	missing := unmet(needs)
	if len(missing) == 0 {
		return nil
	}
	if !command("apt-get")() {
		return errors.New(missingText(missing) + " " + hintFor(runtime.GOOS))
	}
	prefix, may := rootPrefix()
	if !may {
		return errors.New(missingText(missing) + " Type this once, then try again:\n  " + aptLine(missing))
	}
	toolchain.Say("%s Installing with apt-get; this happens once.", missingText(missing))
	if err := install(prefix, missing); err != nil {
		return fmt.Errorf("installing failed (%w). Type this to see why:\n  %s", err, aptLine(missing))
	}
	if still := unmet(missing); len(still) > 0 {
		return errors.New("After installing: " + missingText(still))
	}
	return nil
}

// unmet keeps the needs this machine does not meet.
func unmet(needs []need) []need {
	var missing []need
	for _, n := range needs {
		if !n.has() {
			missing = append(missing, n)
		}
	}
	return missing
}

// rootPrefix returns the words to put before a command to run it as root without a password prompt,
// and whether that is possible.
func rootPrefix() (prefix []string, may bool) {
	if os.Geteuid() == 0 {
		return nil, true
	}
	if exec.Command("sudo", "-n", "true").Run() == nil {
		return []string{"sudo", "-n"}, true
	}
	return nil, false
}

// install fetches the package lists and then the packages.
func install(prefix []string, missing []need) error {
	packages := strings.Fields(debianPackages(missing))
	for _, args := range [][]string{
		{"update", "-q"},
		append([]string{"install", "-y", "-q", "--no-install-recommends"}, packages...),
	} {
		// env, because sudo drops the caller's environment.
		line := append([]string{}, prefix...)
		line = append(line, "env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-o", "DPkg::Lock::Timeout=300")
		line = append(line, args...)
		cmd := exec.Command(line[0], line[1:]...)
		cmd.Stdout, cmd.Stderr = os.Stdout, os.Stderr
		if err := cmd.Run(); err != nil {
			return fmt.Errorf("apt-get %s: %w", args[0], err)
		}
	}
	return nil
}

// aptLine is the one line a person types when the chore may not install.
func aptLine(missing []need) string {
	return "sudo apt-get update && sudo apt-get install -y --no-install-recommends " + debianPackages(missing)
}

func debianPackages(missing []need) string {
	var names []string
	for _, n := range missing {
		names = append(names, n.debian)
	}
	return strings.Join(names, " ")
}

// missingText names the needs in a sentence.
func missingText(missing []need) string {
	var names []string
	for _, n := range missing {
		names = append(names, n.name)
	}
	return "This machine lacks " + strings.Join(names, "; ") + "."
}

// hintFor says where an operating system gets such things from.
func hintFor(system string) string {
	switch system {
	case "darwin":
		return "The C compiler comes with `xcode-select --install`; poppler comes from your package manager."
	case "windows":
		return "Install a GCC for 64-bit Windows (MSYS2 has one), put its bin folder on PATH, and try again."
	default:
		return "Install them with your package manager (the headers are in packages ending in -devel or -dev), and try again."
	}
}
