package scalelink

import (
	"bufio"
	"bytes"
	"io"

	"tenthpoint/internal/message"
)

// mostJunk is the number of consecutive bytes that may fail to make a frame before the connection
// is given up. At common speeds it is a few seconds of noise.
const mostJunk = 4096

// frames splits a stream of bytes into the bodies of frames. It holds at most one body in memory,
// whatever is received.
type frames struct {
	in         *bufio.Reader
	start, end []byte
	longest    int // bytes of a body

	inside bool   // buf holds the start of a body; otherwise it is looking for one
	buf    []byte // bytes not yet a frame
	junk   int    // bytes that made no frame since the last one
}

// newFrames begins to scan for a frame. Without start bytes the stream may begin in the middle of a
// line, and "2300" cut from "52300" is a valid number, so everything before the first end is
// discarded.
func newFrames(in io.Reader, p Profile) *frames {
	return &frames{in: bufio.NewReader(in), start: []byte(p.Start), end: []byte(p.End), longest: p.Length}
}

// next returns the next body, valid until next is called again. The error is the stream's, or says
// that only noise is coming.
func (f *frames) next() ([]byte, error) {
	for {
		b, err := f.in.ReadByte()
		if err != nil {
			return nil, err
		}
		f.junk++
		if f.junk > mostJunk {
			return nil, message.Device.Errorf("%d bytes came and none of them made a frame; check the speed, the parity and the profile", mostJunk)
		}
		if body := f.take(b); len(body) > 0 {
			f.junk = 0
			return body, nil
		}
	}
}

// take adds one byte and returns a body when that byte completes one.
func (f *frames) take(b byte) []byte {
	f.buf = append(f.buf, b)
	if !f.inside {
		f.seek()
		return nil
	}
	switch {
	case bytes.HasSuffix(f.buf, f.end):
		body := f.buf[:len(f.buf)-len(f.end)]
		f.restart(len(f.start) == 0)
		return body
	case len(f.start) > 0 && bytes.HasSuffix(f.buf, f.start):
		f.restart(true) // the end of the frame before was lost
	case len(f.buf) >= f.longest+len(f.end):
		f.restart(false)
	}
	return nil
}

// seek looks for where a body begins: after the start bytes or, where there
// are none, after the end of the frame before.
func (f *frames) seek() {
	mark := f.start
	if len(mark) == 0 {
		mark = f.end
	}
	if bytes.HasSuffix(f.buf, mark) {
		f.restart(true)
	} else if len(f.buf) > len(mark) {
		f.buf = append(f.buf[:0], f.buf[1:]...)
	}
}

func (f *frames) restart(inside bool) {
	f.inside, f.buf = inside, f.buf[:0]
}
