package installer

import (
	"bytes"
	"encoding/binary"
)

// iconOf is a Windows icon of PNG pictures: a head, an entry of 16 bytes for each picture, then the
// pictures as they are. A side of 256 pixels is written as 0.
func iconOf(sizes []int, pictures [][]byte) []byte {
	var b bytes.Buffer
	write := func(values ...any) {
		for _, v := range values {
			_ = binary.Write(&b, binary.LittleEndian, v) // to memory, of fixed sizes: it cannot fail
		}
	}
	write(uint16(0), uint16(1), uint16(len(pictures)))
	at := 6 + 16*len(pictures)
	for i, picture := range pictures {
		side := uint8(sizes[i] % 256)
		write(side, side, uint8(0), uint8(0), uint16(1), uint16(32), uint32(len(picture)), uint32(at))
		at += len(picture)
	}
	for _, picture := range pictures {
		b.Write(picture)
	}
	return b.Bytes()
}
