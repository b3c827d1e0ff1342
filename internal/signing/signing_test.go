package signing_test

import (
	"bytes"
	"crypto/ed25519"
	"crypto/sha256"
	"crypto/x509"
	"encoding/hex"
	"encoding/pem"
	"errors"
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/signing"
)

// keyOf makes the same key of the same letter.
func keyOf(t *testing.T, letter string) signing.Key {
	t.Helper()
	k, err := signing.NewKey(strings.NewReader(strings.Repeat(letter, ed25519.SeedSize)))
	if err != nil {
		t.Fatal(err)
	}
	return k
}

func headOf(seq int64, text string) journal.Head {
	sum := sha256.Sum256([]byte(text))
	return journal.Head{Seq: seq, Hash: hex.EncodeToString(sum[:])}
}

// The formats are what another program would read, written out here without the code under test.
func TestFormatsAsAnotherProgramReadsThem(t *testing.T) {
	k := keyOf(t, "a")
	seed := bytes.Repeat([]byte("a"), ed25519.SeedSize)
	private := ed25519.NewKeyFromSeed(seed)
	public := private.Public().(ed25519.PublicKey)
	if got := k.Public(); !bytes.Equal(got[:], public) {
		t.Errorf("the public key is %x, want %x", got, public)
	}
	sum := sha256.Sum256(public)
	if got := strings.ReplaceAll(k.Public().Fingerprint(), " ", ""); got != hex.EncodeToString(sum[:16]) {
		t.Errorf("the fingerprint is %s", got)
	}
	if got := k.Public().Fingerprint(); len(strings.Fields(got)) != 8 || len(got) != 39 {
		t.Errorf("the fingerprint %q is not 8 groups of 4", got)
	}
	pkcs, err := x509.MarshalPKCS8PrivateKey(private)
	if err != nil {
		t.Fatal(err)
	}
	if want := pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: pkcs}); !bytes.Equal(k.File(), want) {
		t.Errorf("the file is\n%s, want\n%s", k.File(), want)
	}

	part := func(text string) string {
		return fmt.Sprintf("%s%s", []byte{0, 0, 0, 0, 0, 0, 0, byte(len(text))}, text)
	}
	form := part("tenthpoint signature, form 1")
	head := headOf(258, "x")
	hash, _ := hex.DecodeString(head.Hash)
	s, err := k.SignHead(head)
	if err != nil {
		t.Fatal(err)
	}
	for what, c := range map[string]struct {
		signed string
		by     signing.Signature
	}{
		"ticket":      {form + part("ticket") + part("12 52300LB"), k.SignTicket([]byte("12 52300LB"))},
		"head":        {form + part("head") + part("\x00\x00\x00\x00\x00\x00\x01\x02") + part(string(hash)), s},
		"certificate": {form + part("computer key") + part(string(public)) + part("desk"), k.Certify("desk", k.Public()).Signature},
		"house":       {form + part("house key") + part(string(public)), *signing.NextHouse(k, k.Public(), "").Signature},
	} {
		if !ed25519.Verify(public, []byte(c.signed), c.by[:]) {
			t.Errorf("%s: the signature is not of the bytes that the package documents", what)
		}
	}
}

func TestKeyComesBackFromFileAndPaper(t *testing.T) {
	k := keyOf(t, "k")
	paper := k.Paper()
	if groups := strings.Fields(paper); len(groups) != 14 || len(paper) != 14*5-1 {
		t.Errorf("on paper the key is %q", paper)
	}
	for what, text := range map[string]string{
		"file":                              string(k.File()),
		"file with words around":            "the key of the desk\n" + string(k.File()) + "\n",
		"paper":                             paper,
		"paper, in small letters and lines": strings.ToLower(strings.ReplaceAll(paper, " ", "-\r\n")),
		"paper, misread":                    strings.NewReplacer("0", "O", "1", "l").Replace(paper),
	} {
		if got, err := signing.ReadKey([]byte(text)); err != nil || got != k {
			t.Errorf("%s: %v, %v", what, got == k, err)
		}
	}
}

func TestKeyThatIsNoneIsRefused(t *testing.T) {
	k := keyOf(t, "k")
	paper := k.Paper()
	rsa := pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: []byte("0123456789012345678901234567890123456789")})
	public := pem.EncodeToMemory(&pem.Block{Type: "PUBLIC KEY", Bytes: make([]byte, 48)})
	for what, text := range map[string]string{
		"nothing": "", "words": "the key of the desk", "another kind of key": string(rsa), "a public key": string(public),
		"a group missing": paper[5:], "a letter that is none": "U" + paper[1:],
	} {
		if got, err := signing.ReadKey([]byte(text)); !errors.Is(err, message.Invalid) || !got.IsZero() {
			t.Errorf("%s: %v, %v", what, got.IsZero(), err)
		}
	}
	if _, err := signing.NewKey(strings.NewReader("short")); !errors.Is(err, message.Storage) {
		t.Errorf("too little randomness: %v", err)
	}
}

