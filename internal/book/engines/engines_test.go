package engines_test

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"tenthpoint/internal/book"
	"tenthpoint/internal/book/engines"
	"tenthpoint/internal/message"
)

func TestABookIsOpenedAndKnownByItsFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "house.book")
	b, err := engines.Open(path, book.Options{Create: true})
	if err != nil {
		t.Fatal(err)
	}
	if err := b.Close(); err != nil {
		t.Fatal(err)
	}
	start, err := os.ReadFile(path)
	if err != nil || !engines.HoldsBook(start) {
		t.Errorf("the file of a book is not known as one: %v", err)
	}
	for _, other := range []string{"", "SQLite", "the head of the book is 12 abc"} {
		if engines.HoldsBook([]byte(other)) {
			t.Errorf("%q counts as a book", other)
		}
	}
}

func TestABookThatCannotBeOpenedIsNone(t *testing.T) {
	b, err := engines.Open(filepath.Join(t.TempDir(), "typo"), book.Options{})
	if b != nil || !errors.Is(err, message.NotFound) {
		t.Errorf("opened %v, %v", b, err)
	}
}
