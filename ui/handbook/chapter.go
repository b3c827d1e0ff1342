package handbook

import (
	"embed"
	"fmt"
	"sync"
)

//go:embed chapters/*.md
var files embed.FS

// Chapter is one chapter, read into blocks.
type Chapter struct {
	// ID is the name of its file without the ending: "shrink".
	ID string
	// Title is its first line.
	Title string
	// Text is the file as written.
	Text   string
	Blocks []Block
}

// order is the chapters in the order they are best read.
var order = []string{
	"start", "truck", "bench", "rates", "shrink", "tickets", "growers", "disputes", "day",
	"gear", "keyboard", "cautions", "backup", "glossary",
}

// forScreen is the chapter that belongs to a screen of the desk; what is not
// listed has a chapter of its own name, or the first.
var forScreen = map[string]string{
	"yard":  "truck",
	"load":  "truck",
	"setup": "start",
	"keys":  "keyboard",
}

// All is every chapter in reading order.
func All() []Chapter { return read() }

var read = sync.OnceValue(func() []Chapter {
	out := make([]Chapter, len(order))
	for i, id := range order {
		text, err := files.ReadFile("chapters/" + id + ".md")
		if err != nil {
			panic(fmt.Sprintf("handbook: chapter %s is in the order but not among the files", id))
		}
		out[i] = readChapter(id, string(text))
	}
	return out
})

// ByID finds a chapter.
func ByID(id string) (Chapter, bool) {
	for _, c := range All() {
		if c.ID == id {
			return c, true
		}
	}
	return Chapter{}, false
}

// For is the chapter to open from a screen.
func For(screen string) Chapter {
	if id, ok := forScreen[screen]; ok {
		screen = id
	}
	if c, ok := ByID(screen); ok {
		return c
	}
	return All()[0]
}
