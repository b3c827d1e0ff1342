package signing

import (
	"crypto/ed25519"
	"encoding/binary"
	"encoding/hex"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// signForm names the way signed things are spelled out. A change of the spelling needs a new name.
const signForm = "tenthpoint signature, form 1"

// purpose is the kind of thing a signature is for.
type purpose string

const (
	asTicket   purpose = "ticket"
	asHead     purpose = "head"
	asComputer purpose = "computer key"
	asHouse    purpose = "house key"
)

// Signature is a key's signature of a payload.
type Signature [ed25519.SignatureSize]byte

// String is the signature in 86 letters.
func (s Signature) String() string { return letters.EncodeToString(s[:]) }

// IsZero reports whether there is no signature.
func (s Signature) IsZero() bool { return s == Signature{} }

// ParseSignature parses a signature in its 86 letters.
func ParseSignature(text string) (Signature, error) {
	raw, ok := fromLetters(text, ed25519.SignatureSize)
	if !ok {
		return Signature{}, message.Invalid.Errorf("%q is no signature; it has 86 letters and digits", text)
	}
	return Signature(raw), nil
}

// MarshalText writes the signature as facts hold it.
func (s Signature) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText parses a signature as facts hold it.
func (s *Signature) UnmarshalText(text []byte) (err error) {
	*s, err = ParseSignature(string(text))
	return err
}

// SignTicket signs the payload of a ticket.
func (k Key) SignTicket(payload []byte) Signature { return k.sign(asTicket, payload) }

// SignedTicket reports whether the key signed the payload of a ticket.
func (p Public) SignedTicket(payload []byte, s Signature) bool {
	return p.signed(s, asTicket, payload)
}

// SignHead signs the end of a book. The hash of the head must be whole.
func (k Key) SignHead(h journal.Head) (Signature, error) {
	seq, hash, err := headParts(h)
	if err != nil {
		return Signature{}, err
	}
	return k.sign(asHead, seq, hash), nil
}

// SignedHead reports whether the key signed the end of a book. A head with a part of its hash was
// signed by nobody.
func (p Public) SignedHead(h journal.Head, s Signature) bool {
	seq, hash, err := headParts(h)
	return err == nil && p.signed(s, asHead, seq, hash)
}

// hashBytes is the length of a fact's hash.
const hashBytes = 32

func headParts(h journal.Head) (seq, hash []byte, err error) {
	hash, err = hex.DecodeString(h.Hash)
	if err != nil || len(hash) != hashBytes || h.Seq < 1 {
		return nil, nil, message.Invalid.Errorf("the head %v cannot be signed: its hash is not whole", h)
	}
	return binary.BigEndian.AppendUint64(nil, uint64(h.Seq)), hash, nil
}

func (k Key) sign(as purpose, parts ...[]byte) Signature {
	return Signature(ed25519.Sign(k.private(), spelled(as, parts)))
}

func (p Public) signed(s Signature, as purpose, parts ...[]byte) bool {
	return ed25519.Verify(p[:], spelled(as, parts), s[:])
}

// spelled is the text that is signed: with the lengths in it no two different things have the same text.
func spelled(as purpose, parts [][]byte) []byte {
	out := make([]byte, 0, 256)
	for _, part := range append([][]byte{[]byte(signForm), []byte(as)}, parts...) {
		out = binary.BigEndian.AppendUint64(out, uint64(len(part)))
		out = append(out, part...)
	}
	return out
}
