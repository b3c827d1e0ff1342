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

// Languages are the languages there is a handbook in.
var Languages = []string{English, "fr"}

// Book is the handbook in one language.
type Book struct {
	Language string
	chapters []Chapter
}

// In returns the handbook in a language, "en" or "fr"; in any other the English one.
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
		text, err := files.ReadFile("chapters/" + language + "/" + id + ".md")
		if err != nil {
			panic(fmt.Sprintf("handbook: chapter %s is in the order but not among the files in %s", id, language))
		}
		b.chapters = append(b.chapters, readChapter(id, withMethods(language, string(text))))
	}
	return b
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
