package main

import (
	"errors"
	"fmt"
	"os"
	"runtime"
	"slices"

	"tenthpoint/cmd/task/installer"
)

// packageNeeds are the requirements of making packages, besides those of building the window.
var packageNeeds = []need{
	{"git", "git", command("git")},
	{"dpkg's tools", "dpkg-dev", both(command("dpkg-deb"), command("dpkg-shlibdeps"))},
	{"rpmbuild", "rpm", command("rpmbuild")},
	{"a C compiler for Windows", "gcc-mingw-w64-x86-64 g++-mingw-w64-x86-64", both(command("x86_64-w64-mingw32-gcc"), command("x86_64-w64-mingw32-windres"))},
	{"makensis, which makes installers for Windows", "nsis", command("makensis")},
	{"rsvg-convert, which draws the icon", "librsvg2-bin", command("rsvg-convert")},
	{"zip", "zip", command("zip")},
}

// packageChore makes what people install.
func packageChore(args []string) error {
	if runtime.GOOS != "linux" {
		return fmt.Errorf("packages are made on Linux, with the tools of its system; this is %s", runtime.GOOS)
	}
	if err := provide(append(packageNeeds, deskNeeds...)); err != nil {
		return err
	}
	return installer.Make(args)
}

// tryNeeds are the requirements of trying a package in a clean root.
var tryNeeds = []need{
	{"dpkg's tools", "dpkg-dev", command("dpkg-deb")},
	{"mmdebstrap, which makes a clean root", "mmdebstrap", command("mmdebstrap")},
}

// tryChore installs the package on a system without compilers, works with it, and removes it.
func tryChore(args []string) error {
	if os.Geteuid() != 0 {
		return errors.New("a clean root is entered as root: run this with sudo, or in a container")
	}
	if err := provide(tryNeeds); err != nil {
		return err
	}
	return installer.Try(args)
}

// wineNeeds are the requirements of trying the Windows installer.
var wineNeeds = []need{
	{"wine, which runs programs for Windows", "wine wine64", command("wine")},
	{"a C compiler for Windows", "gcc-mingw-w64-x86-64", command("x86_64-w64-mingw32-gcc")},
}

// tryWindowsChore installs the Windows installer under wine, works with it, and removes it.
func tryWindowsChore(args []string) error {
	if err := provide(slices.Concat(wineNeeds, windowNeeds[:2])); err != nil {
		return err
	}
	return installer.TryWindows(args)
}
