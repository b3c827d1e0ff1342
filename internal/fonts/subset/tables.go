package subset

import (
	"maps"
	"slices"
	"unicode/utf16"
)

// Name is the name of the new font.
type Name struct {
	Family, Style string
	Copyright     string
	Version       string
}

// table is the font's names for Windows and Macintosh, in English.
func (n Name) table() []byte {
	texts := []struct {
		id   uint16
		text string
	}{
		{0, n.Copyright}, {1, n.Family}, {2, n.Style}, {3, n.Family + " " + n.Style + " " + n.Version},
		{4, n.Family + " " + n.Style}, {5, "Version " + n.Version}, {6, n.postscript()},
	}
	var entries, storage []byte
	for _, t := range texts {
		units := utf16.Encode([]rune(t.text))
		for _, v := range []uint16{3, 1, 0x0409, t.id, uint16(2 * len(units)), uint16(len(storage))} {
			entries = big.AppendUint16(entries, v)
		}
		for _, u := range units {
			storage = big.AppendUint16(storage, u)
		}
	}
	head := big.AppendUint16(nil, 0)
	head = big.AppendUint16(head, uint16(len(texts)))
	head = big.AppendUint16(head, uint16(6+len(entries)))
	return slices.Concat(head, entries, storage)
}

func (n Name) postscript() string {
	out := []rune{}
	for _, r := range n.Family + "-" + n.Style {
		if r != ' ' {
			out = append(out, r)
		}
	}
	return string(out)
}

// instructionFlags say that instructions ask for whole sizes and change widths.
const instructionFlags = 1<<2 | 1<<3 | 1<<4

// head sets that there are no instructions, so that letters of every size are exactly as wide as
// their outlines, and that outline offsets are long. Its checksum is filled in last.
func (c *chosen) head(f *font) []byte {
	head := slices.Clone(f.tables["head"])
	big.PutUint32(head[8:], 0)
	big.PutUint16(head[16:], big.Uint16(head[16:])&^instructionFlags)
	big.PutUint16(head[50:], 1)
	return head
}

func (c *chosen) hhea(f *font) []byte {
	hhea := slices.Clone(f.tables["hhea"])
	big.PutUint16(hhea[34:], uint16(c.count))
	return hhea
}

// maxp sets the number of glyphs, and no instructions.
func (c *chosen) maxp(f *font) []byte {
	maxp := slices.Clone(f.tables["maxp"])
	big.PutUint16(maxp[4:], uint16(c.count))
	for at := 14; at < 28; at += 2 { // zones to the size of instructions
		big.PutUint16(maxp[at:], 0)
	}
	big.PutUint16(maxp[14:], 1)
	return maxp
}

// post keeps the fields of the post table that a viewer needs and drops the glyph names.
func post(old []byte) []byte {
	table := slices.Clone(old[:32])
	big.PutUint32(table, 0x00030000)
	return table
}

// cmap maps letters to glyphs, in segments of letters that follow each other with
// glyphs that do.
func (c *chosen) cmap() []byte {
	type segment struct{ start, end, delta uint16 }
	var segs []segment
	for _, l := range c.letters {
		delta := l.glyph - uint16(l.rune)
		if n := len(segs); n > 0 && rune(segs[n-1].end)+1 == l.rune && segs[n-1].delta == delta {
			segs[n-1].end++
			continue
		}
		segs = append(segs, segment{uint16(l.rune), uint16(l.rune), delta})
	}
	segs = append(segs, segment{0xFFFF, 0xFFFF, 1})
	power, log := 1, 0
	for power*2 <= len(segs) {
		power, log = power*2, log+1
	}
	words := []int{4, 16 + 8*len(segs), 0, 2 * len(segs), 2 * power, log, 2 * (len(segs) - power)}
	for _, s := range segs {
		words = append(words, int(s.end))
	}
	words = append(words, 0)
	for _, s := range segs {
		words = append(words, int(s.start))
	}
	for _, s := range segs {
		words = append(words, int(s.delta))
	}
	for range segs {
		words = append(words, 0)
	}
	table := []byte{0, 0, 0, 1, 0, 3, 0, 1, 0, 0, 0, 12}
	for _, w := range words {
		table = big.AppendUint16(table, uint16(w))
	}
	return table
}

// assemble writes the tables as a font file, with its checksums.
func assemble(tables map[string][]byte) []byte {
	names := slices.Sorted(maps.Keys(tables))
	power, log := 1, 0
	for power*2 <= len(names) {
		power, log = power*2, log+1
	}
	file := []byte{0, 1, 0, 0}
	for _, v := range []int{len(names), 16 * power, log, 16 * (len(names) - power)} {
		file = big.AppendUint16(file, uint16(v))
	}
	var body []byte
	base, headAt := 12+16*len(names), 0
	for _, name := range names {
		t := tables[name]
		if name == "head" {
			headAt = base + len(body)
		}
		file = append(file, name...)
		file = big.AppendUint32(file, checksum(t))
		file = big.AppendUint32(file, uint32(base+len(body)))
		file = big.AppendUint32(file, uint32(len(t)))
		body = append(body, t...)
		for len(body)%4 != 0 {
			body = append(body, 0)
		}
	}
	file = append(file, body...)
	big.PutUint32(file[headAt+8:], 0xB1B0AFBA-checksum(file))
	return file
}

// checksum is the sum of a table's words of four bytes, the last filled up with
// zeros.
func checksum(table []byte) uint32 {
	var sum uint32
	for len(table) >= 4 {
		sum += big.Uint32(table)
		table = table[4:]
	}
	if len(table) > 0 {
		last := [4]byte{}
		copy(last[:], table)
		sum += big.Uint32(last[:])
	}
	return sum
}
