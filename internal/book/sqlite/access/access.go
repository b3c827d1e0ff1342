// Package access connects to the file of a book, each time with the settings of a purpose.
package access

import (
	"database/sql"
	"net/url"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"time"

	_ "modernc.org/sqlite" // the driver "sqlite"
)

// Purpose is the settings of a connection by its use. They are part of the connection string
// because a statement that sets one reaches a single connection of a pool.
type Purpose url.Values

// Probe reads a file that may not be a book, and changes nothing in it.
func Probe(busy time.Duration) Purpose {
	return Purpose{
		"mode":          {"rw"},
		"_defensive":    {"1"},
		"_dqs":          {"0"},
		"_txlock":       {"immediate"},
		"_busy_timeout": {strconv.FormatInt(busy.Milliseconds(), 10)},
		"_pragma":       {"foreign_keys(1)", "recursive_triggers(1)", "trusted_schema(0)"},
	}
}

// Create is Probe to a file that may not exist yet.
func Create(busy time.Duration) Purpose {
	a := Probe(busy)
	a["mode"] = []string{"rwc"}
	return a
}

// Write is for the one connection that writes. Each commit reaches the disk
// before it returns; fullfsync makes that true on macOS as well.
func Write(busy time.Duration) Purpose {
	a := Probe(busy)
	a["_journal_mode"] = []string{"WAL"}
	a["_synchronous"] = []string{"FULL"}
	a["_pragma"] = append(a["_pragma"], "fullfsync(1)", "checkpoint_fullfsync(1)")
	return a
}

// Scratch writes without waiting for the disk, for scratch books.
func Scratch(busy time.Duration) Purpose {
	a := Write(busy)
	a["_synchronous"] = []string{"OFF"}
	return a
}

// Reading is for the pool that only reads. The file is not opened in mode
// "ro": such a connection, when it is the last, leaves files beside the book.
func Reading(busy time.Duration) Purpose {
	a := Probe(busy)
	a["_query_only"] = []string{"1"}
	a["_txlock"] = []string{"deferred"}
	return a
}

// draftPatience is the timeout of saving a draft while another program writes. A person is typing:
// the next keystroke brings the same text again.
const draftPatience = 20 * time.Millisecond

// Draft is for the connection that saves drafts. What it commits has left the program
// and outlives it, but does not wait for the disk: the next fact takes it there.
// It leaves the tidying of the log to the writer, which waits for the disk
// anyhow.
func Draft() Purpose {
	a := Write(draftPatience)
	a["_synchronous"] = []string{"NORMAL"}
	a["_pragma"] = append(a["_pragma"], "wal_autocheckpoint(0)")
	return a
}

// Connect makes a pool of up to most connections to the file; the file is not
// touched before the first use.
func Connect(path string, a Purpose, most int) (*sql.DB, error) {
	db, err := sql.Open("sqlite", FileName(path, a))
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(most)
	db.SetMaxIdleConns(most)
	return db, nil
}

// FileName is a file with a purpose, as SQLite takes it.
func FileName(path string, a Purpose) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // a drive letter
	}
	name := url.URL{Scheme: "file", Path: slashed, RawQuery: url.Values(a).Encode()}
	return name.String()
}

// MostReaders is the size of the reading pool. Each running iteration over facts holds one
// connection, so it is not small.
func MostReaders() int {
	return max(8, runtime.NumCPU())
}
