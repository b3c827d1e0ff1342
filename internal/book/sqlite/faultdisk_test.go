package sqlite

import (
	"math/rand/v2"
	"os"
	"slices"
	"sync"
	"testing"
	"unsafe"

	"modernc.org/libc"
	sqlite3 "modernc.org/sqlite/lib"
)

// A faultDisk stands between SQLite and the disk: a VFS that hands every call on to
// the one of the operating system and may fail it, run out of room, or lose what was
// not yet synced, as a disk does when the power goes. It registers itself as the
// default while a test lasts, so that a book is opened as ever.
//
// Locks, shared memory and what reads are handed on as they are. What this does not
// show is a disk that lies about a sync, or that spoils what it had already kept.
type faultDisk struct {
	mu     sync.Mutex
	calls  int                 // that could fail, so far
	failAt int                 // which of them fails; zero is none
	fault  fault               // and how
	dead   bool                // the power has gone: nothing works any more
	files  map[uintptr]string  // open files by SQLite's handle
	kept   map[string]*surface // what the disk has of each file
}

type fault int

const (
	once     fault = iota // the call fails, the next one works
	full                  // from this call on there is no room
	powerCut              // from this call on nothing works, and what was not synced may be gone
)

// surface is what a file is on the disk: as it was last synced, and what was written
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

// The disk that calls go to; SQLite's calls carry no value of ours.
var (
	disk      *faultDisk
	diskOnce  sync.Once
	system    uintptr                 // the VFS of the operating system
	faultyVFS uintptr                 // ours
	tables    = map[uintptr]uintptr{} // methods of the system's files by ours
	wrappers  = map[uintptr]uintptr{} // and the other way
)

// newFaultDisk puts a faulty disk under every book opened while the test lasts.
func newFaultDisk(t testing.TB) *faultDisk {
	tls := libc.NewTLS()
	diskOnce.Do(func() { makeFaultyVFS(tls) })
	disk = &faultDisk{files: map[uintptr]string{}, kept: map[string]*surface{}}
	if rc := sqlite3.Xsqlite3_vfs_register(tls, faultyVFS, 1); rc != sqlite3.SQLITE_OK {
		t.Fatalf("the faulty disk cannot be registered: %d", rc)
	}
	t.Cleanup(func() {
		sqlite3.Xsqlite3_vfs_register(tls, system, 1)
		tls.Close()
	})
	return disk
}

func makeFaultyVFS(tls *libc.TLS) {
	system = sqlite3.Xsqlite3_vfs_find(tls, 0)
	size := unsafe.Sizeof(sqlite3.Tsqlite3_vfs{})
	faultyVFS = libc.Xmalloc(tls, libc.Tsize_t(size))
	*vfsAt(faultyVFS) = *vfsAt(system)
	name, err := libc.CString("faulty")
	if err != nil {
		panic(err)
	}
	vfsAt(faultyVFS).FzName = name
	put[opens](&vfsAt(faultyVFS).FxOpen, openFaulty)
	put[drops](&vfsAt(faultyVFS).FxDelete, deleteFaulty)
}

// in is what lies at an address of SQLite's own memory, which no collector moves.
func in[T any](address uintptr) *T { return *(**T)(unsafe.Pointer(&address)) }

func vfsAt(p uintptr) *sqlite3.Tsqlite3_vfs { return in[sqlite3.Tsqlite3_vfs](p) }

func methodsAt(p uintptr) *sqlite3.Tsqlite3_io_methods { return in[sqlite3.Tsqlite3_io_methods](p) }

// function is a function of SQLite's by its address.
func function[F any](address uintptr) F { return *(*F)(unsafe.Pointer(&struct{ uintptr }{address})) }

// put puts a function of ours into a table of SQLite's.
func put[F any](into *uintptr, f F) { *(*F)(unsafe.Pointer(into)) = f }

// The functions of a VFS and of its files, as SQLite calls them.
type (
	opens  = func(tls *libc.TLS, vfs, name, file uintptr, flags int32, out uintptr) int32
	drops  = func(tls *libc.TLS, vfs, name uintptr, syncFolder int32) int32
	closes = func(tls *libc.TLS, file uintptr) int32
	moves  = func(tls *libc.TLS, file, data uintptr, n int32, at int64) int32
	cuts   = func(tls *libc.TLS, file uintptr, to int64) int32
	syncs  = func(tls *libc.TLS, file uintptr, flags int32) int32
)

func openFaulty(tls *libc.TLS, _, name, file uintptr, flags int32, out uintptr) int32 {
	if !disk.works() {
		return sqlite3.SQLITE_CANTOPEN
	}
	real := vfsAt(system).FxOpen
	rc := function[opens](real)(tls, system, name, file, flags, out)
	methods := in[uintptr](file)
	if rc == sqlite3.SQLITE_OK && *methods != 0 && name != 0 {
		disk.opened(file, libc.GoString(name))
		*methods = wrapped(tls, *methods)
	}
	return rc
}

