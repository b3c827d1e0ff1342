package sheet

import (
	"strings"
	"unicode"

	"tenthpoint/internal/paper/plain"
	"tenthpoint/internal/paper/roll"
	"tenthpoint/internal/scaleticket"
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
	t := &ticketText{Lines: &plain.Lines{Width: max(width, leastColumns)}}
	for _, s := range d.Sections {
		if s.Form != scaleticket.SmallPrint {
			t.section(s, d)
		}
	}
	t.footer(d)
	ticket = t.setText()
	t.Lines = &plain.Lines{Width: t.Width}
	for _, s := range d.Sections {
		if s.Form == scaleticket.SmallPrint {
			t.smallPrint(s)
		}
	}
	return ticket, t.setText()
}

func (t *ticketText) setText() string { return strings.ReplaceAll(t.Text(), degrees, " deg ") }

// ticketText sets the lines of a ticket.
type ticketText struct{ *plain.Lines }

func (t *ticketText) section(s scaleticket.Section, d scaleticket.Document) {
	switch s.Form {
	case scaleticket.Letterhead:
		t.letterhead(s)
	case scaleticket.Numbering:
		t.Rule("=")
		t.Middle(simple(strings.ToUpper(s.Title)))
		t.lines(s)
		for _, mark := range d.Marks {
			t.Middle(simple("*** " + mark + " ***"))
		}
	case scaleticket.Figures:
		t.Rule("=")
		t.lines(s)
		t.Rule("=")
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

func (t *ticketText) title(s scaleticket.Section) {
	t.Line("")
	t.Line(strings.ToUpper(s.Title))
}

func (t *ticketText) letterhead(s scaleticket.Section) {
	for _, l := range s.Lines {
		t.Middle(simple(scaleticket.Joined(" ", l.Label, l.Value)))
	}
}

func (t *ticketText) lines(s scaleticket.Section) {
	for _, l := range s.Lines {
		t.set(l)
	}
}

// set writes one line of the ticket.
func (t *ticketText) set(l scaleticket.Line) {
	switch l.Kind {
	case scaleticket.Warning:
		t.Running("! ", "  ", simple(l.Label))
	case scaleticket.Heading:
		t.Line("")
		t.Running("", "  ", simple(l.Label))
	case scaleticket.Sentence:
		t.Running("", "  ", simple(l.Label))
	case scaleticket.Total:
		t.Line(plain.Right(strings.Repeat("-", t.Width/3), t.Width))
		t.pair(l.Label, l.Value)
	default:
		t.pair(l.Label, scaleticket.Joined(" ", l.Mark, l.Value))
	}
	for _, note := range l.Notes {
		t.Running("  ", "  ", simple(note))
	}
}

// pair sets the label at the left edge and the value at the right one, on one
// line where both fit, else the value on lines of its own.
func (t *ticketText) pair(label, value string) {
	label, value = simple(label), simple(value)
	if line, ok := t.spread(label, value, t.Width); ok {
		t.Line(line)
		return
	}
	t.Running("", "  ", label)
	t.Ending(value, t.Width-2)
}

// spread fills the space between a label and its value, on wide paper with a
// row of dots to lead the eye; false when the two do not fit.
func (t *ticketText) spread(label, value string, width int) (string, bool) {
	gap := width - plain.Letters(label) - plain.Letters(value)
	switch {
	case gap < 1:
		return "", false
	case t.Width < wideColumns || gap < 4:
		return label + strings.Repeat(" ", gap) + value, true
	}
	return label + " " + strings.Repeat(".", gap-2) + " " + value, true
}

// facts sets short facts side by side where the paper is wide enough.
func (t *ticketText) facts(s scaleticket.Section) {
	const between = 4
	half, left := (t.Width-between)/2, ""
	for _, l := range s.Lines {
		short, ok := t.spread(simple(l.Label), simple(l.Value), half)
		ok = ok && t.Width >= wideColumns && l.Kind == scaleticket.Pair && len(l.Notes) == 0
		switch {
		case ok && left == "":
			left = short
			continue
		case ok:
			t.Line(left + strings.Repeat(" ", t.Width-half-plain.Letters(left)) + short)
			left = ""
			continue
		case left != "":
			t.Line(left)
			left = ""
		}
		t.set(l)
	}
	if left != "" {
		t.Line(left)
	}
}

func (t *ticketText) signing(s scaleticket.Section) {
	for _, l := range s.Lines {
		t.Line("")
		t.Line("")
		t.Rule("_")
		t.pair(l.Label, l.Value)
	}
}

func (t *ticketText) footer(d scaleticket.Document) {
	t.Line("")
	for _, sentence := range d.Footer {
		t.Running("", "", simple(sentence))
	}
	if d.CodeLine != "" {
		t.Line(simple(d.CodeLine))
	}
}

func (t *ticketText) smallPrint(s scaleticket.Section) {
	t.Line("")
	t.Rule("-")
	t.Line(strings.ToUpper(s.Title))
	t.lines(s)
}

// simple writes signs with letters that every roll printer and terminal has.
func simple(text string) string {
	if !strings.ContainsFunc(text, isSpecial) { // most texts, and the replacer is slow to find so
		return text
	}
	return simpleSigns.Replace(text)
}

// isSpecial reports whether a letter may be one of [simpleSigns]: all of them are blanks other than
// the space, or beyond ASCII.
func isSpecial(r rune) bool { return r < ' ' || r > unicode.MaxASCII }

// degrees hold a figure and its scale on one line, until the lines are set.
const degrees = "\u00a0deg\u00a0"

var simpleSigns = strings.NewReplacer("−", "-", "×", "x", "÷", "/", "→", "->", "…", "...", "√", "root of ", " °", degrees, "°", degrees, "·", "*", "\n", " ", "\t", " ")
