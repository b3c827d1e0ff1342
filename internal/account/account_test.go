package account

import (
	"strings"
	"testing"
	"unicode/utf8"
)

func TestAccountAndComputerAreNamedInAFact(t *testing.T) {
	for _, c := range []struct{ account, host, want string }{
		{"mae", "scale1", "mae@scale1"},
		{`HOUSE\mae`, "scale1", "mae@scale1"},
		{"", "scale1", "scale1"},
		{"mae", "", "mae"},
		{"", "", ""},
		{" ma\x1be ", "sc\nale1\xff", "mae@scale1"},
	} {
		if got := named(c.account, c.host); got != c.want {
			t.Errorf("%q on %q is %q, want %q", c.account, c.host, got, c.want)
		}
	}
	if got := named(strings.Repeat("é", 300), strings.Repeat("x", 300)); utf8.RuneCountInString(got) != 121 {
		t.Errorf("the name has %d letters", utf8.RuneCountInString(got))
	}
	if got := Here(); strings.ContainsAny(got, "\n\t\\") || utf8.RuneCountInString(got) > 121 {
		t.Errorf("this computer is %q", got)
	}
}
