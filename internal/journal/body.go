package journal

import (
	"bytes"
	"encoding/json"

	"tenthpoint/internal/message"
)

// Kinded is a body of a fact.
type Kinded interface {
	// Kind names the fact in the journal.
	Kind() string
}

// ReadBody reads a fact's body. A field it does not know is an error, so that
// nothing in the book is silently left out.
func ReadBody[F Kinded](body []byte) (F, error) {
	var f F
	d := json.NewDecoder(bytes.NewReader(body))
	d.DisallowUnknownFields()
	if err := d.Decode(&f); err != nil {
		return f, message.Errorf("a %s fact cannot be read: %w", f.Kind(), err)
	}
	return f, nil
}