// Every single letter mistyped, and every two neighbours swapped, is noticed.
func TestMistypedKeyIsNoticed(t *testing.T) {
	k := keyOf(t, "q")
	typed := strings.ReplaceAll(k.Paper(), " ", "")
	for i := range typed {
		for _, letter := range "0123456789ABCDEFGHJKMNPQRSTVWXYZ" {
			if wrong := typed[:i] + string(letter) + typed[i+1:]; wrong != typed {
				if got, err := signing.ReadKey([]byte(wrong)); err == nil {
					t.Errorf("letter %d as %c passes, as the right key: %v", i+1, letter, got == k)
				}
			}
		}
		if i > 0 && typed[i] != typed[i-1] {
			swapped := typed[:i-1] + typed[i:i+1] + typed[i-1:i] + typed[i+1:]
			if _, err := signing.ReadKey([]byte(swapped)); err == nil {
				t.Errorf("letters %d and %d swapped pass", i, i+1)
			}
		}
	}
}

func TestKeyIsNotPrinted(t *testing.T) {
	k := keyOf(t, "s")
	if got := fmt.Sprintf("%v %+v %#v %s", k, k, k, k); strings.Contains(got, "115") || strings.Contains(got, "73") {
		t.Errorf("a key is printed: %s", got)
	}
}

func TestForgeries(t *testing.T) {
	k, other := keyOf(t, "k"), keyOf(t, "o")
	payload, head := []byte("1042 52300LB 18.4%"), headOf(38, "fact 38")
	ticket := k.SignTicket(payload)
	signed, err := k.SignHead(head)
	if err != nil {
		t.Fatal(err)
	}
	if p := k.Public(); !p.SignedTicket(payload, ticket) || !p.SignedHead(head, signed) {
		t.Fatal("a key does not know what it signed")
	}
	raw, _ := hex.DecodeString(head.Hash)
	flipped := ticket
	flipped[10] ^= 1
	for what, passes := range map[string]bool{
		"another weight":              k.Public().SignedTicket([]byte("1042 62300LB 18.4%"), ticket),
		"a bit of the signature":      k.Public().SignedTicket(payload, flipped),
		"another key":                 other.Public().SignedTicket(payload, ticket),
		"no key":                      signing.Public{}.SignedTicket(payload, ticket),
		"no signature":                k.Public().SignedTicket(payload, signing.Signature{}),
		"a ticket as a head":          k.Public().SignedHead(head, k.SignTicket(raw)),
		"a head as a ticket":          k.Public().SignedTicket(raw, signed),
		"another number":              k.Public().SignedHead(headOf(39, "fact 38"), signed),
		"another hash":                k.Public().SignedHead(headOf(38, "fact 38 again"), signed),
		"half a hash":                 k.Public().SignedHead(journal.Head{Seq: 38, Hash: head.Hash[:32]}, signed),
		"a part moved into the other": k.Public().SignedTicket(append(payload, ' '), ticket),
	} {
		if passes {
			t.Errorf("%s passes", what)
		}
	}
	if _, err := k.SignHead(journal.Head{Seq: 38, Hash: head.Hash[:32]}); !errors.Is(err, message.Invalid) {
		t.Errorf("half a hash is signed: %v", err)
	}
}

func TestTextsOfKeysAndSignatures(t *testing.T) {
	k := keyOf(t, "k")
	p, s := k.Public(), k.SignTicket([]byte("x"))
	if got, err := signing.ParsePublic(p.String()); err != nil || got != p || len(p.String()) != 43 {
		t.Errorf("%s: %v", p, err)
	}
	if got, err := signing.ParseSignature(s.String()); err != nil || got != s || len(s.String()) != 86 {
		t.Errorf("%s: %v", s, err)
	}
	for _, text := range []string{"", p.String() + "A", p.String()[1:], strings.Repeat("/", 43), p.String()[:42] + "\n", p.String() + "\n", s.String() + "\n"} {
		if _, err := signing.ParsePublic(text); !errors.Is(err, message.Invalid) {
			t.Errorf("%q is a public key: %v", text, err)
		}
		if _, err := signing.ParseSignature(text); !errors.Is(err, message.Invalid) {
			t.Errorf("%q is a signature: %v", text, err)
		}
	}
	groups := strings.Fields(p.Fingerprint())
	for text, want := range map[string]bool{
		p.Fingerprint(): true, strings.ToUpper(groups[0] + groups[1]): true, groups[0] + " " + groups[1] + groups[2][:1]: true,
		groups[0]: false, "": false, groups[1] + groups[0]: false, p.Fingerprint() + "0": false,
	} {
		if p.IsCalled(text) != want {
			t.Errorf("the key is called %q: %v", text, !want)
		}
	}
}
