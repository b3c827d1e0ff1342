// Package faultdisk puts a faulty disk under SQLite, for tests.
//
// A [Disk] stands between SQLite and the disk: a VFS that hands every call on to the one of the
// operating system and may fail it, run out of room, or lose what was not yet synced, as a disk
// does when the power goes. It registers itself as the default while a test lasts, so that a book
// is opened as ever. One disk lasts at a time.
//
// Locks and what reads are handed on as they are. What this does not show is a disk
// that lies about a sync, or that spoils what it had already kept.
package faultdisk

import (
	"maps"
	"math/rand/v2"
	"os"
	"slices"
	"sync"
	"testing"

	"modernc.org/libc"
	sqlite3 "modernc.org/sqlite/lib"
)

// A Disk counts the calls that come to it, and fails one of them.
type Disk struct {
	// Forgets is the bug of a disk that says it has synced and did not.
	Forgets bool
	// WritesOnly leaves calls that read or open out of the count. How many there are depends on
	// what is cached; what is written does not.
	WritesOnly bool

	mu     sync.Mutex
	calls  int                 // that could fail, so far
	failAt int                 // which of them fails; zero is none
	fault  Fault               // and how
	dead   bool                // nothing works any more
	spares bool                // calls neither fail nor count for now
	files  map[uintptr]string  // open files by SQLite's handle
	kept   map[string]*surface // what the disk has of each file
}

// A Fault is the kind of failure injected into a call.
type Fault int

// The faults.
const (
	Once  Fault = iota // the call fails, the next one works
	Full               // from this call on there is no room
	Death              // from this call on nothing works: the program was killed, or the power is gone
)

// surface is the content of a file on the disk: as it was last synced, and what was written
// since, which may come there in part and in any order.
type surface struct {
	synced  []byte
	pending []change
}

// change is a write, or with no data the file cut to a length.
type change struct {
	at   int64
	data []byte
	cut  bool
}

func (c change) on(file []byte) []byte {
	if c.cut {
		return resized(file, c.at)
	}
	if end := c.at + int64(len(c.data)); end > int64(len(file)) {
		file = resized(file, end)
	}
	copy(file[c.at:], c.data)
	return file
}

func resized(file []byte, to int64) []byte {
	if to <= int64(len(file)) {
		return file[:to]
	}
	return append(file, make([]byte, to-int64(len(file)))...)
}

// New puts a faulty disk under every book opened while the test lasts.
func New(t testing.TB) *Disk {
	tls := libc.NewTLS()
	diskOnce.Do(func() { makeFaultyVFS(tls) })
	disk = &Disk{files: map[uintptr]string{}, kept: map[string]*surface{}}
	if rc := sqlite3.Xsqlite3_vfs_register(tls, faultyVFS, 1); rc != sqlite3.SQLITE_OK {
		t.Fatalf("the faulty disk cannot be registered: %d", rc)
	}
	t.Cleanup(func() {
		sqlite3.Xsqlite3_vfs_register(tls, system, 1)
		tls.Close()
	})
	return disk
}

// reads counts a call that changes nothing and reports whether it works.
func (d *Disk) reads() bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	return (d.WritesOnly || d.count()) && !d.dead
}

// works counts a call and reports whether it does what it should.
func (d *Disk) works() bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.count() && !d.dead
}

// count is for whoever holds the lock.
func (d *Disk) count() bool {
	if d.spares {
		return true
	}
	d.calls++
	due := d.failAt > 0 && d.calls == d.failAt
	if due && d.fault == Death {
		d.dead = true
	}
	return !due || d.fault == Full
}

// isFull reports whether the disk has no room any more.
func (d *Disk) isFull() bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.lacksRoom()
}

// lacksRoom is for whoever holds the lock.
func (d *Disk) lacksRoom() bool {
	return d.fault == Full && d.failAt > 0 && d.calls >= d.failAt && !d.spares
}

// changes counts a call that changes a file, and notes the change if it works.
func (d *Disk) changes(file uintptr, c change, failed int32) int32 {
	d.mu.Lock()
	defer d.mu.Unlock()
	works := d.count()
	if d.lacksRoom() && !c.cut {
		return sqlite3.SQLITE_FULL
	}
	if s := d.kept[d.files[file]]; s != nil && (works || d.dead) { // a write cut short may have come to the disk in part
		if d.calls <= d.failAt || !d.dead {
			s.pending = append(s.pending, c)
		}
	}
	if !works || d.dead {
		return failed
	}
	return sqlite3.SQLITE_OK
}

// opened notes a file and what the disk has of it.
func (d *Disk) opened(file uintptr, path string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.files[file] = path
	if d.kept[path] == nil {
		now, _ := os.ReadFile(path) // else it has just been made
		d.kept[path] = &surface{synced: now}
	}
}

// Fail lets the n-th call from now on fail; none where n is zero. What failed before is forgotten,
// and a dead disk lives again.
func (d *Disk) Fail(n int, how Fault) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.calls, d.failAt, d.fault, d.dead = 0, n, how, false
}

// Calls is the number of calls since the last [Disk.Fail].
func (d *Disk) Calls() int {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.calls
}

// Struck reports whether the call that was to fail has come.
func (d *Disk) Struck() bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.failAt > 0 && d.calls >= d.failAt
}

// Spare lets a task's calls pass: they neither fail nor count.
func (d *Disk) Spare(task func()) {
	set := func(spares bool) {
		d.mu.Lock()
		defer d.mu.Unlock()
		d.spares = spares
	}
	set(true)
	defer set(false)
	task()
}

// AfterKill leaves the files as the operating system has them: it keeps what a program wrote before
// it was killed, synced or not. Books must be closed first.
func (d *Disk) AfterKill() {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.failAt, d.dead, d.kept = 0, false, map[string]*surface{}
}

// AfterPowerCut writes the files as a disk may have them when the power is back: what
// was synced, and of what was written since each piece whole, in part or not at all.
// Books must be closed first.
func (d *Disk) AfterPowerCut(t testing.TB, draw *rand.Rand) {
	d.mu.Lock()
	defer d.mu.Unlock()
	for _, path := range slices.Sorted(maps.Keys(d.kept)) {
		file := torn(*d.kept[path], draw)
		if err := os.WriteFile(path, file, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	d.failAt, d.dead, d.kept = 0, false, map[string]*surface{}
}

func torn(s surface, draw *rand.Rand) []byte {
	file := slices.Clone(s.synced)
	for _, c := range s.pending {
		switch draw.IntN(3) {
		case 0:
			file = c.on(file)
		case 1:
			if !c.cut {
				c.data = c.data[:draw.IntN(len(c.data)+1)]
				file = c.on(file)
			}
		}
	}
	return file
}
