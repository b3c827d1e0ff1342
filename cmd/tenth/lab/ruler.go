package lab

import (
	"strings"
	"unicode/utf8"

	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
)

// drawRuler draws a moisture ruler with characters for a terminal, no wider than width where
// that can be, each letter a whole part of a point:
//
//	14        15        16
//	|.........|..[=*=]..|
//	          ^ shrink trigger 15.0 %
//
// A star is the reading, brackets are its tolerance.
func drawRuler(r moisture.Ruler, width int, in *message.Printer) string {
	if len(r.Marks) == 0 {
		return ""
	}
	d := rulerText{ruler: r, width: lettersPerPoint((width-1)/r.Points())*r.Points() + 1}
	lines := []string{d.figures(), d.strip()}
	for _, m := range r.Marks {
		if m.Kind == moisture.LimitMark {
			lines = append(lines, d.arrow(r.MarkPlace(m), in.Text(m.Label)))
		}
	}
	for _, m := range r.Marks {
		if m.Kind == moisture.ReadingMark {
			lines = append(lines, d.arrow(r.MarkPlace(m), in.Text(message.New("read %s", m.Label))))
		}
	}
	return strings.Join(lines, "\n") + "\n"
}

// lettersPerPoint returns the largest number, up to a limit, for which one letter is a tenth, a
// fifth or a half of a point, or the whole.
func lettersPerPoint(limit int) int {
	for _, n := range []int{10, 5, 2} {
		if n <= limit {
			return n
		}
	}
	return 1
}

// rulerText is a drawing on a grid of characters.
type rulerText struct {
	ruler moisture.Ruler
	width int
}

// column returns the column of a position.
func (d rulerText) column(at int) int { return (at*(d.width-1) + 500) / 1000 }

func (d rulerText) figures() string {
	row := blanks(d.width + 3)
	for _, m := range d.ruler.Marks {
		if m.Kind == moisture.PointMark {
			copy(row[d.column(d.ruler.MarkPlace(m)):], m.Label.String())
		}
	}
	return strings.TrimRight(string(row), " ")
}

func (d rulerText) strip() string {
	row := blanks(d.width)
	for i := range row {
		row[i] = '.'
	}
	for _, m := range d.ruler.Marks {
		if m.Kind == moisture.PointMark {
			row[d.column(d.ruler.MarkPlace(m))] = '|'
		}
	}
	if b := d.ruler.Band; b != nil {
		from, to := d.column(d.ruler.Place(b.From)), d.column(d.ruler.Place(b.To))
		for i := from; i <= to; i++ {
			row[i] = '='
		}
		row[from], row[to] = '[', ']'
	}
	for _, m := range d.ruler.Marks {
		if m.Kind == moisture.ReadingMark {
			row[d.column(d.ruler.MarkPlace(m))] = '*'
		}
	}
	return string(row)
}

// arrow points up at a place, its label on the side where there is room.
func (d rulerText) arrow(at int, label string) string {
	column := d.column(at)
	if before := column - utf8.RuneCountInString(label) - 1; before >= 0 && at > 500 {
		return strings.Repeat(" ", before) + label + " ^"
	}
	return strings.Repeat(" ", column) + "^ " + label
}

func blanks(n int) []byte {
	row := make([]byte, n)
	for i := range row {
		row[i] = ' '
	}
	return row
}
