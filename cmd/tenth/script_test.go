package main

import (
	"compress/gzip"
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
	_ "modernc.org/sqlite" // scripts look into books, and alter them, past the program

	"tenthpoint/cmd/tenth/terminal"
)

var update = flag.Bool("update", false, "write what the scripts compare with anew")

const scripts = "../../testdata/terminal"

// nowVariable moves the clock of a script. The program itself knows nothing of
// it: the clock is the test's.
const nowVariable = "SCRIPT_NOW"

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"tenth": func() {
			debug.SetGCPercent(collectorPercent)
			os.Exit(run(context.Background(), os.Args[1:], terminal.New(scriptClock, time.UTC)))
		},
	})
}

func scriptClock() time.Time {
	now, err := time.Parse("2006-01-02 15:04", os.Getenv(nowVariable))
	if err != nil {
		panic(err)
	}
	return now
}

// TestScripts runs every script of testdata/terminal. Each has a folder, a data
// folder and a clock of its own.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:           scripts,
		UpdateScripts: *update,
		Setup: func(e *testscript.Env) error {
			e.Setenv("TZ", "UTC")
			e.Setenv(nowVariable, "2026-10-01 13:00")
			e.Setenv("XDG_CONFIG_HOME", filepath.Join(e.WorkDir, "data"))
			e.Setenv("HOME", filepath.Join(e.WorkDir, "home"))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"house-rates": houseRates,
			"elevator":    setUpElevator,
			"remember":    remember,
			"unchanged":   unchanged,
			"alter":       alter,
			"kept-book":   keptBook,
			"is-pdf":      isPDF,
			"code-of":     codeOf,
			"replace":     replace,

			"figures-are-text": figuresAreText,
		},
	})
}

// houseRates DIR puts the rates of the scripts' elevator into a folder.
func houseRates(ts *testscript.TestScript, _ bool, args []string) {
	text, err := os.ReadFile(filepath.Join(scripts, "house-corn.toml"))
	ts.Check(err)
	folder := ts.MkAbs(args[0])
	ts.Check(os.MkdirAll(folder, 0o755))
	ts.Check(os.WriteFile(filepath.Join(folder, "house-corn.toml"), text, 0o644))
}

// elevatorBook is the book of the scripts' elevator, set up by the first script that
// asks for it and copied for the others.
var elevatorBook struct {
	sync.Mutex
	content []byte
}

// setUpElevator sets house.book up as the elevator of the scripts, with a manager, a
// clerk who acts when nobody is named, two growers who share and one who does
// not, and a truck.
func setUpElevator(ts *testscript.TestScript, _ bool, _ []string) {
	houseRates(ts, false, []string{"schedules"})
	book := ts.MkAbs("house.book")
	ts.Setenv("TENTHPOINT_BOOK", book)
	elevatorBook.Lock()
	defer elevatorBook.Unlock()
	if elevatorBook.content != nil {
		ts.Check(os.WriteFile(book, elevatorBook.content, 0o600))
		return
	}
	for _, line := range [][]string{
		{"setup", "--business", "Our Elevator", "--street", "1 Siding Road", "--town", "Nowhere", "--phone", "555-0100",
			"--scale", "1=20lb,120000lb", "--grain", "corn=house", "--who", "Mae Orton"},
		{"person", "add", "Cal Reyes", "--who", "Mae Orton"},
		{"setup", "--weigher", "Cal Reyes", "--who", "Mae Orton"},
		{"grower", "add", "901", "Estate of R. Pomfret"},
		{"grower", "add", "102", "Beatrix Holloway", "--share", "102=2/3", "--share", "901=1/3"},
		{"grower", "add", "103", "Cobb Hollow Farm"},
		{"truck", "add", "7", "--plate", "ABC 123", "--tare", "24300"},
		{"bin", "add", "P1", "Pit 1"},
	} {
		ts.Check(ts.Exec("tenth", line...))
	}
	var err error
	elevatorBook.content, err = os.ReadFile(book)
	ts.Check(err)
}

// keptBook NAME BOOK is a copy of a book that an older program made.
func keptBook(ts *testscript.TestScript, _ bool, args []string) {
	packed, err := os.Open(filepath.Join("..", "..", "testdata", "books", args[0]+".book.gz"))
	ts.Check(err)
	defer packed.Close()
	unpacked, err := gzip.NewReader(packed)
	ts.Check(err)
	whole, err := io.ReadAll(unpacked)
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), whole, 0o644))
}

