// Package roll writes papers for receipt printers: rolls of paper three inches wide
// that print letters of equal width, and codes by a command of their own.
//
// The commands are those that such printers have in common and call ESC/POS: begin, code page,
// alignment, QR code, feed and cut. A printer that lacks the QR code prints nothing in its place;
// the code in letters is always printed under it.
package roll

import (
	"fmt"
	"maps"
	"slices"
	"unicode"

	"golang.org/x/text/encoding/charmap"
)

// Settings are the properties of one printer.
type Settings struct {
	Columns int // letters to a line: 42 or 48
	Page    string
}

// The widths of rolls: letters of 12 dots on 512 and on 576 dots.
const (
	Narrow = 42
	Wide   = 48
)

// DefaultPage is the default code page: the letters of western Europe, which most printers have
// besides 437.
const DefaultPage = "858"

// page is a table of letters: the number a printer knows it by.
type page struct {
	number  byte
	letters *charmap.Charmap
}

var pages = map[string]page{
	"437":  {0, charmap.CodePage437},
	"850":  {2, charmap.CodePage850},
	"858":  {19, charmap.CodePage858},
	"1252": {16, charmap.Windows1252},
}

// Pages are the names of the tables of letters, in order.
func Pages() []string { return slices.Sorted(maps.Keys(pages)) }

// Check returns what is wrong with settings.
func (s Settings) Check() error {
	if s.Columns != Narrow && s.Columns != Wide {
		return fmt.Errorf("a roll has %d or %d columns, not %d", Narrow, Wide, s.Columns)
	}
	if _, known := pages[s.Page]; !known {
		return fmt.Errorf("there is no code page %q here. Take 437, 850, 858 or 1252", s.Page)
	}
	return nil
}

// Paper is a paper being written.
type Paper struct {
	bytes []byte
	page  page
}

// Begin starts a paper.
func Begin(s Settings) (*Paper, error) {
	if err := s.Check(); err != nil {
		return nil, err
	}
	p := &Paper{page: pages[s.Page]}
	p.put(esc, '@')
	p.put(esc, 't', p.page.number)
	return p, nil
}

const (
	esc = 0x1B
	gs  = 0x1D
)

func (p *Paper) put(bytes ...byte) { p.bytes = append(p.bytes, bytes...) }

// Text writes lines. Blanks of every width become plain ones, since lines are already wrapped.
// Letters that the printer's code page lacks become question marks, so that missing ones can be
// seen.
func (p *Paper) Text(text string) {
	for _, r := range text {
		b, has := p.page.letters.EncodeRune(r)
		switch {
		case r == '\n':
			p.put('\n')
		case unicode.IsSpace(r):
			p.put(' ')
		case !has || r < ' ':
			p.put('?')
		default:
			p.put(b)
		}
	}
}

// moduleDots is the width of a QR module in dots: at 203 dots to the inch the code of a ticket is
// then about 17 mm wide.
const moduleDots = 4

// Code draws a QR code in the middle of the roll, with error correction M.
func (p *Paper) Code(payload string) {
	p.put(esc, 'a', 1)
	p.code(65, '2', 0)
	p.code(67, moduleDots)
	p.code(69, '1')
	p.code(80, append([]byte{'0'}, payload...)...)
	p.code(81, '0')
	p.put('\n', esc, 'a', 0)
}

// code is one function of the command for two-dimensional codes.
func (p *Paper) code(function byte, values ...byte) {
	length := len(values) + 2
	p.put(gs, '(', 'k', byte(length), byte(length>>8), '1', function)
	p.put(values...)
}

// feedLines is the number of lines to feed so that the cutter is below the last line.
const feedLines = 4

// End feeds and cuts the paper, and returns its bytes.
func (p *Paper) End() []byte {
	p.put(esc, 'd', feedLines)
	p.put(gs, 'V', 1)
	return p.bytes
}
