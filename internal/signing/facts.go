package signing

import (
	"strings"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// The subjects of facts: about keys, and of signatures, which are many.
const (
	Subject          = "keys"
	SignatureSubject = "signatures"
)

// HouseKey records the key of the house. The next one is signed by the one before, or says why it is
// not.
type HouseKey struct {
	Key       Public     `json:"key"`
	Before    *Public    `json:"before,omitempty"`
	Signature *Signature `json:"signature,omitempty"` // of the key before
	Reason    string     `json:"reason,omitempty"`    // why the key before did not sign, or had to go
}

// Kind names the fact in the journal.
func (HouseKey) Kind() string { return "signing.house" }

// NextHouse is the fact that a key takes the place of the house's key, signed by that one.
func NextHouse(before Key, next Public, reason string) HouseKey {
	was, by := before.Public(), before.sign(asHouse, next[:])
	return HouseKey{Key: next, Before: &was, Signature: &by, Reason: reason}
}

// Check returns what is wrong with the fact by itself, or nil.
func (f HouseKey) Check() error {
	switch {
	case f.Key.IsZero():
		return message.Incomplete.Errorf("a house's key is missing")
	case f.Signature != nil && (f.Before == nil || !f.Before.signed(*f.Signature, asHouse, f.Key[:])):
		return message.Invalid.Errorf("the house key %v was not signed by the one before it", f.Key.Fingerprint())
	case f.Before != nil && f.Signature == nil && strings.TrimSpace(f.Reason) == "":
		return message.Incomplete.Errorf("say why the house's key before does not sign the next one: lost, stolen")
	}
	return nil
}

// Certificate says that a key is that of a computer of the house.
type Certificate struct {
	Key       Public    `json:"key"`
	Computer  string    `json:"computer"`
	House     Public    `json:"house"`
	Signature Signature `json:"signature"`
}

// Kind names the fact in the journal.
func (Certificate) Kind() string { return "signing.computer" }

// Certify certifies the key of a computer by the key of the house.
func (k Key) Certify(computer string, key Public) Certificate {
	return Certificate{key, computer, k.Public(), k.sign(asComputer, key[:], []byte(computer))}
}

// Check returns what is wrong with the certificate by itself, or nil.
func (c Certificate) Check() error {
	switch {
	case c.Key.IsZero() || strings.TrimSpace(c.Computer) == "":
		return message.Incomplete.Errorf("a certificate names a computer and its key")
	case !c.House.signed(c.Signature, asComputer, c.Key[:], []byte(c.Computer)):
		return message.Invalid.Errorf("the certificate of %v (%v) was not signed by the house key that it names", c.Computer, c.Key.Fingerprint())
	}
	return nil
}

// Cause is why a key counts no more.
type Cause string

// A lost key is gone, a stolen one in strange hands, a replaced one at rest.
const (
	Lost     Cause = "lost"
	Stolen   Cause = "stolen"
	Replaced Cause = "replaced"
)

// Message is the cause in words.
func (c Cause) Message() message.Text {
	switch c {
	case Lost:
		return message.New("the key was lost")
	case Stolen:
		return message.New("the key was stolen")
	}
	return message.New("another key took its place")
}

// Ended records that the key of a computer counts no more.
type Ended struct {
	Key    Public `json:"key"`
	Cause  Cause  `json:"cause"`
	Reason string `json:"reason"`
	// Since is the moment (UTC, as facts carry it) from which its signatures prove nothing, where
	// that is before this fact.
	Since string `json:"since,omitempty"`
}

// Kind names the fact in the journal.
func (Ended) Kind() string { return "signing.ended" }

// Check returns what is wrong with the fact by itself, or nil.
func (f Ended) Check() error {
	switch {
	case f.Key.IsZero():
		return message.Incomplete.Errorf("name the key that counts no more")
	case f.Cause != Lost && f.Cause != Stolen && f.Cause != Replaced:
		return message.Invalid.Errorf("a key is lost, stolen or replaced, not %q", string(f.Cause))
	case strings.TrimSpace(f.Reason) == "":
		return message.Incomplete.Errorf("say what became of the key")
	}
	return nil
}

// Signed is the signature of the head that an act left behind: it covers every fact up to it.
type Signed struct {
	// First and Last are the numbers of the act's facts; Last is the one before this fact.
	First int64 `json:"first,string"`
	Last  int64 `json:"last,string"`
	// By is the computer's key by its fingerprint's beginning, 8 digits.
	By        ID        `json:"by"`
	Signature Signature `json:"signature"`
}

// Kind names the fact in the journal.
func (Signed) Kind() string { return "signing.head" }

// Check returns what is wrong with the fact by itself, or nil.
func (f Signed) Check() error {
	if f.First < 1 || f.Last < f.First {
		return message.Invalid.Errorf("a signature is of the facts %d to %d, which are none", f.First, f.Last)
	}
	return nil
}

// SignAct signs the head that an act left behind, whose first fact is named.
func (k Key) SignAct(first int64, head journal.Head) (Signed, error) {
	s, err := k.SignHead(head)
	return Signed{First: first, Last: head.Seq, By: k.Public().ID(), Signature: s}, err
}
