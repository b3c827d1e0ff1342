package installer

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"tenthpoint/cmd/task/toolchain"
)

// A winePrefix is a Windows in a folder, played by wine, with a display of its own. What it cannot
// tell is how real drivers, printers and scaled screens behave.
type winePrefix struct {
	folder string
	env    []string
	server *exec.Cmd
}

// randomDLL gives wine the one function it lacks that Go asks of Windows. It is for this tryout
// alone and never handed out.
const randomDLL = `#include <windows.h>
BOOLEAN NTAPI SystemFunction036(PVOID, ULONG);
__declspec(dllexport) BOOL WINAPI ProcessPrng(PBYTE data, SIZE_T size) { return SystemFunction036(data, (ULONG)size); }
`

// wineLimit is the timeout of one step: the first start of wine makes a whole Windows.
const wineLimit = 10 * time.Minute

// TryWindows installs the Windows installer of a folder under wine without a question, works with
// what it installed, and removes it again.
func TryWindows(args []string) (err error) {
	flags := flag.NewFlagSet("package-try-windows", flag.ContinueOnError)
	out := flags.String("out", "dist", "the folder with the installer")
	if err := flags.Parse(args); err != nil {
		return err
	}
	found, err := filepath.Glob(filepath.Join(*out, "*-installer.exe"))
	if err != nil || len(found) != 1 {
		return fmt.Errorf("%s has %d installers (%v): make one with -only windows", *out, len(found), err)
	}
	work, err := os.MkdirTemp("", "tenthpoint-wine-")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(work)) }()
	w, err := newWine(work)
	if err != nil {
		return err
	}
	defer w.end()
	return w.tryInstaller(found[0])
}

// newWine makes the Windows and starts its display.
func newWine(work string) (*winePrefix, error) {
	w := &winePrefix{folder: filepath.Join(work, "prefix"), server: exec.Command("Xvfb", "-displayfd", "1", "-screen", "0", "1280x800x24", "-nolisten", "tcp")}
	told, err := w.server.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := w.server.Start(); err != nil {
		return nil, err
	}
	var number string
	if _, err := fmt.Fscan(told, &number); err != nil {
		return nil, fmt.Errorf("the display did not start: %w", err)
	}
	w.env = append(os.Environ(), "WINEPREFIX="+w.folder, "WINEARCH=win64", "WINEDEBUG=-all", "DISPLAY=:"+number,
		"LIBGL_ALWAYS_SOFTWARE=1", "WINEDLLOVERRIDES=bcryptprimitives=n,b;mscoree=;mshtml=")
	toolchain.Say("Making a Windows for the tryout; it takes a minute or two.")
	if err := w.does("wineboot", "-i"); err != nil {
		return nil, err
	}
	source := filepath.Join(work, "random.c")
	if err := put(source, []byte(randomDLL)); err != nil {
		return nil, err
	}
	return w, command(work, mingw+"gcc", "-shared", "-o", filepath.Join(w.drive(), "windows/system32/bcryptprimitives.dll"), source, "-ladvapi32")
}

func (w *winePrefix) drive() string { return filepath.Join(w.folder, "drive_c") }

// end stops everything that runs in the prefix, and the display.
func (w *winePrefix) end() {
	_ = w.does("wineserver", "-k")
	_ = w.server.Process.Kill()
	_ = w.server.Wait()
}

// does runs a program, a Windows one or one of wine's own.
func (w *winePrefix) does(name string, args ...string) error {
	if strings.HasSuffix(name, ".exe") {
		name, args = "wine", append([]string{name}, args...)
	}
	ctx, stop := context.WithTimeout(context.Background(), wineLimit)
	defer stop()
	cmd := exec.CommandContext(ctx, name, args...)
	cmd.Env = w.env
	return quietly(cmd)
}

// tryInstaller installs, works and removes.
func (w *winePrefix) tryInstaller(installer string) error {
	if err := w.does(installer, "/S", "/CurrentUser"); err != nil {
		return err
	}
	folder, err := w.installed()
	if err != nil {
		return err
	}
	toolchain.Say("ok    it is installed for one person")
	book := filepath.Join(w.drive(), "kept.book")
	for _, step := range []struct {
		said string
		line []string
	}{
		{"tenth says its version", []string{"tenth.exe", "--version"}},
		{"it makes a book", []string{"tenth.exe", "demo", "--book", `C:\kept.book`, "--loads", "20"}},
		{"the book is sound", []string{"tenth.exe", "verify", "--book", `C:\kept.book`}},
		{"the window tries itself", []string{"tenthpoint.exe", "--selftest"}},
		{"it is removed", []string{"uninstall.exe", "/S", "/CurrentUser", "_?=" + windowsPath(w.drive(), folder)}},
	} {
		if err := w.does(filepath.Join(folder, step.line[0]), step.line[1:]...); err != nil {
			return fmt.Errorf("%s: %w", step.said, err)
		}
		toolchain.Say("ok    %s", step.said)
	}
	if _, err := os.Stat(filepath.Join(folder, "tenthpoint.exe")); err == nil {
		return errors.New("the program is still there after it was removed")
	}
	if _, err := os.Stat(book); err != nil {
		return fmt.Errorf("the book did not stay: %w", err)
	}
	toolchain.Say("ok    the book stays")
	return nil
}

// installed is the folder the installer chose.
func (w *winePrefix) installed() (string, error) {
	var folder string
	err := filepath.WalkDir(w.drive(), func(path string, _ os.DirEntry, err error) error {
		if err == nil && filepath.Base(path) == "tenthpoint.exe" {
			folder = filepath.Dir(path)
		}
		return err
	})
	if err == nil && folder == "" {
		err = errors.New("the installer left no program")
	}
	return folder, err
}

// windowsPath is a path of the drive as Windows names it.
func windowsPath(drive, path string) string {
	return `C:` + strings.ReplaceAll(strings.TrimPrefix(path, drive), "/", `\`)
}
