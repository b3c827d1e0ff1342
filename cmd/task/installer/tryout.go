package installer

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"

	"tenthpoint/cmd/task/toolchain"
)

// A cleanRoot is a Debian without compilers in a folder, for trying a package where nothing helps it.
type cleanRoot string

// display is what a window without a screen takes; a desk computer has it.
const display = "xvfb,xauth,libgl1-mesa-dri"

// tried are the steps of a tryout, each a line typed in the clean root. BEFORE is the same package
// under a lower number, NOW the package itself.
var tried = []struct{ said, line string }{
	{"no compiler is there", "! command -v gcc && ! command -v cc && ! command -v go"},
	{"an earlier number is installed", "apt-get install -y -q /tmp/before.deb"},
	{"it makes a book", "cd /srv && runuser -u keeper -- tenth demo --book /srv/kept.book --loads 30"},
	{"the package takes its place", "apt-get install -y -q /tmp/now.deb"},
	{"it says its version", "tenth --version && tenthpoint --version"},
	{"the old book is sound", "runuser -u keeper -- tenth verify --book /srv/kept.book"},
	{"the window tries itself", "cd /srv && runuser -u keeper -- env HOME=/srv LANG=C.UTF-8 xvfb-run -a -s '-screen 0 1280x760x24' tenthpoint --selftest"},
	{"files of a book are known", "test -s /usr/share/mime/packages/tenthpoint.xml && test -s /usr/share/man/man1/tenth.1.gz"},
	{"it is removed", "apt-get purge -y -q tenthpoint && ! command -v tenthpoint && ! command -v tenth"},
	{"the book stays", "test -s /srv/kept.book"},
}

// Try installs the deb of a folder in a clean root, works with it and removes it again.
func Try(args []string) (err error) {
	flags := flag.NewFlagSet("package-try", flag.ContinueOnError)
	out := flags.String("out", "dist", "the folder with the deb")
	if err := flags.Parse(args); err != nil {
		return err
	}
	found, err := filepath.Glob(filepath.Join(*out, "*_"+thisProcessor+".deb"))
	if err != nil || len(found) != 1 {
		return fmt.Errorf("%s has %d packages for this computer (%v): make one with -only deb", *out, len(found), err)
	}
	work, err := os.MkdirTemp("", "tenthpoint-clean-")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(work)) }()
	root := cleanRoot(filepath.Join(work, "root"))
	toolchain.Say("Making a clean root; it is downloaded and takes a few minutes.")
	if err := command(work, "mmdebstrap", "--variant=apt", "--include="+display, "bookworm", string(root)); err != nil {
		return err
	}
	if err := root.bring(found[0], work); err != nil {
		return err
	}
	for _, step := range tried {
		if err := root.does(step.line); err != nil {
			return fmt.Errorf("%s: %w", step.said, err)
		}
		toolchain.Say("ok    %s", step.said)
	}
	return nil
}

// bring puts the package into the root, and once more under a lower number.
func (c cleanRoot) bring(deb, work string) error {
	if err := moved(deb, filepath.Join(string(c), "tmp/now.deb")); err != nil {
		return err
	}
	if err := moved("/etc/resolv.conf", filepath.Join(string(c), "etc/resolv.conf")); err != nil {
		return err
	}
	opened := filepath.Join(work, "opened")
	if err := command(work, "dpkg-deb", "-R", deb, opened); err != nil {
		return err
	}
	control := filepath.Join(opened, "DEBIAN/control")
	if err := command(work, "sed", "-i", "s/^Version: .*/Version: 0.0.1/", control); err != nil {
		return err
	}
	if err := command(work, "dpkg-deb", "--root-owner-group", "--build", opened, filepath.Join(string(c), "tmp/before.deb")); err != nil {
		return err
	}
	return c.does("apt-get update -q && useradd -d /srv keeper && chown keeper /srv && chmod 1777 /tmp")
}

// does runs a line in the root.
func (c cleanRoot) does(line string) error {
	return command("", "chroot", string(c), "sh", "-c", "export DEBIAN_FRONTEND=noninteractive; "+line)
}

// command runs a tool in a folder.
func command(folder, name string, args ...string) error {
	cmd := exec.Command(name, args...)
	cmd.Dir = folder
	return quietly(cmd)
}
