package installer

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// loadedLater are the libraries that the window opens when it starts: no tool finds them in the
// program.
var loadedLater = struct{ deb, rpm []string }{
	deb: []string{"libgl1", "libx11-6", "libxcursor1", "libxi6", "libxinerama1", "libxrandr2", "libxxf86vm1"},
	rpm: []string{"libGL.so.1()(64bit)", "libX11.so.6()(64bit)", "libXcursor.so.1()(64bit)", "libXi.so.6()(64bit)", "libXinerama.so.1()(64bit)", "libXrandr.so.2()(64bit)", "libXxf86vm.so.1()(64bit)"},
}

// deb makes the package of Debian and its kin.
func (r *release) deb() error {
	root, err := r.copyOfStage("deb")
	if err != nil {
		return err
	}
	needs, err := r.debNeeds(root)
	if err != nil {
		return err
	}
	control, err := r.filled("control", "@NEEDS@", needs, "@PROCESSOR@", thisProcessor, "@SIZE@", kilobytes(root))
	if err != nil {
		return err
	}
	if err := put(filepath.Join(root, "DEBIAN/control"), []byte(control)); err != nil {
		return err
	}
	if err := r.dated(root); err != nil {
		return err
	}
	path := r.result(fmt.Sprintf("tenthpoint_%s_%s.deb", r.version, thisProcessor))
	return r.run("", "dpkg-deb", "--root-owner-group", "--build", root, path)
}

// debNeeds asks dpkg which packages the programs were linked with, and adds those loaded later.
func (r *release) debNeeds(root string) (string, error) {
	folder := filepath.Join(r.work, "needs")
	if err := put(filepath.Join(folder, "debian/control"), []byte("Source: tenthpoint\n\nPackage: tenthpoint\nArchitecture: any\n")); err != nil {
		return "", err
	}
	cmd := exec.Command("dpkg-shlibdeps", "-O", filepath.Join(root, "usr/bin/tenthpoint"))
	cmd.Dir = folder
	said, err := cmd.Output()
	if err != nil {
		return "", fmt.Errorf("dpkg-shlibdeps: %w", err)
	}
	_, linked, found := strings.Cut(strings.TrimSpace(string(said)), "shlibs:Depends=")
	if !found {
		return "", fmt.Errorf("dpkg-shlibdeps said %q", said)
	}
	needs := strings.Split(linked, ", ")
	for _, name := range loadedLater.deb {
		if !strings.Contains(linked, name) {
			needs = append(needs, name)
		}
	}
	return strings.Join(needs, ", "), nil
}

// rpm makes the package of RPM systems.
func (r *release) rpm() error {
	root, err := r.copyOfStage("rpm")
	if err != nil {
		return err
	}
	spec, err := r.filled("tenthpoint.spec", "@ROOT@", root, "@NEEDS@", strings.Join(loadedLater.rpm, ", "))
	if err != nil {
		return err
	}
	top := filepath.Join(r.work, "rpmbuild")
	file := filepath.Join(top, "tenthpoint.spec")
	if err := put(file, []byte(spec)); err != nil {
		return err
	}
	err = r.run(top, "rpmbuild", "-bb", "--define", "_topdir "+top, "--define", "use_source_date_epoch_as_buildtime 1",
		"--define", "_buildhost localhost", "--define", "clamp_mtime_to_source_date_epoch 1", file)
	if err != nil {
		return err
	}
	found, err := filepath.Glob(filepath.Join(top, "RPMS/*/*.rpm"))
	if err != nil || len(found) != 1 {
		return fmt.Errorf("rpmbuild left %d packages (%v)", len(found), err)
	}
	return moved(found[0], r.result(filepath.Base(found[0])))
}

// tarball makes an archive for any other Linux; unpacked over / or below a folder of one's own.
func (r *release) tarball() error {
	root, err := r.stage()
	if err != nil {
		return err
	}
	path := r.result(fmt.Sprintf("tenthpoint-%s-linux-%s.tar.gz", r.version, thisProcessor))
	return r.run(filepath.Join(root, "usr"), "tar", "--sort=name", "--owner=0", "--group=0", "--numeric-owner",
		"--transform", "s,^\\.,tenthpoint-"+r.version+",", "-czf", path, ".")
}

// copyOfStage copies the staged tree, since a package adds files of its own.
func (r *release) copyOfStage(name string) (string, error) {
	root, err := r.stage()
	if err != nil {
		return "", err
	}
	to := filepath.Join(r.work, name)
	return to, os.CopyFS(to, os.DirFS(root))
}

// kilobytes is the size of a tree as Debian counts it.
func kilobytes(root string) string {
	said, err := exec.Command("du", "-sk", "--apparent-size", root).Output()
	if err != nil {
		return "0"
	}
	size, _, _ := strings.Cut(string(said), "\t")
	return size
}

// moved moves a file, across file systems too.
func moved(from, to string) error {
	text, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	return os.WriteFile(to, text, 0o644)
}
