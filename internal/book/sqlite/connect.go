package sqlite

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

// access is the purpose of a connection, as settings. They are part of the connection string
// because a statement that sets one reaches a single connection of a pool.
type access url.Values

// probeAccess reads a file that may not be a book, and changes nothing in it.
func probeAccess(busy time.Duration) access {
	return access{
		"mode":          {"rw"},
		"_defensive":    {"1"},
		"_dqs":          {"0"},
		"_txlock":       {"immediate"},
		"_busy_timeout": {strconv.FormatInt(busy.Milliseconds(), 10)},
		"_pragma":       {"foreign_keys(1)", "recursive_triggers(1)", "trusted_schema(0)"},
	}
}

// createAccess is probeAccess to a file that may not exist yet.
func createAccess(busy time.Duration) access {
	a := probeAccess(busy)
	a["mode"] = []string{"rwc"}
	return a
}

// writeAccess is for the one connection that writes. Each commit reaches the disk
// before it returns; fullfsync makes that true on macOS as well.
func writeAccess(busy time.Duration) access {
	a := probeAccess(busy)
	a["_journal_mode"] = []string{"WAL"}
	a["_synchronous"] = []string{"FULL"}
	a["_pragma"] = append(a["_pragma"], "fullfsync(1)", "checkpoint_fullfsync(1)")
	return a
}

// scratchAccess writes without waiting for the disk, for scratch books.
func scratchAccess(busy time.Duration) access {
	a := writeAccess(busy)
	a["_synchronous"] = []string{"OFF"}
	return a
}

// readingAccess is for the pool that only reads. The file is not opened in mode
// "ro": such a connection, when it is the last, leaves files beside the book.
func readingAccess(busy time.Duration) access {
	a := probeAccess(busy)
	a["_query_only"] = []string{"1"}
	a["_txlock"] = []string{"deferred"}
	return a
}

// connect makes a pool of up to most connections to the file; the file is not
// touched before the first use.
func connect(path string, a access, most int) (*sql.DB, error) {
	db, err := sql.Open("sqlite", fileName(path, a))
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(most)
	db.SetMaxIdleConns(most)
	return db, nil
}

// fileName is a file with an access, as SQLite takes it.
func fileName(path string, a access) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // a drive letter
	}
	name := url.URL{Scheme: "file", Path: slashed, RawQuery: url.Values(a).Encode()}
	return name.String()
}

// mostReaders is the size of the reading pool. Each running iteration over facts holds one
// connection, so it is not small.
func mostReaders() int {
	return max(8, runtime.NumCPU())
}
