// Package rollread interprets the bytes sent to a receipt printer, for tests: it returns the words,
// the code and the position of the cut.
package rollread

import (
	"fmt"

	"golang.org/x/text/encoding/charmap"
)

// Printed is the output of a printer.
type Printed struct {
	Text    string
	Payload string // of the QR code
	CodeAt  int    // length of the text before the code
	Cuts    int
}

var pages = map[byte]*charmap.Charmap{0: charmap.CodePage437, 2: charmap.CodePage850, 16: charmap.Windows1252, 19: charmap.CodePage858}

// reader is a printer part way through a job.
type reader struct {
	bytes  []byte
	at     int
	page   *charmap.Charmap
	stored string
	out    Printed
}

// Read prints bytes. It knows the commands that papers are written with and no
// others: an unknown one is an error.
func Read(bytes []byte) (Printed, error) {
	r := &reader{bytes: bytes, page: charmap.CodePage437}
	for r.at < len(r.bytes) {
		if err := r.step(); err != nil {
			return r.out, fmt.Errorf("at byte %d: %w", r.at, err)
		}
	}
	return r.out, nil
}

func (r *reader) next() byte {
	b := byte(0)
	if r.at < len(r.bytes) {
		b = r.bytes[r.at]
	}
	r.at++
	return b
}

func (r *reader) step() error {
	switch b := r.next(); b {
	case 0x1B:
		return r.escape()
	case 0x1D:
		return r.group()
	case '\n':
		r.put('\n')
	default:
		if b < ' ' {
			return fmt.Errorf("byte %#x is no letter and no command", b)
		}
		r.put(r.page.DecodeByte(b))
	}
	return nil
}

func (r *reader) put(letter rune) { r.out.Text += string(letter) }

func (r *reader) escape() error {
	switch command := r.next(); command {
	case '@':
		r.page = charmap.CodePage437
	case 't':
		page, known := pages[r.next()]
		if !known {
			return fmt.Errorf("an unknown code page")
		}
		r.page = page
	case 'a', 'd':
		r.next()
	default:
		return fmt.Errorf("an unknown command ESC %q", command)
	}
	return nil
}

func (r *reader) group() error {
	switch command := r.next(); command {
	case 'V':
		r.next()
		r.out.Cuts++
	case '(':
		return r.code()
	default:
		return fmt.Errorf("an unknown command GS %q", command)
	}
	return nil
}

// code reads one function of the command for two-dimensional codes.
func (r *reader) code() error {
	if r.next() != 'k' {
		return fmt.Errorf("an unknown command GS (")
	}
	length := int(r.next()) | int(r.next())<<8
	if length < 2 || r.at+length > len(r.bytes) {
		return fmt.Errorf("a code of %d bytes runs beyond the end", length)
	}
	body := r.bytes[r.at : r.at+length]
	r.at += length
	switch body[1] {
	case 80:
		r.stored = string(body[3:])
	case 81:
		r.out.Payload, r.out.CodeAt = r.stored, len(r.out.Text)
	}
	return nil
}
