package journal

import (
	"bytes"
	"strings"
	"tenthpoint/internal/message"
	"time"
	"unicode"
	"unicode/utf8"
)

// TimeLayout is the one form a fact's time may have: UTC, whole seconds,
// always 20 characters, so that facts sort by time as text.
const TimeLayout = "2006-01-02T15:04:05Z"

// The longest a name (who, desk, kind, subject) and a body may be, in bytes.
const (
	maxNameBytes = 200
	maxBodyBytes = 1 << 20
)

// An Entry is an act about to be entered: a fact before it has its place in
// the chain.
type Entry struct {
	At      string // when, in TimeLayout; see Stamp
	Who     string // the person who acted
	Desk    string // the desk or terminal it was done at
	Kind    string // what happened: "gross weighed"
	Subject string // the thing it is about: "load 12"
	Body    []byte // the details as a canonical JSON object; see Canonical
}

// A Fact is one act with its place in the chain. Seq counts from 1 without a
// gap. Prev and Hash are SHA-256 in lower-case hexadecimal.
type Fact struct {
	Seq     int64
	At      string
	Who     string
	Desk    string
	Kind    string
	Subject string
	Body    []byte
	Prev    string
	Hash    string
}

// Stamp writes a moment the way facts carry it; parts of a second are dropped.
func Stamp(moment time.Time) string {
	return moment.UTC().Format(TimeLayout)
}

// Time is the moment of the fact.
func (f Fact) Time() (time.Time, error) {
	return time.Parse(TimeLayout, f.At)
}

// Problems lists every reason the entry may not be entered; none means it may.
func (d Entry) Problems() []message.Text {
	var found []message.Text
	for _, name := range []struct{ what, text string }{
		{"the person", d.Who}, {"the desk", d.Desk},
		{"the kind of fact", d.Kind}, {"the subject", d.Subject},
	} {
		if fault := nameFault(name.text); !fault.IsZero() {
			found = append(found, message.New("A fact needs %s, but %s.", message.Words(name.what), fault))
		}
	}
	if !stampOK(d.At) {
		found = append(found, message.New(
			"The time %q is not in the form %v (UTC, whole seconds).", d.At, TimeLayout))
	}
	if fault := bodyFault(d.Body); !fault.IsZero() {
		found = append(found, fault)
	}
	return found
}

// nameFault returns what is wrong with a short text, or nothing.
func nameFault(text string) message.Text {
	switch {
	case strings.TrimSpace(text) == "":
		return message.New("it is empty")
	case len(text) > maxNameBytes:
		return message.New("it is %d bytes long and the most is %d", len(text), maxNameBytes)
	case !utf8.ValidString(text), strings.ContainsRune(text, utf8.RuneError):
		return message.New("%q holds bytes that are no letters", text)
	case strings.ContainsFunc(text, unicode.IsControl):
		return message.New("%q holds a control character", text)
	case strings.TrimSpace(text) != text:
		return message.New("%q begins or ends with a space", text)
	}
	return message.Text{}
}

// stampOK reports whether the text is a moment in exactly TimeLayout. Parsing alone is not enough:
// it lets a fraction of a second through.
func stampOK(text string) bool {
	moment, err := time.Parse(TimeLayout, text)
	return err == nil && moment.Format(TimeLayout) == text
}

// bodyFault returns what is wrong with the details, or nothing.
func bodyFault(body []byte) message.Text {
	if len(body) > maxBodyBytes {
		return message.New("The details are %d bytes long and the most is %d.", len(body), maxBodyBytes)
	}
	canonical, err := canonicalText(body)
	switch {
	case err != nil:
		return message.New("The details cannot be entered: %s", err)
	case len(body) == 0 || body[0] != '{':
		return message.New("The details are not a JSON object.")
	case !bytes.Equal(canonical, body):
		return message.New("The details are JSON but not in the canonical form; make them with Canonical.")
	}
	return message.Text{}
}
