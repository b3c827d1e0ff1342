package sheet

import (
	"sync"

	"tenthpoint/internal/paper"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/scaleticket/barcode"
)

// codeSide is the side of the QR code, its quiet zone not counted.
const codeSide = 50 * paper.Point

// signing is the rules to sign on with their names below, the QR code at the
// right, and the footer.
func signing(s scaleticket.Section, d scaleticket.Document, code *paper.Code, width paper.Length) paper.Block {
	room, sentences := width, d.Footer
	if code != nil {
		room -= codeSide + 16*paper.Point
	} else if d.CodeLine != "" {
		sentences = append(sentences[:len(sentences):len(sentences)], d.CodeLine)
	}
	b := signatures(s, room)
	b.Above = 7 * paper.Point
	for _, sentence := range sentences {
		b.Height += b.Paragraph(0, b.Height, noteStyle.Wrap(sentence, room), noteStyle)
	}
	if code != nil {
		b.Height = max(b.Height, codeSide+3*paper.Point+codeStyle.Leading())
		drawCode(&b.Marks, width, 2*paper.Point, code, d.CodeLine)
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

// drawCode draws the QR code so that it ends at right, and under it the code in letters, for those
// without a scanner.
func drawCode(m *paper.Marks, right, y paper.Length, code *paper.Code, line string) {
	m.Picture(right-codeSide, y, codeSide, codeSide, code)
	look := codeStyle.Fitted(line, codeSide+8*paper.Point, 3*paper.Point)
	m.TextEnding(right, y+codeSide+1*paper.Point+look.Baseline(), line, look)
}

// codeOf is the QR code of a ticket; nil on a preview.
func codeOf(d scaleticket.Document) *paper.Code {
	payload, ok := scaleticket.QR(d)
	if !ok {
		return nil
	}
	return codes.of(payload)
}

// codeCache keeps the codes drawn last: the window shows a ticket, and then it prints.
type codeCache struct {
	mu   sync.Mutex
	kept map[string]*paper.Code
}

// mostCodes is the size of the cache of codes.
const mostCodes = 64

var codes = codeCache{kept: map[string]*paper.Code{}}

// of is the code of a payload; nil where it cannot be drawn.
func (c *codeCache) of(payload barcode.Payload) *paper.Code {
	text := payload.String()
	c.mu.Lock()
	code := c.kept[text]
	c.mu.Unlock()
	if code != nil {
		return code
	}
	picture, err := payload.Picture()
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
