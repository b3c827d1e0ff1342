package sheet

import (
	"strings"
	"unicode/utf8"

	"tenthpoint/internal/paper/roll"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/textwrap"
)

// Widths that a slip is set to as text, in letters of equal width.
const (
	RollColumns = roll.Narrow // a three-inch roll
	PageColumns = 80          // a terminal or a page
)

// wideColumns is from where a text is wide enough for two facts to a line.
const wideColumns = 72

// leastColumns is the narrowest text that still holds a figure and its name.
const leastColumns = 24

// Text sets a document as plain text, width letters wide, for a roll printer
// or a terminal. No line is wider; long words are broken. The signs of the
// working are written with the letters every printer has.
func Text(d scaleticket.Document, width int) string {
	ticket, working := texts(d, width)
	return ticket + working
}

// texts are the ticket down to its code, and the working.
func texts(d scaleticket.Document, width int) (ticket, working string) {
	t := &typesetter{width: max(width, leastColumns)}
	for _, s := range d.Sections {
		if s.Form != scaleticket.SmallPrint {
			t.section(s, d)
		}
	}
	t.footer(d)
	ticket = t.b.String()
	t.b.Reset()
	for _, s := range d.Sections {
		if s.Form == scaleticket.SmallPrint {
			t.smallPrint(s)
		}
	}
	return ticket, t.b.String()
}

// typesetter sets lines of equal-width letters.
type typesetter struct {
	b     strings.Builder
	width int
}

func (t *typesetter) line(text string) {
	t.b.WriteString(strings.TrimRight(text, " "))
	t.b.WriteByte('\n')
}

func (t *typesetter) rule(letter string) { t.line(strings.Repeat(letter, t.width)) }

func (t *typesetter) section(s scaleticket.Section, d scaleticket.Document) {
	switch s.Form {
	case scaleticket.Letterhead:
		t.letterhead(s)
	case scaleticket.Numbering:
		t.rule("=")
		t.middle(strings.ToUpper(s.Title))
		t.lines(s)
		for _, mark := range d.Marks {
			t.middle("*** " + mark + " ***")
		}
	case scaleticket.Figures:
		t.rule("=")
		t.lines(s)
		t.rule("=")
	case scaleticket.Signing:
		t.signing(s)
	case scaleticket.Facts:
		t.title(s)
		t.facts(s)
	default:
		t.title(s)
		t.lines(s)
	}
}

func (t *typesetter) title(s scaleticket.Section) {
	t.line("")
	t.line(strings.ToUpper(s.Title))
}

func (t *typesetter) letterhead(s scaleticket.Section) {
	for _, l := range s.Lines {
		t.middle(scaleticket.Joined(" ", l.Label, l.Value))
	}
}

func (t *typesetter) lines(s scaleticket.Section) {
	for _, l := range s.Lines {
		t.set(l)
	}
}

// set writes one line of the ticket.
func (t *typesetter) set(l scaleticket.Line) {
	switch l.Kind {
	case scaleticket.Warning:
		t.running("! ", "  ", l.Label)
	case scaleticket.Heading:
		t.line("")
		t.running("", "  ", l.Label)
	case scaleticket.Sentence:
		t.running("", "  ", l.Label)
	case scaleticket.Total:
		t.b.WriteString(strings.Repeat(" ", t.width-t.width/3))
		t.line(strings.Repeat("-", t.width/3))
		t.pair(l.Label, l.Value)
	default:
		t.pair(l.Label, scaleticket.Joined(" ", l.Mark, l.Value))
	}
	for _, note := range l.Notes {
		t.running("  ", "  ", note)
	}
}

// pair sets the label at the left edge and the value at the right one, on one
// line where both fit, else the value on lines of its own.
func (t *typesetter) pair(label, value string) {
	label, value = plain(label), plain(value)
	if line, ok := t.spread(label, value, t.width); ok {
		t.line(line)
		return
	}
	t.running("", "  ", label)
	for _, part := range wrap(value, t.width-2) {
		t.line(strings.Repeat(" ", t.width-letters(part)) + part)
	}
}

// spread fills the space between a label and its value, on wide paper with a
// row of dots to lead the eye; false when the two do not fit.
func (t *typesetter) spread(label, value string, width int) (string, bool) {
	gap := width - letters(label) - letters(value)
	switch {
	case gap < 1:
		return "", false
	case t.width < wideColumns || gap < 4:
		return label + strings.Repeat(" ", gap) + value, true
	}
	return label + " " + strings.Repeat(".", gap-2) + " " + value, true
}

// facts sets short facts side by side where the paper is wide enough.
func (t *typesetter) facts(s scaleticket.Section) {
	const between = 4
	half, left := (t.width-between)/2, ""
	for _, l := range s.Lines {
		short, ok := t.spread(plain(l.Label), plain(l.Value), half)
		ok = ok && t.width >= wideColumns && l.Kind == scaleticket.Pair && len(l.Notes) == 0
		switch {
		case ok && left == "":
			left = short
			continue
		case ok:
			t.line(left + strings.Repeat(" ", t.width-half-letters(left)) + short)
			left = ""
			continue
		case left != "":
			t.line(left)
			left = ""
		}
		t.set(l)
	}
	if left != "" {
		t.line(left)
	}
}

func (t *typesetter) middle(text string) {
	for _, part := range wrap(plain(text), t.width) {
		t.line(strings.Repeat(" ", (t.width-letters(part))/2) + part)
	}
}

// running sets running text, its first line after one indent and the others
// after another.
func (t *typesetter) running(first, rest, text string) {
	for i, part := range wrap(plain(text), t.width-letters(rest)) {
		if i == 0 {
			t.line(first + part)
			continue
		}
		t.line(rest + part)
	}
}

func (t *typesetter) signing(s scaleticket.Section) {
	for _, l := range s.Lines {
		t.line("")
		t.line("")
		t.rule("_")
		t.pair(l.Label, l.Value)
	}
}

func (t *typesetter) footer(d scaleticket.Document) {
	t.line("")
	for _, sentence := range d.Footer {
		t.running("", "", sentence)
	}
	if d.CodeLine != "" {
		t.line(plain(d.CodeLine))
	}
}

func (t *typesetter) smallPrint(s scaleticket.Section) {
	t.line("")
	t.rule("-")
	t.line(strings.ToUpper(s.Title))
	t.lines(s)
}

func letters(text string) int { return utf8.RuneCountInString(text) }

// plain writes signs with letters that every roll printer and terminal has.
func plain(text string) string { return plainSigns.Replace(text) }

var plainSigns = strings.NewReplacer("−", "-", "×", "x", "÷", "/", "→", "->", "…", "...", "√", "root of ", "°", " deg ", "·", "*", "\n", " ", "\t", " ")

// wrap breaks text into lines of at most so many letters. A figure and its unit
// stay together.
func wrap(text string, width int) []string {
	return textwrap.Broken(textwrap.Words(text), textwrap.InWidth(width))
}
