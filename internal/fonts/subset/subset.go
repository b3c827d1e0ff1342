// Package subset reduces a TrueType font to the letters that are printed, without hinting, and
// renames it: the licences of free fonts require that of a changed font.
//
// It needs nothing but the standard library, so that the chore that makes the
// program's fonts (cmd/task) runs before anything is downloaded.
package subset

import (
	"encoding/binary"
	"fmt"
	"slices"
)

// Of returns the font with only the given letters, renamed. The same font and letters give the same
// bytes. Letters that the font lacks are left out.
func Of(ttf []byte, letters []rune, name Name) ([]byte, error) {
	f, err := parse(ttf)
	if err != nil {
		return nil, err
	}
	chosen, err := f.choose(letters)
	if err != nil {
		return nil, err
	}
	return assemble(map[string][]byte{
		"OS/2": f.tables["OS/2"],
		"cmap": chosen.cmap(),
		"glyf": chosen.glyf,
		"head": chosen.head(f),
		"hhea": chosen.hhea(f),
		"hmtx": chosen.hmtx,
		"loca": chosen.loca,
		"maxp": chosen.maxp(f),
		"name": name.table(),
		"post": post(f.tables["post"]),
	}), nil
}

// font is a TrueType font by its tables.
type font struct {
	tables   map[string][]byte
	glyphs   map[rune]uint16
	longLoca bool
	metrics  int // entries of hmtx that have an advance of their own
}

var big = binary.BigEndian

func parse(ttf []byte) (*font, error) {
	if len(ttf) < 12 {
		return nil, fmt.Errorf("this is no TrueType font: it has %d bytes", len(ttf))
	}
	f := &font{tables: map[string][]byte{}}
	for i := range int(big.Uint16(ttf[4:])) {
		entry := ttf[12+16*i:]
		from, length := big.Uint32(entry[8:]), big.Uint32(entry[12:])
		if uint64(from)+uint64(length) > uint64(len(ttf)) {
			return nil, fmt.Errorf("table %q of the font lies beyond its end", entry[:4])
		}
		f.tables[string(entry[:4])] = ttf[from : from+length]
	}
	for _, need := range []string{"OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "post"} {
		if f.tables[need] == nil {
			return nil, fmt.Errorf("the font has no table %q", need)
		}
	}
	f.longLoca = big.Uint16(f.tables["head"][50:]) == 1
	f.metrics = int(big.Uint16(f.tables["hhea"][34:]))
	return f, f.readGlyphs()
}

// readGlyphs reads the letters of the basic plane, from a table of format 4.
func (f *font) readGlyphs() error {
	cmap := f.tables["cmap"]
	for i := range int(big.Uint16(cmap[2:])) {
		entry := cmap[4+8*i:]
		table := cmap[big.Uint32(entry[4:]):]
		if big.Uint16(entry) == 3 && big.Uint16(entry[2:]) == 1 && big.Uint16(table) == 4 {
			f.glyphs = segments(table)
			return nil
		}
	}
	return fmt.Errorf("the font has no table of letters that can be read (format 4)")
}

func segments(table []byte) map[rune]uint16 {
	glyphs := map[rune]uint16{}
	n := int(big.Uint16(table[6:])) / 2
	ends, starts := table[14:], table[16+2*n:]
	deltas, ranges := table[16+4*n:], table[16+6*n:]
	for s := range n {
		start, end := big.Uint16(starts[2*s:]), big.Uint16(ends[2*s:])
		delta, offset := big.Uint16(deltas[2*s:]), big.Uint16(ranges[2*s:])
		for r := uint32(start); r <= uint32(end) && r != 0xFFFF; r++ {
			glyph := uint16(r) + delta
			if offset != 0 {
				if glyph = big.Uint16(ranges[2*s+int(offset)+2*int(r-uint32(start)):]); glyph != 0 {
					glyph += delta
				}
			}
			if glyph != 0 {
				glyphs[rune(r)] = glyph
			}
		}
	}
	return glyphs
}

// outline is the description of one glyph; empty for a blank.
func (f *font) outline(glyph uint16) []byte {
	loca := f.tables["loca"]
	if f.longLoca {
		return f.tables["glyf"][big.Uint32(loca[4*int(glyph):]):big.Uint32(loca[4*int(glyph)+4:])]
	}
	return f.tables["glyf"][2*uint32(big.Uint16(loca[2*int(glyph):])) : 2*uint32(big.Uint16(loca[2*int(glyph)+2:]))]
}

// metric returns the advance width and left bearing of a glyph.
func (f *font) metric(glyph uint16) (advance, bearing []byte) {
	hmtx, at := f.tables["hmtx"], int(glyph)
	if at < f.metrics {
		return hmtx[4*at : 4*at+2], hmtx[4*at+2 : 4*at+4]
	}
	last := 4 * (f.metrics - 1)
	bare := 4*f.metrics + 2*(at-f.metrics)
	return hmtx[last : last+2], hmtx[bare : bare+2]
}

// letter is a rune with its glyph in the new font.
type letter struct {
	rune  rune
	glyph uint16
}

// chosen are the glyphs that stay, numbered again.
type chosen struct {
	letters          []letter
	count            int
	glyf, loca, hmtx []byte
}

// choose takes the glyphs of letters and the parts that accented ones are made of.
func (f *font) choose(letters []rune) (*chosen, error) {
	c := &chosen{}
	old := []uint16{0} // the missing-glyph sign is always first
	number := map[uint16]uint16{0: 0}
	take := func(glyph uint16) uint16 {
		at, known := number[glyph]
		if !known {
			at = uint16(len(old))
			number[glyph], old = at, append(old, glyph)
		}
		return at
	}
	letters = slices.Clone(letters)
	slices.Sort(letters)
	for _, r := range slices.Compact(letters) {
		if glyph, has := f.glyphs[r]; has {
			c.letters = append(c.letters, letter{r, take(glyph)})
		}
	}
	for at := 0; at < len(old); at++ {
		outline, err := plainOutline(f.outline(old[at]), take)
		if err != nil {
			return nil, err
		}
		c.loca = big.AppendUint32(c.loca, uint32(len(c.glyf)))
		c.glyf = append(c.glyf, outline...)
		advance, bearing := f.metric(old[at])
		c.hmtx = append(append(c.hmtx, advance...), bearing...)
	}
	c.loca = big.AppendUint32(c.loca, uint32(len(c.glyf)))
	c.count = len(old)
	return c, nil
}
