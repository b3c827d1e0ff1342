package subset

import "fmt"

// The flags of a part of a glyph that is made of others.
const (
	wordArguments   = 0x0001
	hasScale        = 0x0008
	moreParts       = 0x0020
	hasTwoScales    = 0x0040
	hasMatrix       = 0x0080
	hasInstructions = 0x0100
)

// plainOutline is an outline without the instructions for coarse screens, its
// parts numbered by take.
func plainOutline(outline []byte, take func(uint16) uint16) ([]byte, error) {
	if len(outline) == 0 {
		return nil, nil
	}
	var plain []byte
	var err error
	if contours := int16(big.Uint16(outline)); contours >= 0 {
		plain, err = simple(outline, int(contours))
	} else {
		plain, err = composite(outline, take)
	}
	for len(plain)%4 != 0 {
		plain = append(plain, 0)
	}
	return plain, err
}

// simple drops the instructions between the ends of the contours and the points.
func simple(outline []byte, contours int) ([]byte, error) {
	at := 10 + 2*contours
	if at+2 > len(outline) {
		return nil, fmt.Errorf("an outline of %d contours ends after %d bytes", contours, len(outline))
	}
	length := int(big.Uint16(outline[at:]))
	plain := append([]byte{}, outline[:at]...)
	plain = append(plain, 0, 0)
	return append(plain, outline[at+2+length:]...), nil
}

// composite numbers the parts again.
func composite(outline []byte, take func(uint16) uint16) ([]byte, error) {
	plain := append([]byte{}, outline[:10]...)
	for at := 10; ; {
		if at+4 > len(outline) {
			return nil, fmt.Errorf("a glyph made of others ends within a part")
		}
		flags := big.Uint16(outline[at:])
		length := partLength(flags)
		plain = big.AppendUint16(plain, flags&^hasInstructions)
		plain = big.AppendUint16(plain, take(big.Uint16(outline[at+2:])))
		plain = append(plain, outline[at+4:at+length]...)
		if at += length; flags&moreParts == 0 {
			return plain, nil
		}
	}
}

func partLength(flags uint16) int {
	length := 6
	if flags&wordArguments != 0 {
		length += 2
	}
	switch {
	case flags&hasScale != 0:
		length += 2
	case flags&hasTwoScales != 0:
		length += 4
	case flags&hasMatrix != 0:
		length += 8
	}
	return length
}
