package transcript

import (
	"fmt"
	"strings"
)

// plain are letters and signs that need no quotes.
const plain = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_=./:,@%+"

// quote writes a word so that split reads it as one: between single quotes
// where it needs them, a quote in it doubled.
func quote(word string) string {
	if word != "" && strings.Trim(word, plain) == "" {
		return word
	}
	return "'" + strings.ReplaceAll(word, "'", "''") + "'"
}

// split splits a command line at its blanks. Text in single quotes is kept together, also in the
// middle of a word.
func split(line string) ([]string, error) {
	var words []string
	var word strings.Builder
	inWord, inQuotes := false, false
	for i := 0; i < len(line); i++ {
		switch c := line[i]; {
		case c == '\'' && inQuotes && i+1 < len(line) && line[i+1] == '\'':
			word.WriteByte(c)
			i++
		case c == '\'':
			inWord, inQuotes = true, !inQuotes
		case c == ' ' && !inQuotes:
			if inWord {
				words = append(words, word.String())
			}
			word.Reset()
			inWord = false
		default:
			word.WriteByte(c)
			inWord = true
		}
	}
	if inQuotes {
		return nil, fmt.Errorf("a quote is not closed in %q", line)
	}
	if inWord {
		words = append(words, word.String())
	}
	return words, nil
}
