package scalelink

import (
	"bytes"
	"errors"
	"io"
	"slices"
	"strings"
	"tenthpoint/internal/message/errortest"
	"testing"
	"testing/iotest"

	"pgregory.net/rapid"
)

// bodies reads all frames of a stream.
func bodies(in io.Reader, p Profile) (got []string, err error) {
	f := newFrames(in, p)
	for {
		body, err := f.next()
		if err != nil {
			return got, err
		}
		got = append(got, string(body))
	}
}

func TestFrames(t *testing.T) {
	columns := Profile{Start: "[", End: "]\r\n", Length: 5}
	lines := Profile{End: "\n", Length: 5}
	tests := []struct {
		name, stream string
		profile      Profile
		want         []string
	}{
		{"two frames", "[12345]\r\n[6]\r\n", columns, []string{"12345", "6"}},
		{"heard from the middle", "345]\r\n[67890]\r\n", columns, []string{"67890"}},
		{"noise before, between, after", "\x00\xff[1]\r\n~~~[2]\r\n!!", columns, []string{"1", "2"}},
		{"end lost", "[123[456]\r\n", columns, []string{"456"}},
		{"end garbled", "[12345]\rX[6]\r\n", columns, []string{"6"}},
		{"too long", "[123456]\r\n[7]\r\n", columns, []string{"7"}},
		{"empty body", "[]\r\n[7]\r\n", columns, []string{"7"}},
		{"start twice", "[[7]\r\n", columns, []string{"7"}},
		{"not ended yet", "[7", columns, nil},
		{"lines, the first may be half", "300\n52300\n52320\n", lines, []string{"52300", "52320"}},
		{"lines, one too long loses itself alone", "\n123456\n7\n", lines, []string{"7"}},
		{"lines, one far too long", "\n" + strings.Repeat("1", 99) + "\n7\n8\n", lines, []string{"7", "8"}},
		{"lines, empty ones", "\n\n\n7\n\n", lines, []string{"7"}},
		{"two-byte start, heard in parts", "<<1]\r\n<[2]\r\n", Profile{Start: "<[", End: "]\r\n", Length: 5}, []string{"2"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for _, in := range []io.Reader{strings.NewReader(tt.stream), iotest.OneByteReader(strings.NewReader(tt.stream))} {
				got, err := bodies(in, tt.profile)
				if !slices.Equal(got, tt.want) || !errors.Is(err, io.EOF) {
					t.Errorf("frames %q, %v; want %q and the end of the stream", got, err, tt.want)
				}
			}
		})
	}
}

// Noise without end is given up, and until then only one body is held.
func TestFramesGiveUpOnNoise(t *testing.T) {
	in := &counting{}
	f := newFrames(in, ExampleColumns())
	_, err := f.next()
	if !errortest.Device("4096").Met(err) {
		t.Errorf("error %v, want the line given up after 4096 bytes", err)
	}
	if in.read > 2*mostJunk {
		t.Errorf("%d bytes were read before giving up", in.read)
	}
	if cap(f.buf) > longestBody {
		t.Errorf("%d bytes are held, more than any frame", cap(f.buf))
	}
}

// counting is a line at the wrong speed: bytes for ever, no frame.
type counting struct{ read int }

func (c *counting) Read(p []byte) (int, error) {
	n := copy(p, bytes.Repeat([]byte{0xf8, '['}, 50))
	c.read += n
	return n, nil
}

// With any noise between frames, exactly the frames sent are found.
func TestFramesSurviveNoise(t *testing.T) {
	p := ExampleColumns()
	rapid.Check(t, func(t *rapid.T) {
		var stream strings.Builder
		var want []string
		for range rapid.IntRange(0, 6).Draw(t, "frames") {
			stream.WriteString(rapid.StringMatching(`[^\[]{0,30}`).Draw(t, "noise"))
			stream.WriteString(rapid.SampledFrom([]string{"", "[", "[+  52", "[+   52300lb G S]\r"}).Draw(t, "cut"))
			body := rapid.StringMatching(`[ -Z^-~]{1,15}`).Draw(t, "body")
			stream.WriteString("[" + body + "]\r\n")
			want = append(want, body)
		}
		got, err := bodies(strings.NewReader(stream.String()), p)
		if !slices.Equal(got, want) || !errors.Is(err, io.EOF) {
			t.Fatalf("stream %q gave %q, %v; want %q", stream.String(), got, err, want)
		}
	})
}

func FuzzFrames(f *testing.F) {
	f.Add([]byte("[+   52300lb G S]\r\n"), "[", "]\r\n", 15)
	f.Add([]byte("300\n52300\n"), "", "\n", 5)
	f.Add([]byte("aabaab"), "aa", "b", 1)
	f.Fuzz(func(t *testing.T, stream []byte, start, end string, length int) {
		if end == "" || length < 1 || length > longestBody || len(start)+len(end) > 16 {
			return
		}
		got, err := bodies(bytes.NewReader(stream), Profile{Start: start, End: end, Length: length})
		if err == nil {
			t.Fatal("a stream with an end gave no error")
		}
		total := 0
		for _, body := range got {
			total += len(body)
			if len(body) == 0 || len(body) > length || !bytes.Contains(stream, []byte(start+body+end)) {
				t.Fatalf("%q is not a frame of %q", body, stream)
			}
		}
		if total > len(stream) {
			t.Fatalf("%d bytes of frames came out of %d", total, len(stream))
		}
	})
}
