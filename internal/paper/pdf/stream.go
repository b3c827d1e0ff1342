package pdf

import (
	"bytes"
	"compress/zlib"
	"encoding/hex"
	"fmt"
	"strconv"
	"sync"
	"unicode/utf16"

	"tenthpoint/internal/paper"
)

// stream is the content stream of a page. Its buffer is reused for the next page.
type stream struct {
	bytes  []byte
	height paper.Length
	fill   paper.Ink
	edge   paper.Ink
	thick  paper.Length
}

func (s *stream) draw(m *paper.Marks, width, height paper.Length) {
	*s = stream{bytes: s.bytes[:0], height: height, thick: -1}
	if m.Stamp != nil {
		s.stamp(*m.Stamp, width)
	}
	for _, b := range m.Boxes {
		s.box(b)
	}
	for _, r := range m.Rules {
		s.rule(r)
	}
	for _, p := range m.Pictures {
		s.picture(p)
	}
	for _, r := range m.Runs {
		s.run(r.At.X, height-r.At.Y, r.Text, r.Style)
	}
}

// stamp turns the page about its middle for one word.
func (s *stream) stamp(w paper.Stamp, width paper.Length) {
	s.words("q")
	for _, millionths := range []int{paper.StampCosine, paper.StampSine, -paper.StampSine, paper.StampCosine} {
		s.words(fraction(millionths))
	}
	s.numbers(width/2, s.height-s.height*paper.StampMiddle/1000)
	s.words("cm")
	s.run(-w.Style.Width(w.Text)/2, -w.Style.Size*36/100, w.Text, w.Style)
	s.words("Q")
	s.fill = paper.Ink{}
}

func (s *stream) box(b paper.Box) {
	how := ""
	switch {
	case b.Fill.On && b.Edge.On:
		how = "B"
	case b.Fill.On:
		how = "f"
	case b.Edge.On:
		how = "S"
	default:
		return
	}
	if b.Fill.On {
		s.fillWith(b.Fill)
	}
	if b.Edge.On {
		s.edgeWith(b.Edge, paper.EdgeThick)
	}
	s.rectangle(b.At.X, b.At.Y, b.Width, b.Height)
	s.words(how)
}

func (s *stream) rectangle(x, y, width, height paper.Length) {
	s.numbers(x, s.height-y-height, width, height)
	s.words("re")
}

func (s *stream) rule(r paper.Rule) {
	s.edgeWith(r.Ink, r.Thick)
	s.numbers(r.From.X, s.height-r.From.Y)
	s.words("m")
	s.numbers(r.To.X, s.height-r.To.Y)
	s.words("l S")
}

// picture fills the dark modules of a code, a row of them that touch as one
// rectangle.
func (s *stream) picture(p paper.Picture) {
	s.fillWith(paper.CodeInk)
	across := func(n int) paper.Length { return p.Width * paper.Length(n) / paper.Length(p.Code.Columns) }
	down := func(n int) paper.Length { return p.Height * paper.Length(n) / paper.Length(p.Code.Rows) }
	for _, d := range p.Code.Dark {
		left, top := across(d.Column), down(d.Row)
		s.rectangle(p.At.X+left, p.At.Y+top, across(d.Column+d.Length)-left, down(d.Row+1)-top)
	}
	s.words("f")
}

// run writes a line of letters from a place on, measured from the foot of the page.
func (s *stream) run(x, y paper.Length, text string, style paper.Style) {
	s.fillWith(style.Ink)
	s.bytes = append(s.bytes, "BT /F"...)
	s.bytes = append(s.bytes, '1'+byte(boolean(style.Bold)), ' ')
	s.numbers(style.Size)
	s.bytes = append(s.bytes, "Tf "...)
	s.numbers(x, y)
	s.bytes = append(s.bytes, "Td ("...)
	for _, r := range paper.Shown(text, style.Bold) {
		s.half(byte(r >> 8))
		s.half(byte(r))
	}
	s.words(") Tj ET")
}

func boolean(is bool) int {
	if is {
		return 1
	}
	return 0
}

// half writes one byte of a letter, as text in brackets has it.
func (s *stream) half(b byte) {
	switch b {
	case '(', ')', '\\':
		s.bytes = append(s.bytes, '\\', b)
	case '\r':
		s.bytes = append(s.bytes, '\\', 'r')
	default:
		s.bytes = append(s.bytes, b)
	}
}

func (s *stream) fillWith(k paper.Ink) {
	if s.fill != k {
		s.fill = k
		s.ink(k)
		s.words("rg")
	}
}

func (s *stream) edgeWith(k paper.Ink, thick paper.Length) {
	if s.edge != k {
		s.edge = k
		s.ink(k)
		s.words("RG")
	}
	if s.thick != thick {
		s.thick = thick
		s.numbers(thick)
		s.words("w")
	}
}

func (s *stream) ink(k paper.Ink) {
	for _, part := range []uint8{k.Red, k.Green, k.Blue} {
		s.numbers(paper.Length(part) * 1000 / 255)
	}
}

func (s *stream) words(text string) { s.bytes = append(append(s.bytes, text...), '\n') }

// numbers writes lengths in points.
func (s *stream) numbers(lengths ...paper.Length) {
	for _, l := range lengths {
		s.bytes = append(appendThousandths(s.bytes, l), ' ')
	}
}

// appendThousandths writes 12340 as 12.34.
func appendThousandths(to []byte, l paper.Length) []byte {
	if l < 0 {
		to, l = append(to, '-'), -l
	}
	to = strconv.AppendInt(to, int64(l/1000), 10)
	if rest := l % 1000; rest > 0 {
		to = append(to, '.', '0'+byte(rest/100), '0'+byte(rest/10%10), '0'+byte(rest%10))
		to = bytes.TrimRight(to, "0")
	}
	return to
}

// fraction writes millionths, less than one.
func fraction(millionths int) string {
	sign := ""
	if millionths < 0 {
		sign, millionths = "-", -millionths
	}
	return fmt.Sprintf("%s0.%06d", sign, millionths)
}

// twoPlaces is a length in points with two decimals, as sizes of paper are known.
func twoPlaces(l paper.Length) string {
	whole, rest := l/1000, l%1000/10
	return strconv.Itoa(int(whole)) + "." + string([]byte{'0' + byte(rest/10), '0' + byte(rest%10)})
}

func hexText(text string) string {
	out := []byte{0xFE, 0xFF}
	for _, unit := range utf16.Encode([]rune(text)) {
		out = append(out, byte(unit>>8), byte(unit))
	}
	return hex.EncodeToString(out)
}

// packer compresses streams; it is costly to make and reused.
type packer struct {
	out    bytes.Buffer
	writer *zlib.Writer
}

var packers = sync.Pool{New: func() any {
	p := &packer{}
	p.writer = zlib.NewWriter(&p.out)
	return p
}}

// deflated packs a stream.
func deflated(raw []byte) []byte {
	p := packers.Get().(*packer)
	defer packers.Put(p)
	p.out.Reset()
	p.writer.Reset(&p.out)
	if _, err := p.writer.Write(raw); err != nil {
		panic("pdf: " + err.Error()) // a buffer in memory takes everything
	}
	if err := p.writer.Close(); err != nil {
		panic("pdf: " + err.Error())
	}
	return bytes.Clone(p.out.Bytes())
}
