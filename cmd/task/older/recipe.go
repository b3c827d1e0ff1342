package older

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"tenthpoint/internal/transcript"
)

// booksFolder holds books of older programs, with the output of those programs for them.
const booksFolder = "testdata/books"

// A recipe says how one of these books was made:
//
//	revision 177e19b       the program that makes it; without it, beforeRebuild
//	asked 538a206b         the program that is asked for its papers; without it, beforeRebuild
//	seed season.go.txt 20  a Go program of the folder, run in that program's tree
//	file growers.csv       a file beside the book, of the lines that follow
//	> id,name
//	now 2026-10-01 13:00   the clock
//	$ tenth setup ...      a command line, which must succeed
type recipe struct {
	name     string
	revision string
	asked    string
	seed     []string
	files    map[string]string
	commands []transcript.Entry
}

func readRecipe(path string) (recipe, error) {
	r := recipe{name: strings.TrimSuffix(filepath.Base(path), ".recipe"), revision: beforeRebuild, asked: beforeRebuild, files: map[string]string{}}
	text, err := os.ReadFile(path)
	if err != nil {
		return r, err
	}
	var rest strings.Builder
	file := ""
	lines := bufio.NewScanner(strings.NewReader(string(text)))
	for lines.Scan() {
		line := lines.Text()
		word, value, _ := strings.Cut(line, " ")
		switch word {
		case "revision":
			r.revision = value
		case "asked":
			r.asked = value
		case "seed":
			r.seed = strings.Fields(value)
		case "file":
			file = value
		case ">":
			r.files[file] += value + "\n"
		default:
			rest.WriteString(line)
		}
		rest.WriteByte('\n') // keeps the numbers of the lines
	}
	if r.commands, err = transcript.Read(strings.NewReader(rest.String())); err != nil {
		return r, fmt.Errorf("%s: %w", path, err)
	}
	return r, lines.Err()
}
