package slipcode

import (
	"strings"

	"tenthpoint/internal/message"
)

// base45 is the alphabet of RFC 9285, which is that of the QR code's alphanumeric mode.
const base45 = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:"

// encode45 writes two bytes as three letters and a last one as two.
func encode45(raw []byte) string {
	var out strings.Builder
	for ; len(raw) > 1; raw = raw[2:] {
		n := int(raw[0])<<8 | int(raw[1])
		out.Write([]byte{base45[n%45], base45[n/45%45], base45[n/(45*45)]})
	}
	if len(raw) == 1 {
		out.Write([]byte{base45[raw[0]%45], base45[raw[0]/45]})
	}
	return out.String()
}

// decode45 reads what encode45 wrote.
func decode45(text string) ([]byte, error) {
	if len(text)%3 == 1 {
		return nil, errTorn()
	}
	out := make([]byte, 0, len(text)*2/3)
	for len(text) > 0 {
		group := text[:min(3, len(text))]
		text = text[len(group):]
		n, scale := 0, 1
		for _, letter := range []byte(group) {
			digit := strings.IndexByte(base45, letter)
			if digit < 0 {
				return nil, errTorn()
			}
			n, scale = n+digit*scale, scale*45
		}
		if len(group) == 2 {
			if n > 0xFF {
				return nil, errTorn()
			}
			out = append(out, byte(n))
			continue
		}
		if n > 0xFFFF {
			return nil, errTorn()
		}
		out = append(out, byte(n>>8), byte(n))
	}
	return out, nil
}

// errTorn is a code that came through in part or with wrong letters.
func errTorn() error {
	return message.Invalid.Errorf("this code is torn or was misread: a part of it is missing or wrong. Take the picture again, straight and in good light, or type the figures from the slip")
}
