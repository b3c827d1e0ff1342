package main

import (
	"os/exec"
	"path/filepath"
	"strings"
)

// A need is one thing outside Go that a chore cannot do without.
type need struct {
	name   string      // as a person would say it
	debian string      // the packages that bring it on Debian and Ubuntu
	has    func() bool // whether this machine has it now
}

// deskNeeds are the requirements of compiling the window on Linux: cgo, and the headers and
// libraries that GLFW and the OpenGL binding include.
var deskNeeds = []need{
	{"a C compiler with its library headers", "gcc libc6-dev", header("stdlib.h")},
	{"pkg-config", "pkg-config", command("pkg-config")},
	{"OpenGL headers", "libgl1-mesa-dev", both(header("GL/glx.h"), pkgConfig("gl"))},
	{"X11 headers", "libx11-dev", header("X11/Xlib.h")},
	{"X11 cursor headers", "libxcursor-dev", header("X11/Xcursor/Xcursor.h")},
	{"X11 RandR headers", "libxrandr-dev", header("X11/Xlib.h", "X11/extensions/Xrandr.h")},
	{"X11 Xinerama headers", "libxinerama-dev", header("X11/Xlib.h", "X11/extensions/Xinerama.h")},
	{"X11 input headers", "libxi-dev", header("X11/Xlib.h", "X11/extensions/XInput2.h")},
	{"X11 video mode headers", "libxxf86vm-dev", header("X11/Xlib.h", "X11/extensions/xf86vmode.h")},
}

// windowNeeds are the requirements of opening a window without a screen, and typing into it.
var windowNeeds = []need{
	{"an OpenGL driver", "libgl1-mesa-dri", anyFile("/usr/lib/*/dri/*_dri.so", "/usr/lib*/dri/*_dri.so")},
	{"Xvfb, a display without a screen", "xvfb", command("Xvfb")},
	{"xdotool, which types into a window", "xdotool", command("xdotool")},
}

// paperNeeds are the requirements of reading and rendering a PDF.
var paperNeeds = []need{
	{"pdftotext and pdftoppm, which read a PDF", "poppler-utils", both(command("pdftotext"), command("pdftoppm"))},
	{"zbarimg, which reads the square on a slip", "zbar-tools", command("zbarimg")},
}

// pageNeeds are the requirements of opening the page that checks tickets.
var pageNeeds = []need{
	{"Chromium, a browser", "chromium", func() bool {
		return command("chromium")() || command("chromium-browser")() || command("google-chrome")()
	}},
}

// serverNeeds are the requirements of a server for tests.
func serverNeeds() []need {
	return []need{{"a PostgreSQL server", "postgresql", func() bool { _, err := postgresPrograms(); return err == nil }}}
}

// command looks for a program on the search path.
func command(name string) func() bool {
	return func() bool {
		_, err := exec.LookPath(name)
		return err == nil
	}
}

// header runs the C compiler to find out whether it finds the headers: only the compiler knows all
// its search paths.
func header(names ...string) func() bool {
	return func() bool {
		compiler := cCompiler()
		if len(compiler) == 0 {
			return false
		}
		cmd := exec.Command(compiler[0], append(compiler[1:], "-E", "-x", "c", "-")...)
		cmd.Stdin = strings.NewReader("#include <" + strings.Join(names, ">\n#include <") + ">\n")
		return cmd.Run() == nil
	}
}

// cCompiler is the compiler cgo would call, with its leading arguments.
func cCompiler() []string {
	out, err := exec.Command("go", "env", "CC").Output()
	if err != nil {
		return nil
	}
	return strings.Fields(string(out))
}

// pkgConfig runs pkg-config to find out whether it knows a library.
func pkgConfig(library string) func() bool {
	return func() bool { return exec.Command("pkg-config", "--exists", library).Run() == nil }
}

// anyFile looks for at least one file matching any of the patterns.
func anyFile(patterns ...string) func() bool {
	return func() bool {
		for _, pattern := range patterns {
			if found, _ := filepath.Glob(pattern); len(found) > 0 {
				return true
			}
		}
		return false
	}
}

func both(a, b func() bool) func() bool {
	return func() bool { return a() && b() }
}
