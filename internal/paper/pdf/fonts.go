package pdf

import (
	"encoding/binary"
	"fmt"
	"strings"
	"sync"

	"tenthpoint/internal/fonts"
	"tenthpoint/internal/paper"
)

// fontObjects is the number of PDF objects of a font: the font, its descendant, its descriptor, its
// file, and its character map.
const fontObjects = 5

// packedFont is a font as it goes into every file.
type packedFont struct {
	name   string
	widths string
	file   []byte
	length int // of the file, unpacked
	glyphs []byte
}

var (
	regularFont = sync.OnceValue(func() packedFont { return packFont("TPPLRG+TenthpointPapers-Regular", fonts.Regular, false) })
	boldFont    = sync.OnceValue(func() packedFont { return packFont("TPPLBD+TenthpointPapers-Bold", fonts.Bold, true) })
	letters     = sync.OnceValue(func() []byte { return deflated([]byte(letterMap)) })
)

// letterMap maps each character code to the same Unicode character, so that text can be copied out
// of the paper.
const letterMap = `/CIDInit /ProcSet findresource begin
12 dict begin
begincmap
/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def
/CMapName /Adobe-Identity-UCS def
/CMapType 2 def
1 begincodespacerange
<0000> <FFFF>
endcodespacerange
1 beginbfrange
<0000> <FFFF> <0000>
endbfrange
endcmap
CMapName currentdict /CMap defineresource pop
end
end
`

func packFont(name string, file []byte, isBold bool) packedFont {
	p := packedFont{name: name, file: deflated(file), length: len(file)}
	var widths strings.Builder
	glyphs := []byte{}
	last := rune(-2)
	paper.Letters(isBold, func(r rune, glyph uint16, width int) {
		for len(glyphs) <= 2*int(r)+1 {
			glyphs = append(glyphs, 0)
		}
		binary.BigEndian.PutUint16(glyphs[2*r:], glyph)
		if r != last+1 {
			if last >= 0 {
				widths.WriteString("]")
			}
			fmt.Fprintf(&widths, " %d [", r)
		}
		fmt.Fprintf(&widths, "%d ", width)
		last = r
	})
	p.widths, p.glyphs = widths.String()+"]", deflated(glyphs)
	return p
}

// fonts writes both faces.
func (f *File) fonts() {
	f.packed(letterObject, letters())
	f.font(regularObject, regularFont(), 80)
	f.font(boldObject, boldFont(), 140)
}

// font writes the objects of a face; stem is its stem width, for a viewer that must draw with
// another font.
func (f *File) font(number int, p packedFont, stem int) {
	f.object(number, "<</Type /Font /Subtype /Type0 /BaseFont /%s /Encoding /Identity-H /DescendantFonts [%d 0 R] /ToUnicode %d 0 R>>",
		p.name, number+1, letterObject)
	f.object(number+1, "<</Type /Font /Subtype /CIDFontType2 /BaseFont /%s /CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> "+
		"/FontDescriptor %d 0 R /DW 540 /W [%s] /CIDToGIDMap %d 0 R>>", p.name, number+2, p.widths, number+4)
	f.object(number+2, "<</Type /FontDescriptor /FontName /%s /Flags 32 /FontBBox [-918 -463 1614 1232] /ItalicAngle 0 "+
		"/Ascent 928 /Descent -236 /CapHeight 729 /StemV %d /FontFile2 %d 0 R>>", p.name, stem, number+3)
	f.begin(number + 3)
	f.print("<</Filter /FlateDecode /Length %d /Length1 %d>>\nstream\n", len(p.file), p.length)
	f.write(p.file)
	f.print("\nendstream\nendobj\n")
	f.packed(number+4, p.glyphs)
}
