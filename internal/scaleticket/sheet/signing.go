package sheet

import (
	"sync"

	"tenthpoint/internal/paper"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/barcode"
	"tenthpoint/internal/slipcode"
)

// signing is the rules to sign on with their names below, the QR code at the
// right, and the footer.
func signing(s scaleticket.Section, d scaleticket.Document, code *square, width paper.Length) paper.Block {
	room, sentences := width, d.Footer
	if code != nil {
		room -= code.side + 16*paper.Point
	}
	if !code.isLettered() && d.CodeLine != "" {
		sentences = append(sentences[:len(sentences):len(sentences)], d.CodeLine)
	}
	b := signatures(s, room)
	b.Above = 7 * paper.Point
	for _, sentence := range sentences {
		b.Height += b.Paragraph(0, b.Height, noteStyle.Wrap(sentence, room), noteStyle)
	}
	if code != nil {
		b.Height = max(b.Height, code.draw(&b.Marks, width, d.CodeLine))
	}
	return b
}

// signatures sets the rules side by side, each with its purpose and the signer's name.
func signatures(s scaleticket.Section, width paper.Length) (b paper.Block) {
	const between, space, rule = 12 * paper.Point, 20 * paper.Point, 21.5 * paper.Point
	each := (width - between*paper.Length(len(s.Lines)-1)) / paper.Length(len(s.Lines))
	most, x := 1, paper.Length(0)
	for _, l := range s.Lines {
		b.Line(x, space, x+each, space, 0.6*paper.Point, black)
		b.Text(x, rule+plainStyle.Baseline(), l.Label, labelStyle)
		look := plainStyle
		if l.Missing {
			look = look.In(stop)
		}
		names := plainStyle.Wrap(l.Value, each-labelStyle.Width(l.Label)-8*paper.Point)
		for n, name := range names {
			b.TextEnding(x+each, rule+paper.Length(n)*look.Leading()+look.Baseline(), name, look)
		}
		most = max(most, len(names))
		x += each + between
	}
	b.Height = rule + paper.Length(most)*plainStyle.Leading() + 4*paper.Point
	return b.Named(fieldsOf(s.Lines)...)
}

// square is the QR code of a ticket as it is set.
type square struct {
	*paper.Code
	side paper.Length // its quiet zone is not counted
}

// module is the side of a module: 3 dots of a printer with 8 to the millimetre, which is said to have
// 203 to the inch. The quiet zone is four modules wide: what parts keep free between them.
const module = 1063 * paper.Point / 1000

// aboveCode is kept free above a code, beside what the part itself keeps free.
const aboveCode = 2 * paper.Point

// firstSide is the side of a code of the first format, whose modules are as large as it leaves them.
const firstSide = 50 * paper.Point

// squareOf sets a code on a page that is then scaled, by thousandths: a code of facts has modules of
// one size on every paper.
func squareOf(code *paper.Code, scale paper.Length) *square {
	switch {
	case code == nil:
		return nil
	case !slipcode.Is(code.Payload):
		return &square{code, firstSide}
	}
	return &square{code, paper.Length(code.Columns) * module * 1000 / scale}
}

// isLettered reports whether the code in letters, for those without a scanner, stands under the
// square. It did under that of the first format; now it stands beside it.
func (c *square) isLettered() bool { return c != nil && !slipcode.Is(c.Payload) }

// draw draws the square so that it ends at right, and returns the height that it takes.
func (c *square) draw(m *paper.Marks, right paper.Length, line string) (height paper.Length) {
	m.Picture(right-c.side, aboveCode, c.side, c.side, c.Code)
	height = aboveCode + c.side
	if c.isLettered() {
		look := codeStyle.Fitted(line, c.side+8*paper.Point, 3*paper.Point)
		m.TextEnding(right, height+1*paper.Point+look.Baseline(), line, look)
		height += 1*paper.Point + codeStyle.Leading()
	}
	return height
}

// codeOf is the QR code of a ticket; nil on a preview.
func codeOf(d scaleticket.Document) *paper.Code {
	drawn, ok := scaleticket.QR(d)
	if !ok {
		return nil
	}
	return codes.of(drawn.Text)
}

// codeCache keeps the codes drawn last: the window shows a ticket, and then it prints.
type codeCache struct {
	mu   sync.Mutex
	kept map[string]*paper.Code
}

// mostCodes is the size of the cache of codes.
const mostCodes = 64

var codes = codeCache{kept: map[string]*paper.Code{}}

// of is the code of a text; nil where it cannot be drawn.
func (c *codeCache) of(text string) *paper.Code {
	c.mu.Lock()
	code := c.kept[text]
	c.mu.Unlock()
	if code != nil {
		return code
	}
	picture, err := barcode.Square(text)
	if err != nil {
		return nil
	}
	code = paper.NewCode(picture, text)
	c.mu.Lock()
	defer c.mu.Unlock()
	if len(c.kept) >= mostCodes {
		clear(c.kept)
	}
	c.kept[text] = code
	return code
}
