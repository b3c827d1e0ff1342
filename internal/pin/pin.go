// Package pin locks a name with a PIN: so that nobody acts in a colleague's name at an unwatched desk.
//
// What is kept is a lock, never the PIN: argon2id over it and a salt, with its parameters beside. That
// makes guessing slow, not impossible: whoever has the file of a book and time finds four digits. At
// the desk wrong PINs are counted, and each after the third doubles the wait.
//
// The package is pure: whoever calls it brings the salt and the time.
package pin

import (
	"crypto/subtle"
	"encoding/base64"
	"fmt"
	"time"
	"unicode"
	"unicode/utf8"

	"golang.org/x/crypto/argon2"

	"tenthpoint/internal/message"
)

// Salt makes two locks of one PIN differ.
type Salt [16]byte

// The cost of a guess: 19 MiB and two passes, the least that is advised for argon2id.
const (
	memory  = 19 * 1024
	passes  = 2
	threads = 1
	size    = 32
)

// The length of a PIN in letters or digits.
const (
	shortest = 4
	longest  = 64
)

// Lock is the lock of a PIN as the book keeps it.
func Lock(typed string, salt Salt) (string, error) {
	if n := utf8.RuneCountInString(typed); n < shortest || n > longest {
		return "", message.Invalid.Errorf("a PIN has %d to %d digits or letters; this one has %d", shortest, longest, n)
	}
	for _, r := range typed {
		if !unicode.IsPrint(r) {
			return "", message.Invalid.Errorf("a PIN has no control characters")
		}
	}
	return lockOf(typed, salt), nil
}

func lockOf(typed string, salt Salt) string {
	sum := argon2.IDKey([]byte(typed), salt[:], passes, memory, threads, size)
	text := base64.RawStdEncoding
	return fmt.Sprintf("$argon2id$v=%d$m=%d,t=%d,p=%d$%s$%s", argon2.Version, memory, passes, threads, text.EncodeToString(salt[:]), text.EncodeToString(sum))
}

// Opens reports whether a PIN opens a lock.
func Opens(lock, typed string) bool {
	salt, ok := saltOf(lock)
	return ok && subtle.ConstantTimeCompare([]byte(lockOf(typed, salt)), []byte(lock)) == 1
}

// saltOf is the salt of a lock. A lock of other parameters is none: opening one could take any time
// and memory that somebody wrote there.
func saltOf(lock string) (salt Salt, ok bool) {
	var salted, sum string
	n, err := fmt.Sscanf(lock, fmt.Sprintf("$argon2id$v=%d$m=%d,t=%d,p=%d$%%s", argon2.Version, memory, passes, threads), &salted)
	if err != nil || n != 1 {
		return salt, false
	}
	if len(salted) != 22+1+43 || salted[22] != '$' {
		return salt, false
	}
	salted, sum = salted[:22], salted[23:]
	raw, err := base64.RawStdEncoding.DecodeString(salted)
	if err != nil || len(raw) != len(salt) || len(sum) != 43 {
		return salt, false
	}
	return Salt(raw), true
}

const (
	// freeGuesses are wrong PINs without a wait; people mistype.
	freeGuesses = 3
	firstWait   = 15 * time.Second
	longestWait = time.Hour
)

// Wait is the pause after the last of so many wrong PINs before the next one is taken.
func Wait(wrong int) time.Duration {
	if wrong < freeGuesses {
		return 0
	}
	wait := firstWait
	for range wrong - freeGuesses {
		if wait *= 2; wait >= longestWait {
			return longestWait
		}
	}
	return wait
}

// Asked is an act that goes on once somebody has typed a PIN.
type Asked struct{ Who string }

// Message asks for the PIN.
func (a Asked) Message() message.Text { return message.New("this asks for the PIN of %v", a.Who) }

// Error is the message in English.
func (a Asked) Error() string { return a.Message().String() }

// Unwrap makes it a refusal.
func (a Asked) Unwrap() error { return message.Refused }
