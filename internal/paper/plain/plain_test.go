package plain_test

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/paper/plain"
)

func TestLines(t *testing.T) {
	l := &plain.Lines{Width: 12}
	l.Gap() // none at the beginning
	l.Line("left  ")
	l.Gap()
	l.Rule("=")
	l.Middle("é mid")
	l.Running("- ", "  ", "one two three four")
	l.Ending("at the end", 6)
	want := []string{"left", "", "============", "   é mid", "- one two", "  three four", "      at the", "         end", ""}
	if got := strings.Split(l.Text(), "\n"); !slices.Equal(got, want) {
		t.Errorf("got\n%q\nwant\n%q", got, want)
	}
}

// A figure and its unit stay together, and a word longer than a line is broken.
func TestWrap(t *testing.T) {
	for _, c := range []struct {
		text  string
		width int
		want  []string
	}{
		{"weighed 52,300 lb", 12, []string{"weighed", "52,300 lb"}},
		{"abcdefgh", 3, []string{"abc", "def", "gh"}},
		{"", 5, nil},
	} {
		if got := plain.Wrap(c.text, c.width); !slices.Equal(got, c.want) {
			t.Errorf("%q in %d: %q, want %q", c.text, c.width, got, c.want)
		}
	}
	if got := plain.Paragraph("", 5); !slices.Equal(got, []string{""}) {
		t.Errorf("no text takes the lines %q", got)
	}
}

// Letters are counted, not bytes.
func TestFilled(t *testing.T) {
	if l, r := plain.Left("é", 3), plain.Right("é", 3); l != "é  " || r != "  é" {
		t.Errorf("%q and %q", l, r)
	}
	if got := plain.Right("too long", 3); got != "too long" {
		t.Errorf("%q was cut", got)
	}
}
