//go:build cgo && linux

package main

import (
	"errors"
	"net"
	"os/exec"
	"testing"
	"time"
)

// A second claim of a book brings the first one forward; another book is free, and so is one whose window
// has closed or was killed.
func TestOneWindowABook(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	forward := make(chan bool, 1)
	release, err := claimWindow("a.book", func() { forward <- true })
	must(t, err)
	if _, err := claimWindow("a.book", func() {}); !errors.Is(err, errAlreadyOpen) {
		t.Errorf("a second window opens: %v", err)
	}
	select {
	case <-forward:
	case <-time.After(5 * time.Second):
		t.Error("the first window was not asked to come forward")
	}
	other, err := claimWindow("b.book", func() {})
	must(t, err)
	must(t, other())
	must(t, release())
	again, err := claimWindow("a.book", func() {})
	must(t, err)
	must(t, again())

	path, err := windowSocket("a.book")
	must(t, err)
	left, err := net.Listen("unix", path)
	must(t, err)
	left.(*net.UnixListener).SetUnlinkOnClose(false) // as a kill leaves it
	must(t, left.Close())
	after, err := claimWindow("a.book", func() {})
	must(t, err)
	must(t, after())
}

// A second start of the program ends at once and well, and the first window has the keyboard again.
func TestSecondStart(t *testing.T) {
	d := newDesktop(t)
	d.fill(20)
	d.open()
	second := exec.Command(d.program.Path)
	second.Env = d.program.Env
	began := time.Now()
	said, err := second.CombinedOutput()
	if err != nil || time.Since(began) > patience || len(said) == 0 {
		t.Errorf("the second start ended with %v after %s: %s", err, time.Since(began), said)
	}
	if err := d.tool("search", "--onlyvisible", "--name", "^Tenthpoint"); err != nil {
		t.Errorf("the first window is gone: %v", err)
	}
}
