// Command task does the chores of this repository: start the program, check
// everything, measure it, picture it.
//
//	go run ./cmd/task run            open the desk on an invented elevator
//	go run ./cmd/task check          format, vet, every test, the real window
//	go run ./cmd/task bench [flags]  benchmarks; flags are passed on to `go test`
//	go run ./cmd/task soak [flags]   kills, failing disks and power cuts, as long as asked
//	go run ./cmd/task office-kills   sites, an office and its server killed at random
//	go run ./cmd/task books          books of older programs, for tests
//	go run ./cmd/task fonts          the fonts of papers, cut from the originals
//	go run ./cmd/task checker        the engine of the page that checks tickets
//	go run ./cmd/task keys           from a key to the picture, in the real window on a large book
//	go run ./cmd/task season         a season of 10,000 loads against the journal
//	go run ./cmd/task position       the position of 10,000 random days against the journal
//	go run ./cmd/task compare        an older program against this one
//	go run ./cmd/task package        what people install, for Linux and Windows
//	go run ./cmd/task package-try    its deb, installed and used on a system without compilers
//	go run ./cmd/task package-try-windows the same of the Windows installer, under wine
//	go run ./cmd/task shots DIR      pictures of every screen and paper
//
// It is written in plain Go without cgo and without any package from outside the standard library,
// so that a fresh clone needs nothing but Go to begin. Other requirements of a chore (a C compiler,
// X11 headers, a PDF reader) are checked first and, on Debian and Ubuntu, installed when that is
// allowed.
package main

import (
	"fmt"
	"os"

	"tenthpoint/cmd/task/older"
)

// A chore is one word of the command line.
type chore struct {
	name  string
	usage string
	does  func(args []string) error
}

var chores = []chore{
	{"run", "run [-files DIR]   open the desk on an invented elevator; with no display, work into files; -office: a head office of three sites", runChore},
	{"check", "check [--without postgres] format, vet, every test, and the real window", checkChore},
	{"bench", "bench [flags]      run the benchmarks; flags such as -benchtime 5x go on to `go test`", benchChore},
	{"soak", "soak [-for 1h]     kills, failing disks and power cuts on books, each round with its seed", soakChore},
	{"office-kills", "office-kills [-kills N] sites, their office and its server killed at random; then every chain must be whole", officeKillsChore},
	{"keys", "keys [-loads N]    from a key to the picture in the real window, on a book of 100,000 loads, over an empty entry", keysChore},
	{"position", "position           the position of 10,000 random days: bins and owners against plain SQL over the journal", positionChore},
	{"season", "season             a season of 10,000 loads: sheets, position and accounts against plain SQL over the journal", seasonChore},
	{"books", "books [NAME]       make the books of testdata/books anew, with the programs of their time", older.Books},
	{"fonts", "fonts              cut the fonts of papers from the originals (internal/fonts/original)", fontsChore},
	{"checker", "checker            build the engine of the page that checks tickets (internal/checker/page)", checkerChore},
	{"compare", "compare [flags]    random loads and scripts in the program of another revision and in this one", older.Compare},
	{"package", "package [-only PARTS] make what people install: deb, rpm, archives, an installer for Windows, tenth for six systems", packageChore},
	{"package-try", "package-try        install the deb in a clean root without compilers, weigh a truck, remove it", tryChore},
	{"package-try-windows", "package-try-windows install the Windows installer under wine, weigh a truck, remove it", tryWindowsChore},
	{"postgres", "postgres [flags]   the suite of the book on a PostgreSQL server of its own; flags go on to `go test`", postgresChore},
	{"shots", "shots DIR          write a picture of every screen and paper into DIR", shotsChore},
}

func main() {
	if err := dispatch(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, "error:", err)
		os.Exit(1)
	}
}

// dispatch finds the chore named by the first word and runs it from the root of the repository,
// from any directory inside it.
func dispatch(args []string) error {
	if len(args) == 0 {
		usage()
		return fmt.Errorf("name a chore, for example: go run ./cmd/task run")
	}
	for _, c := range chores {
		if c.name == args[0] {
			return fromRoot(c.does, args[1:])
		}
	}
	usage()
	return fmt.Errorf("%q is not a chore", args[0])
}

func usage() {
	fmt.Fprintln(os.Stderr, "usage: go run ./cmd/task CHORE")
	for _, c := range chores {
		fmt.Fprintln(os.Stderr, "  "+c.usage)
	}
}
