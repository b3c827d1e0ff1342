//go:build unix

package printing

import (
	"os"
	"strings"
	"tenthpoint/internal/message/errortest"
	"testing"
	"time"
)

// long is far beyond any test run: a test that waits for it hangs and is seen.
const long = time.Hour

func TestViewerWritesAndOpens(t *testing.T) {
	notes := fakeProgram(t, "xdg-open", "exit 0")
	receipt, err := Viewer{Folder: t.TempDir(), OS: "linux", Patience: long}.Send(t.Context(), slip())
	if err != nil {
		t.Fatal(err)
	}
	if got := noted(t, notes, "args"); got != receipt.Where+"\n" {
		t.Errorf("opened %q, want the file written, %s", got, receipt.Where)
	}
	if _, err := os.Stat(receipt.Where); err != nil {
		t.Error(err)
	}
}

func TestViewerThatCannotOpenStillGivesThePath(t *testing.T) {
	fakeProgram(t, "xdg-open", "exit 3")
	receipt, err := Viewer{Folder: t.TempDir(), OS: "linux", Patience: long}.Send(t.Context(), slip())
	if !errortest.Device("xdg-open").Met(err) {
		t.Errorf("error %v, want the opener's exit status", err)
	}
	if _, statErr := os.Stat(receipt.Where); statErr != nil {
		t.Errorf("the file is gone: %v", statErr)
	}
}

func TestViewerWithoutAnOpener(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	err := Viewer{OS: "linux"}.Open(t.Context(), "ticket-1042.pdf")
	if !errortest.Device().Met(err) {
		t.Errorf("error %v, want what to install", err)
	}
}

// An opener that stays as long as its window is open is not waited for, and
// outlives the call.
func TestViewerDoesNotWaitForTheWindow(t *testing.T) {
	fakeProgram(t, "xdg-open", `read line < "$(dirname "$0")/close"`)
	bin := os.Getenv("PATH")
	makeFIFO(t, bin+"/close")
	if err := (Viewer{OS: "linux", Patience: time.Nanosecond}).Open(t.Context(), "x.pdf"); err != nil {
		t.Fatal(err)
	}
	// The write to the pipe returns only when the opener, still alive, reads it.
	if err := os.WriteFile(bin+"/close", []byte("bye\n"), 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestViewerOpeners(t *testing.T) {
	const path = `/slips/a & b.pdf`
	for system, want := range map[string]string{
		"linux":   "xdg-open " + path,
		"freebsd": "xdg-open " + path,
		"darwin":  "open " + path,
		"windows": "rundll32 url.dll,FileProtocolHandler " + path,
	} {
		c := Viewer{OS: system}.opener(path)
		if got := c.name + " " + strings.Join(c.args, " "); got != want {
			t.Errorf("%s: %q, want %q", system, got, want)
		}
	}
}
