// Package digest has the hash by which a book knows a text: of a fact, an edition, a working, a sheet.
package digest

import (
	"crypto/sha256"
	"encoding/hex"
)

// Of returns the SHA-256 of a text in small hexadecimal letters.
func Of[T string | []byte](text T) string {
	sum := sha256.Sum256([]byte(text))
	return hex.EncodeToString(sum[:])
}
