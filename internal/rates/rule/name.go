package rule

import (
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/tomlfile"
)

// nameLetters are the characters allowed in names that tickets, commands and the working refer to.
const nameLetters = "abcdefghijklmnopqrstuvwxyz0123456789-"

// ReadName reads a text that others refer to.
func ReadName(t *tomlfile.Table, key string) string {
	text := t.Text(key)
	CheckName(t, key, text)
	return text
}

// CheckName requires that a name used in references has only the letters of names.
func CheckName(t *tomlfile.Table, key, text string) {
	if strings.Trim(text, nameLetters) != "" {
		t.AddProblem(key, message.New("%s is %q", t.Name(key), text), message.New("Small letters, digits and hyphens only, such as \"corn-main-2026\": tickets and the working refer to it."))
	}
}
