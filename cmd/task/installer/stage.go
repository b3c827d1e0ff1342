package installer

import (
	"bytes"
	"compress/gzip"
	"embed"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
)

// thisProcessor is the processor that the window is built for: its C parts are compiled here.
const thisProcessor = runtime.GOARCH

//go:embed files
var files embed.FS

// filled reads one of the files with what changes from release to release put in.
func (r *release) filled(name string, more ...string) (string, error) {
	text, err := files.ReadFile("files/" + name)
	if err != nil {
		return "", err
	}
	words := append([]string{
		"@VERSION@", r.version, "@DATE@", r.at.Format("2006-01-02"), "@COMMIT@", r.commit,
		"@RPMDATE@", r.at.Format("Mon Jan 02 2006"), "@MAILDATE@", r.at.Format("Mon, 02 Jan 2006 15:04:05 -0700"),
	}, more...)
	return strings.NewReplacer(words...).Replace(string(text)), nil
}

// stage makes the tree that is installed on Linux, below a folder, once for a release.
func (r *release) stage() (string, error) {
	root := filepath.Join(r.work, "linux")
	if _, err := os.Stat(root); err == nil {
		return root, nil
	}
	bin := filepath.Join(root, "usr/bin")
	if err := os.MkdirAll(bin, 0o755); err != nil {
		return "", err
	}
	if err := r.desk(bin); err != nil {
		return "", err
	}
	share := filepath.Join(root, "usr/share")
	for name, place := range map[string]string{
		"tenthpoint.desktop": "applications/tenthpoint.desktop",
		"tenthpoint.xml":     "mime/packages/tenthpoint.xml",
		"copyright":          "doc/tenthpoint/copyright",
	} {
		text, err := r.filled(name)
		if err != nil {
			return "", err
		}
		if err := put(filepath.Join(share, place), []byte(text)); err != nil {
			return "", err
		}
	}
	icon, err := os.ReadFile(iconFile)
	if err != nil {
		return "", err
	}
	if err := put(filepath.Join(share, "icons/hicolor/scalable/apps/tenthpoint.svg"), icon); err != nil {
		return "", err
	}
	if err := r.stageHelp(bin, share); err != nil {
		return "", err
	}
	inside, err := r.contents(filepath.Join(bin, "tenthpoint"), filepath.Join(bin, "tenth"))
	if err != nil {
		return "", err
	}
	if err := put(filepath.Join(share, "doc/tenthpoint/tenthpoint.spdx"), inside); err != nil {
		return "", err
	}
	return root, r.dated(root)
}

// iconFile is the program's own icon.
const iconFile = "ui/apptheme/icons/tenthpoint.svg"

// stageHelp writes the manual pages, the change it was built from, and the completion of shells, as
// the programs themselves tell them.
func (r *release) stageHelp(bin, share string) error {
	tenth := filepath.Join(bin, "tenth")
	manual, err := exec.Command(tenth, "manual").Output()
	if err != nil {
		return fmt.Errorf("the manual page: %w", err)
	}
	desk, err := r.filled("tenthpoint.1")
	if err != nil {
		return err
	}
	changes, err := r.filled("changelog")
	if err != nil {
		return err
	}
	for place, text := range map[string][]byte{
		"man/man1/tenth.1.gz": manual, "man/man1/tenthpoint.1.gz": []byte(desk), "doc/tenthpoint/changelog.gz": []byte(changes),
	} {
		packed, err := zipped(text)
		if err != nil {
			return err
		}
		if err := put(filepath.Join(share, place), packed); err != nil {
			return err
		}
	}
	for shell, place := range map[string]string{
		"bash": "bash-completion/completions/tenth", "zsh": "zsh/vendor-completions/_tenth", "fish": "fish/vendor_completions.d/tenth.fish",
	} {
		script, err := exec.Command(tenth, "completion", shell).Output()
		if err != nil {
			return fmt.Errorf("the completion of %s: %w", shell, err)
		}
		if err := put(filepath.Join(share, place), script); err != nil {
			return err
		}
	}
	return nil
}

// zipped compresses without a name or a time, so that the same text gives the same bytes.
func zipped(text []byte) ([]byte, error) {
	var b bytes.Buffer
	w, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := w.Write(text); err != nil {
		return nil, err
	}
	err = w.Close()
	return b.Bytes(), err
}

// put writes a file and the folders above it.
func put(path string, text []byte) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return os.WriteFile(path, text, 0o644)
}

// dated gives every file below a folder the time of the commit.
func (r *release) dated(root string) error {
	return filepath.WalkDir(root, func(path string, _ fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		return os.Chtimes(path, r.at, r.at)
	})
}
