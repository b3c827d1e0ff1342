package scalehouse

import (
	"bytes"
	"encoding/json"
	"strings"
	"unicode"
	"unicode/utf8"

	"tenthpoint/internal/message"
)

// The longest texts that a fact may hold, in letters.
const (
	mostInAName = 200
	mostInAText = 4000
)

// names are the fields of facts that name somebody or something: they are printed in lists, on
// slips and in file names.
var names = map[string]bool{
	"id": true, "name": true, "number": true, "plate": true, "trailer": true, "driver": true, "bin": true, "grower": true,
	"business": true, "street": true, "town": true, "phone": true, "licence": true, "consignee": true, "agent": true, "tester": true,
	"sample": true, "truck": true, "contract": true, "kept": true,
}

// checkTexts refuses control characters, which could control a terminal or printer, and overlong
// texts. A body without escapes and hidden characters, the usual case, is scanned once.
func checkTexts(body []byte) error {
	suspect := len(body) > mostInAName && longestRun(body) > mostInAName
	if !suspect && !bytes.ContainsRune(body, '\\') && !bytes.ContainsFunc(body, hidden) {
		return nil
	}
	var fields any
	if err := json.Unmarshal(body, &fields); err != nil {
		return err
	}
	return checkField("", fields)
}

// longestRun is the longest stretch without a quotation mark, in bytes: no text in
// the body is longer.
func longestRun(body []byte) int {
	longest, begun := 0, 0
	for i, c := range body {
		if c == '"' {
			longest, begun = max(longest, i-begun), i
		}
	}
	return longest
}

func checkField(name string, value any) error {
	switch is := value.(type) {
	case string:
		return checkText(name, is)
	case []any:
		for _, one := range is {
			if err := checkField(name, one); err != nil {
				return err
			}
		}
	case map[string]any:
		for key, one := range is {
			if err := checkField(key, one); err != nil {
				return err
			}
		}
	}
	return nil
}

func checkText(name, text string) error {
	most := mostInAText
	if names[name] {
		most = mostInAName
	}
	if n := utf8.RuneCountInString(text); n > most {
		return message.Invalid.Errorf("%s is %d letters long; the most is %d", name, n, most)
	}
	control := strings.IndexFunc(text, func(r rune) bool {
		return hidden(r) && (names[name] || r != '\n')
	})
	if control >= 0 {
		return message.Invalid.Errorf("%s %q holds a control character. Type it again without", name, text)
	}
	return nil
}

// hidden reports a character that shows nothing and does something: a control
// character, or a mark that makes text read in another direction.
func hidden(r rune) bool {
	return unicode.IsControl(r) || r >= '\u202a' && r <= '\u202e' || r >= '\u2066' && r <= '\u2069'
}
