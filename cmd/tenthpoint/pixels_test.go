//go:build cgo && linux && keys

package main

import (
	"bytes"
	"encoding/binary"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"
)

// pixels is the framebuffer of a test's display: what a person at it would see, as soon as it is drawn.
type pixels struct {
	live []byte // shared with the display
	seen []byte // as of the last look
}

// atRest is how long a picture must stay the same to be the one a key leads to: the window draws sixty
// times a second, and what is worked out beside it is drawn a few pictures later.
const atRest = 120 * time.Millisecond

// pixels maps the framebuffer, which the display keeps in a file.
func (d *testDesktop) pixels() *pixels {
	d.t.Helper()
	file, err := os.Open(filepath.Join(d.folder, "Xvfb_screen0"))
	must(d.t, err)
	defer file.Close()
	about, err := file.Stat()
	must(d.t, err)
	mapped, err := syscall.Mmap(int(file.Fd()), 0, int(about.Size()), syscall.PROT_READ, syscall.MAP_SHARED)
	must(d.t, err)
	d.t.Cleanup(func() { _ = syscall.Munmap(mapped) })
	head := binary.BigEndian.Uint32(mapped) // an XWD file names the size of its head first
	p := &pixels{live: mapped[head:]}
	p.look()
	return p
}

// look keeps the picture and says whether it is another one than before.
func (p *pixels) look() bool {
	if bytes.Equal(p.live, p.seen) {
		return false
	}
	p.seen = append(p.seen[:0], p.live...)
	return true
}

// slip is the part of the picture where the yard shows the slip: the right quarter of the display.
func (p *pixels) slip() string {
	var part []byte
	for line := range displayHigh {
		end := len(p.seen) - 4*displayWide*line
		part = append(part, p.seen[end-displayWide:end]...) // four bytes a point
	}
	return string(part)
}

// rest waits until the picture has stayed the same for a while.
func (p *pixels) rest() {
	for last := time.Now(); time.Since(last) < atRest; time.Sleep(time.Millisecond) {
		if p.look() {
			last = time.Now()
		}
	}
}

// after does something and gives the time from then to the last change of the picture.
func (p *pixels) after(t *testing.T, do func()) time.Duration {
	t.Helper()
	p.rest()
	began := time.Now()
	do()
	var changed time.Time
	for changed.IsZero() || time.Since(changed) < atRest {
		time.Sleep(500 * time.Microsecond)
		switch now := time.Now(); {
		case p.look():
			changed = now
		case now.Sub(began) > patience:
			t.Fatalf("the picture did not change within %s", patience)
		}
	}
	return changed.Sub(began)
}
