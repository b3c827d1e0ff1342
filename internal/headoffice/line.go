package headoffice

import (
	"bytes"
	"encoding/json"

	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
)

// A Text is an edition, a chart or a rule of law that facts name by the hash of its text.
type Text struct {
	ID, SHA256, Text string
}

// A Line is one line of a chain on its way: a fact, or a text that facts name.
type Line struct {
	Fact *journal.Fact
	Text *Text
}

// wire is a line as it is written. Numbers are text, as everywhere in facts.
type wire struct {
	Seq     int64  `json:"seq,omitempty,string"`
	At      string `json:"at,omitempty"`
	Who     string `json:"who,omitempty"`
	Desk    string `json:"desk,omitempty"`
	Kind    string `json:"kind,omitempty"`
	Subject string `json:"subject,omitempty"`
	Body    string `json:"body,omitempty"`
	Prev    string `json:"prev,omitempty"`
	Hash    string `json:"hash,omitempty"`

	ID     string `json:"id,omitempty"`
	SHA256 string `json:"sha256,omitempty"`
	Text   string `json:"text,omitempty"`
}

// Append writes the line behind others, with its end.
func (l Line) Append(out []byte) ([]byte, error) {
	var w wire
	if f := l.Fact; f != nil {
		w = wire{Seq: f.Seq, At: f.At, Who: f.Who, Desk: f.Desk, Kind: f.Kind, Subject: f.Subject, Body: string(f.Body), Prev: f.Prev, Hash: f.Hash}
	} else {
		w = wire{ID: l.Text.ID, SHA256: l.Text.SHA256, Text: l.Text.Text}
	}
	text, err := json.Marshal(w)
	if err != nil {
		return out, message.Errorf("this line of the chain cannot be written: %w", err)
	}
	return append(append(out, text...), '\n'), nil
}

// ReadLine reads a line as it was written. What the fact says is not judged here: a kind or a field
// that this program does not know is another program's.
func ReadLine(line []byte) (Line, error) {
	var w wire
	if err := json.Unmarshal(bytes.TrimSpace(line), &w); err != nil {
		return Line{}, message.Invalid.Errorf("this is no line of a chain: %w", err)
	}
	switch {
	case w.Text != "":
		return Line{Text: &Text{ID: w.ID, SHA256: w.SHA256, Text: w.Text}}, nil
	case w.Seq > 0:
		return Line{Fact: &journal.Fact{Seq: w.Seq, At: w.At, Who: w.Who, Desk: w.Desk, Kind: w.Kind, Subject: w.Subject, Body: []byte(w.Body), Prev: w.Prev, Hash: w.Hash}}, nil
	}
	return Line{}, message.Invalid.Errorf("this is no line of a chain: it holds neither a fact nor a text")
}
