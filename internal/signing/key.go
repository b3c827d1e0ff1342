package signing

import (
	"crypto/ed25519"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"io"
	"strings"

	"tenthpoint/internal/message"
)

// Key is a private key: of a computer, or of the house. The zero Key is none.
type Key struct{ seed [ed25519.SeedSize]byte }

// NewKey makes a key from a source of randomness.
func NewKey(random io.Reader) (Key, error) {
	var k Key
	if _, err := io.ReadFull(random, k.seed[:]); err != nil {
		return Key{}, message.Storage.Errorf("there is no randomness to make a key of: %w", err)
	}
	return k, nil
}

// IsZero reports whether there is no key.
func (k Key) IsZero() bool { return k == Key{} }

func (k Key) private() ed25519.PrivateKey { return ed25519.NewKeyFromSeed(k.seed[:]) }

// Public is the public half of the key.
func (k Key) Public() Public { return Public(k.private().Public().(ed25519.PublicKey)) }

// String hides the key from logs and messages.
func (Key) String() string { return "(private key)" }

// GoString hides the key from logs and messages.
func (Key) GoString() string { return "(private key)" }

// Public is the public half of a key. The zero Public is none.
type Public [ed25519.PublicKeySize]byte

// ID is the beginning of a key's fingerprint, where its place is known: 4 bytes tell the few
// keys of a house apart, and prove nothing.
type ID [4]byte

// letters is the alphabet of keys and signatures in facts and on paper.
var letters = base64.RawURLEncoding.Strict()

// fromLetters decodes so many bytes from the one way they are written.
func fromLetters(text string, size int) (raw []byte, ok bool) {
	raw, err := letters.DecodeString(text)
	return raw, err == nil && len(raw) == size && len(text) == letters.EncodedLen(size)
}

// String is the key in 43 letters.
func (p Public) String() string { return letters.EncodeToString(p[:]) }

// IsZero reports whether there is no key.
func (p Public) IsZero() bool { return p == Public{} }

// Fingerprint is the text that people compare: 8 groups of 4 digits.
func (p Public) Fingerprint() string {
	sum := sha256.Sum256(p[:])
	return inFours(hex.EncodeToString(sum[:16]))
}

// ID is the beginning of the fingerprint.
func (p Public) ID() ID {
	sum := sha256.Sum256(p[:])
	return ID(sum[:4])
}

// String is the first two groups of the fingerprint.
func (id ID) String() string { return inFours(hex.EncodeToString(id[:])) }

// ParsePublic parses a public key in its 43 letters.
func ParsePublic(text string) (Public, error) {
	raw, ok := fromLetters(text, ed25519.PublicKeySize)
	if !ok {
		return Public{}, message.Invalid.Errorf("%q is no public key; it has 43 letters and digits", text)
	}
	return Public(raw), nil
}

// MarshalText writes the key as facts hold it.
func (p Public) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// UnmarshalText parses a key as facts hold it.
func (p *Public) UnmarshalText(text []byte) (err error) {
	*p, err = ParsePublic(string(text))
	return err
}

// IsCalled reports whether a text is the fingerprint of the key, or its first two groups or more,
// however it is spaced.
func (p Public) IsCalled(text string) bool {
	typed := strings.ToLower(strings.Join(strings.Fields(text), ""))
	whole := strings.ReplaceAll(p.Fingerprint(), " ", "")
	return len(typed) >= 2*len(ID{}) && strings.HasPrefix(whole, typed)
}

// inFours sets spaces between groups of four.
func inFours(text string) string {
	var groups []string
	for len(text) > 4 {
		groups, text = append(groups, text[:4]), text[4:]
	}
	return strings.Join(append(groups, text), " ")
}

// MarshalText writes the id as facts hold it.
func (id ID) MarshalText() ([]byte, error) { return []byte(hex.EncodeToString(id[:])), nil }

// UnmarshalText parses an id as facts hold it.
func (id *ID) UnmarshalText(text []byte) error {
	raw, err := hex.DecodeString(string(text))
	if err != nil || len(raw) != len(id) {
		return message.Invalid.Errorf("%q is not the beginning of a fingerprint; it has 8 hexadecimal digits", string(text))
	}
	*id = ID(raw)
	return nil
}
