package terminal

import (
	"fmt"
	"os"
	"strings"

	"golang.org/x/term"

	"tenthpoint/internal/message"
)

// Secret asks for something that no one may read off the screen. Where nobody types, it is the next
// line of the input.
func (t *Terminal) Secret(prompt message.Text) (string, error) {
	if !t.Typing {
		line, err := t.Stdin.ReadString('\n')
		if strings.TrimSpace(line) == "" {
			return "", Refusal("Give it as a line of the input, or in a file", "there is nobody to ask: %v", err)
		}
		return strings.TrimSpace(line), nil
	}
	fmt.Fprint(t.Stderr, t.Printer.Text(prompt))
	typed, err := term.ReadPassword(int(os.Stdin.Fd()))
	fmt.Fprintln(t.Stderr)
	return strings.TrimSpace(string(typed)), err
}
