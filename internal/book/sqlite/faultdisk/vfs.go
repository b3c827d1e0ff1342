package faultdisk

import (
	"slices"
	"sync"
	"unsafe"

	"modernc.org/libc"
	sqlite3 "modernc.org/sqlite/lib"
)

// The disk that calls go to; SQLite's calls carry no value of ours.
var (
	disk      *Disk
	diskOnce  sync.Once
	system    uintptr                 // the VFS of the operating system
	faultyVFS uintptr                 // ours
	tables    = map[uintptr]uintptr{} // methods of the system's files by ours
	wrappers  = map[uintptr]uintptr{} // and the other way
)

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

// in is the value at an address of SQLite's own memory, which no collector moves.
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
	shares = func(tls *libc.TLS, file uintptr, region, size, extend int32, out uintptr) int32
	syncs  = func(tls *libc.TLS, file uintptr, flags int32) int32
)

func openFaulty(tls *libc.TLS, _, name, file uintptr, flags int32, out uintptr) int32 {
	if !disk.reads() {
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
	put[shares](&table.FxShmMap, mapFaulty)
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
	if !disk.reads() {
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
	if s := disk.kept[disk.files[file]]; s != nil && !disk.Forgets {
		for _, c := range s.pending {
			s.synced = c.on(s.synced)
		}
		s.pending = nil
	}
	return sqlite3.SQLITE_OK
}

// mapFaulty maps the memory that programs share, a file that has no room to grow on a full disk.
func mapFaulty(tls *libc.TLS, file uintptr, region, size, extend int32, out uintptr) int32 {
	if extend != 0 && disk.isFull() {
		return sqlite3.SQLITE_IOERR_SHMSIZE
	}
	real := systemMethods(file).FxShmMap
	return function[shares](real)(tls, file, region, size, extend, out)
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
