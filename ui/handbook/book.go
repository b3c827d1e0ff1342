package handbook

import (
	"embed"
	"fmt"
	"sync"
)

//go:embed chapters/*/*.md
var files embed.FS

// English is the language the handbook is first written in.
const English = "en"

// Languages are the languages there is a handbook in. One that lacks chapters has those of the first
// in their place.
var Languages = []string{English, "fr", "es"}

// Book is the handbook in one language.
type Book struct {
	Language string
	chapters []Chapter
}

// In returns the handbook in a language; where there is none, the English one.
func In(language string) Book {
	for _, b := range read() {
		if b.Language == language {
			return b
		}
	}
	return read()[0]
}

var read = sync.OnceValue(func() []Book {
	books := make([]Book, len(Languages))
	for i, language := range Languages {
		books[i] = readBook(language)
	}
	return books
})

func readBook(language string) Book {
	b := Book{Language: language}
	for _, id := range order {
		b.chapters = append(b.chapters, chapterIn(language, id))
	}
	return b
}

// chapterIn reads a chapter, in English where the language lacks it.
func chapterIn(language, id string) Chapter {
	text, err := files.ReadFile("chapters/" + language + "/" + id + ".md")
	switch {
	case err == nil:
		c := readChapter(id, withMethods(language, string(text)))
		c.Language = language
		return c
	case language == English:
		panic(fmt.Sprintf("handbook: chapter %s is in the order but not among the files", id))
	}
	return chapterIn(English, id)
}

// All is every chapter in reading order.
func (b Book) All() []Chapter { return b.chapters }

// ByID finds a chapter.
func (b Book) ByID(id string) (Chapter, bool) {
	for _, c := range b.chapters {
		if c.ID == id {
			return c, true
		}
	}
	return Chapter{}, false
}

// For is the chapter to open from a screen.
func (b Book) For(screen string) Chapter {
	if id, ok := forScreen[screen]; ok {
		screen = id
	}
	if c, ok := b.ByID(screen); ok {
		return c
	}
	return b.chapters[0]
}
