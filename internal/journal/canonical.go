package journal

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"tenthpoint/internal/message"
)

// Canonical writes v as JSON in the one form facts are hashed in: no spaces, names sorted by their
// bytes, no escapes but the necessary ones, so equal details are always equal bytes.
//
// Figures are text: a JSON number anywhere is refused, because a reader may turn it into a binary
// fraction. A name that occurs twice and text that is not UTF-8 are refused too. All faults are
// reported together.
func Canonical(v any) ([]byte, error) {
	loose, err := json.Marshal(v)
	if err != nil {
		return nil, message.Invalid.Errorf("these details cannot be written as JSON: %w", err)
	}
	return canonicalText(loose)
}

// canonicalText converts JSON text to the canonical form.
func canonicalText(loose []byte) ([]byte, error) {
	if !json.Valid(loose) {
		err := json.Unmarshal(loose, new(any))
		return nil, message.Errorf("the details are not JSON: %w.", err)
	}
	r := reader{rest: loose}
	out := r.value(make([]byte, 0, len(loose)), "")
	if len(r.faults) > 0 {
		return nil, errors.New(strings.Join(r.faults, " "))
	}
	return out, nil
}

// appendQuoted writes a JSON string with the escapes JSON demands and no
// others: quotation mark, backslash and control characters.
func appendQuoted(out []byte, text string) []byte {
	out = append(out, '"')
	for i := range len(text) {
		switch c := text[i]; {
		case c == '"', c == '\\':
			out = append(out, '\\', c)
		case c >= ' ':
			out = append(out, c)
		default:
			out = appendControl(out, c)
		}
	}
	return append(out, '"')
}

func appendControl(out []byte, c byte) []byte {
	if short := strings.IndexByte("\b\t\n\f\r", c); short >= 0 {
		return append(out, '\\', "btnfr"[short])
	}
	return fmt.Appendf(out, `\u%04x`, c)
}