// remember BOOK keeps all that the book holds.
func remember(ts *testscript.TestScript, _ bool, args []string) {
	ts.Setenv("REMEMBERED", contents(ts, args[0]))
}

// unchanged BOOK wants the book to hold just what was remembered; with ! it
// wants something else.
func unchanged(ts *testscript.TestScript, not bool, args []string) {
	if same := contents(ts, args[0]) == ts.Getenv("REMEMBERED"); same == not {
		ts.Fatalf("the book is unchanged: %v", same)
	}
}

// contents is the SHA-256 of everything a book holds.
func contents(ts *testscript.TestScript, book string) string {
	db, err := sql.Open("sqlite", "file:"+ts.MkAbs(book))
	ts.Check(err)
	defer db.Close()
	var b strings.Builder
	for _, table := range []string{"facts", "editions", "series", "loads", "owners", "standing"} {
		rows, err := db.Query("SELECT * FROM " + table + " ORDER BY 1, 2")
		ts.Check(err)
		columns, err := rows.Columns()
		ts.Check(err)
		for rows.Next() {
			cells, into := make([]any, len(columns)), make([]any, len(columns))
			for i := range cells {
				into[i] = &cells[i]
			}
			ts.Check(rows.Scan(into...))
			fmt.Fprintf(&b, "%s %q\n", table, cells)
		}
		ts.Check(rows.Close())
	}
	return fmt.Sprintf("%x", sha256.Sum256([]byte(b.String())))
}

// alter BOOK SQL changes a book past its triggers and puts them back, as
// somebody with another program might.
func alter(ts *testscript.TestScript, _ bool, args []string) {
	db, err := sql.Open("sqlite", "file:"+ts.MkAbs(args[0]))
	ts.Check(err)
	defer db.Close()
	rows, err := db.Query("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
	ts.Check(err)
	var drop, again []string
	for rows.Next() {
		var name, text string
		ts.Check(rows.Scan(&name, &text))
		drop, again = append(drop, "DROP TRIGGER "+name), append(again, text)
	}
	ts.Check(rows.Close())
	for _, statement := range append(append(drop, args[1]), again...) {
		_, err := db.Exec(statement)
		ts.Check(err)
	}
}

// replace OLD NEW FILE changes a text in a file, which must contain it.
func replace(ts *testscript.TestScript, _ bool, args []string) {
	text := ts.ReadFile(args[2])
	if !strings.Contains(text, args[0]) {
		ts.Fatalf("%s does not contain %q", args[2], args[0])
	}
	text = strings.ReplaceAll(text, args[0], strings.ReplaceAll(args[1], `\n`, "\n"))
	ts.Check(os.WriteFile(ts.MkAbs(args[2]), []byte(text), 0o644))
}

// is-pdf FILE... wants whole PDF files.
func isPDF(ts *testscript.TestScript, not bool, args []string) {
	for _, name := range args {
		text := ts.ReadFile(name)
		whole := strings.HasPrefix(text, "%PDF-") && strings.Contains(text, "%%EOF")
		if whole == not {
			ts.Fatalf("%s: a whole PDF: %v", name, whole)
		}
	}
}

// code-of TICKET NAME puts the code of a ticket of house.book into a variable.
func codeOf(ts *testscript.TestScript, _ bool, args []string) {
	db, err := sql.Open("sqlite", "file:"+ts.MkAbs("house.book"))
	ts.Check(err)
	defer db.Close()
	var hash string
	ts.Check(db.QueryRow("SELECT substr(hash, 1, 12) FROM facts WHERE kind = 'ticket.issued' AND json_extract(body, '$.number') = ?", args[0]).Scan(&hash))
	ts.Setenv(args[1], hash)
}

// figures-are-text wants the JSON last printed to hold no number anywhere.
func figuresAreText(ts *testscript.TestScript, _ bool, _ []string) {
	d := json.NewDecoder(strings.NewReader(ts.ReadFile("stdout")))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		ts.Check(err)
		if number, is := token.(float64); is {
			ts.Fatalf("the figure %v is a number, not text", number)
		}
	}
}
