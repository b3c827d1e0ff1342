package terminal

import (
	"fmt"
	"strings"
	"testing"
)

func TestEscapedOutputMovesNothing(t *testing.T) {
	var out strings.Builder
	text := "Ada\x1b[2JField\r\a\u202e\u009b \tKörner\n"
	if n, err := fmt.Fprint(Escaped(&out), text); n != len(text) || err != nil {
		t.Errorf("wrote %d of %d, %v", n, len(text), err)
	}
	if want := "Ada\\u001b[2JField\\u000d\\u0007\\u202e\\u009b \tKörner\n"; out.String() != want {
		t.Errorf("got %q, want %q", out.String(), want)
	}
}
