package store

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"
	"fmt"
)

const (
	selectEdition = "SELECT id, text FROM editions WHERE sha256 = ?"
	insertEdition = "INSERT INTO editions (sha256, id, text) VALUES (?, ?, ?)"
)

// KeepEdition keeps the text of an edition in the book, so that whoever
// disputes a ticket years later gets the very rates it was settled by. It is
// known by sha, the SHA-256 of the text in hexadecimal; keeping it again
// changes nothing. The same id with another text is another edition.
func (tx *Tx) KeepEdition(id, sha, text string) error {
	if want := hashOf(text); sha != want {
		return tx.fail(fmt.Errorf("The edition %s was not kept: its text has the hash %s, not %s.", id, want, sha))
	}
	var keptID, keptText string
	err := tx.QueryRow(selectEdition, sha).Scan(&keptID, &keptText)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		_, err = tx.Exec(insertEdition, sha, id, text)
		return err
	case err != nil:
		return err
	case keptID != id:
		return tx.fail(fmt.Errorf("The edition %s was not kept: the same text is already in the book as %s.", id, keptID))
	}
	return nil
}

// Edition is the edition whose text has the hash.
func (b *Book) Edition(ctx context.Context, sha string) (id, text string, err error) {
	err = b.read.QueryRowContext(ctx, selectEdition, sha).Scan(&id, &text)
	if errors.Is(err, sql.ErrNoRows) {
		return "", "", fmt.Errorf("The book %s keeps no edition with the hash %s.", b.path, sha)
	}
	return id, text, b.sentence(err)
}

func hashOf(text string) string {
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:])
}
