package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"runtime"
	"time"

	"tenthpoint/cmd/task/toolchain"
)

// opensWithin separates a window that never opened (no OpenGL, no access to
// the display) from one that was used and then ended badly.
const opensWithin = 15 * time.Second

// runChore opens the desk on an invented elevator. Where no window can open it runs the same
// morning into files, and says so.
func runChore(args []string) error {
	flags := flag.NewFlagSet("run", flag.ContinueOnError)
	files := flags.String("files", "", "do not open a window; work into this folder")
	office := flags.Bool("office", false, "open a head office with three invented sites, one of them offline, on a PostgreSQL server of its own")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if flags.NArg() > 0 {
		return fmt.Errorf("run does not take %q", flags.Arg(0))
	}
	if *office {
		return runOffice()
	}
	if *files != "" {
		return workIntoFiles(*files)
	}
	var cannot noWindow
	err := openDesk()
	if !errors.As(err, &cannot) {
		return err
	}
	toolchain.Say("%s", cannot.why)
	toolchain.Say("The same work follows without a window: one truck received by the terminal program, its papers written to files.")
	return workIntoFiles("")
}

// noWindow says why the desk's window cannot open on this machine.
type noWindow struct{ why string }

func (n noWindow) Error() string { return n.why }

// openDesk builds and starts the window, and waits until it is closed.
func openDesk() error {
	if why := displayFault(runtime.GOOS, os.Getenv); why != "" {
		return noWindow{why}
	}
	if err := provide(needsToBuildDesk(runtime.GOOS)); err != nil {
		return noWindow{err.Error()}
	}
	toolchain.Say("Building the desk. The first time takes about four minutes; after that, seconds.")
	program, err := build(toolchain.WithCgo, "./cmd/tenthpoint")
	if err != nil {
		return noWindow{fmt.Sprintf("The desk did not build (%v; the compiler's reasons are above).", err)}
	}
	toolchain.Say("Opening the desk on an invented elevator. Everything in it is an example - not for trade.")
	cmd := exec.Command(program, "--demo")
	cmd.Stdin, cmd.Stdout, cmd.Stderr = os.Stdin, os.Stdout, os.Stderr
	started := time.Now()
	err = cmd.Run()
	if err != nil && time.Since(started) < opensWithin {
		return noWindow{fmt.Sprintf("The desk's window did not open (%v; its own message is above).", err)}
	}
	return err
}

// displayFault says why there is no display to open a window on, or nothing.
// Only X11 systems name their display in the environment.
func displayFault(system string, env func(string) string) string {
	switch {
	case system == "windows" || system == "darwin" || env("DISPLAY") != "":
		return ""
	case env("WAYLAND_DISPLAY") != "":
		return "The desk's window needs X11, and DISPLAY is empty on this Wayland session: start Xwayland to see it."
	default:
		return "There is no display here (DISPLAY is empty), so the desk's window cannot open."
	}
}

// needsToBuildDesk returns the requirements of compiling the window on a system. Windows and macOS
// bring their own OpenGL and window headers.
func needsToBuildDesk(system string) []need {
	if system == "windows" || system == "darwin" {
		return deskNeeds[:1]
	}
	return deskNeeds
}

// workIntoFiles receives one truck with the terminal program and leaves the
// slip, the explained working and the day's sheet in a folder: dir, or a new
// one when dir is empty.
func workIntoFiles(dir string) error {
	if dir == "" {
		fresh, err := os.MkdirTemp("", "tenthpoint-morning-")
		if err != nil {
			return err
		}
		dir = fresh
	}
	toolchain.Say("Building the terminal program. It needs nothing but Go; the first time takes a minute or two.")
	program, err := build(toolchain.WithoutCgo, "./cmd/tenth")
	if err != nil {
		return fmt.Errorf("the terminal program did not build: %w", err)
	}
	cmd := exec.Command(program, "demo", "morning", "--dir", dir)
	cmd.Stdout, cmd.Stderr = os.Stdout, os.Stderr
	if err := cmd.Run(); err != nil {
		return fmt.Errorf("the terminal program stopped: %w", err)
	}
	toolchain.Say("The papers are in %s", dir)
	return nil
}