// wrapped is the system's table of methods with ours in place of those that write.
func wrapped(tls *libc.TLS, methods uintptr) uintptr {
	disk.mu.Lock()
	defer disk.mu.Unlock()
	if known, ok := wrappers[methods]; ok {
		return known
	}
	ours := libc.Xmalloc(tls, libc.Tsize_t(unsafe.Sizeof(sqlite3.Tsqlite3_io_methods{})))
	table := methodsAt(ours)
	*table = *methodsAt(methods)
	put[closes](&table.FxClose, closeFaulty)
	put[moves](&table.FxRead, readFaulty)
	put[moves](&table.FxWrite, writeFaulty)
	put[cuts](&table.FxTruncate, truncateFaulty)
	put[syncs](&table.FxSync, syncFaulty)
	wrappers[methods], tables[ours] = ours, methods
	return ours
}

// systemMethods are those of the system for an open file.
func systemMethods(file uintptr) *sqlite3.Tsqlite3_io_methods {
	disk.mu.Lock()
	defer disk.mu.Unlock()
	return methodsAt(tables[*in[uintptr](file)])
}

func closeFaulty(tls *libc.TLS, file uintptr) int32 {
	real := systemMethods(file).FxClose
	disk.mu.Lock()
	delete(disk.files, file)
	disk.mu.Unlock()
	return function[closes](real)(tls, file)
}

func readFaulty(tls *libc.TLS, file, into uintptr, n int32, at int64) int32 {
	if !disk.works() {
		return sqlite3.SQLITE_IOERR_READ
	}
	real := systemMethods(file).FxRead
	return function[moves](real)(tls, file, into, n, at)
}

func writeFaulty(tls *libc.TLS, file, from uintptr, n int32, at int64) int32 {
	data := slices.Clone(unsafe.Slice(in[byte](from), n))
	if rc := disk.changes(file, change{at: at, data: data}, sqlite3.SQLITE_IOERR_WRITE); rc != sqlite3.SQLITE_OK {
		return rc
	}
	real := systemMethods(file).FxWrite
	return function[moves](real)(tls, file, from, n, at)
}

func truncateFaulty(tls *libc.TLS, file uintptr, to int64) int32 {
	if rc := disk.changes(file, change{at: to, cut: true}, sqlite3.SQLITE_IOERR_TRUNCATE); rc != sqlite3.SQLITE_OK {
		return rc
	}
	real := systemMethods(file).FxTruncate
	return function[cuts](real)(tls, file, to)
}

// syncFaulty brings what was written to the surface. The system's own sync is left
// out: this disk keeps what it keeps in memory, and a real one would take its time.
func syncFaulty(_ *libc.TLS, file uintptr, _ int32) int32 {
	if !disk.works() {
		return sqlite3.SQLITE_IOERR_FSYNC
	}
	disk.mu.Lock()
	defer disk.mu.Unlock()
	if s := disk.kept[disk.files[file]]; s != nil && !disk.forgets() {
		for _, c := range s.pending {
			s.synced = c.on(s.synced)
		}
		s.pending = nil
	}
	return sqlite3.SQLITE_OK
}

func deleteFaulty(tls *libc.TLS, _, name uintptr, syncFolder int32) int32 {
	if !disk.works() {
		return sqlite3.SQLITE_IOERR_DELETE
	}
	disk.mu.Lock()
	delete(disk.kept, libc.GoString(name))
	disk.mu.Unlock()
	real := vfsAt(system).FxDelete
	return function[drops](real)(tls, system, name, syncFolder)
}

// neverSyncs is the planted bug of a disk that forgets to sync; see the test of it.
var neverSyncs bool

func (d *faultDisk) forgets() bool { return neverSyncs }

// works counts a call and reports whether it does what it should.
func (d *faultDisk) works() bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.count() && (!d.dead)
}

// count is for whoever holds the lock.
func (d *faultDisk) count() bool {
	d.calls++
	due := d.failAt > 0 && d.calls == d.failAt
	if due && d.fault == powerCut {
		d.dead = true
	}
	return !due || d.fault == full
}

// changes counts a call that changes a file, and notes the change if it works.
func (d *faultDisk) changes(file uintptr, c change, failed int32) int32 {
	d.mu.Lock()
	defer d.mu.Unlock()
	works := d.count()
	if d.fault == full && d.failAt > 0 && d.calls >= d.failAt && !c.cut {
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
func (d *faultDisk) opened(file uintptr, path string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.files[file] = path
	if d.kept[path] == nil {
		now, _ := os.ReadFile(path) // else it has just been made
		d.kept[path] = &surface{synced: now}
	}
}

// fails lets the n-th call from now on fail.
func (d *faultDisk) fails(n int, how fault) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.calls, d.failAt, d.fault, d.dead = 0, n, how, false
}

// afterPowerCut writes the files as a disk may have them when the power is back: what
// was synced, and of what was written since each piece whole, in part or not at all.
func (d *faultDisk) afterPowerCut(t testing.TB, draw *rand.Rand) {
	d.mu.Lock()
	defer d.mu.Unlock()
	for path, s := range d.kept {
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
		if err := os.WriteFile(path, file, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	d.failAt, d.dead, d.kept = 0, false, map[string]*surface{}
}
