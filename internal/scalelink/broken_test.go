package scalelink

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"testing"

	"tenthpoint/internal/quantity"
)

var (
	brokenFrames = flag.Int("broken", 35_000, "how many broken frames TestABrokenFrameIsNeverAWeight reads for each profile")
	brokenSeed   = flag.Uint64("broken-seed", 14, "what is broken is drawn from")
)

// breaks are what a wire does to a frame.
var breaks = []func(r *rand.Rand, frame []byte) []byte{
	func(r *rand.Rand, f []byte) []byte { f[r.IntN(len(f))] ^= 1 << r.IntN(8); return f },
	func(r *rand.Rand, f []byte) []byte { f[r.IntN(len(f))] = byte(r.IntN(256)); return f },
	func(r *rand.Rand, f []byte) []byte { i := r.IntN(len(f)); return append(f[:i:i], f[i+1:]...) },
	func(r *rand.Rand, f []byte) []byte { i := r.IntN(len(f)); return append(f[:i+1:i+1], f[i:]...) },
}

// stream is an endless line of whole frames of a truck at rest, one in ten of them
// broken. It ends after a number of broken ones.
type stream struct {
	draw   *rand.Rand
	frame  func(weight int) []byte
	weight int
	left   int
	n      int
	buf    []byte
}

func (s *stream) Read(into []byte) (int, error) {
	for len(s.buf) < len(into) && s.left > 0 {
		frame := s.frame(s.weight)
		if s.n++; s.n%10 == 0 {
			frame = breaks[s.draw.IntN(len(breaks))](s.draw, frame)
			s.left--
		}
		s.buf = append(s.buf, frame...)
	}
	if len(s.buf) == 0 {
		return 0, fmt.Errorf("the end")
	}
	n := copy(into, s.buf)
	s.buf = append(s.buf[:0], s.buf[n:]...)
	return n, nil
}

// One broken frame among nine whole ones never puts another weight on a ticket,
// whether the indicator tells motion or equal readings have to.
func TestABrokenFrameIsNeverAWeight(t *testing.T) {
	scale := Scale{Name: "west", Capacity: quantity.Int(120000, quantity.Lb), Division: quantity.Int(20, quantity.Lb)}
	for _, c := range []struct {
		name    string
		profile Profile
		rule    Steady
		frame   func(weight int) []byte
	}{
		{"columns", ExampleColumns(), Steady{}, func(w int) []byte { return fmt.Appendf(nil, "[+%8dlb G S]\r\n", w) }},
		{"columns, three equal", ExampleColumns(), Steady{Divisions: 1, Readings: 3}, func(w int) []byte { return fmt.Appendf(nil, "[+%8dlb G S]\r\n", w) }},
		{"words", patternProfile(), Steady{}, func(w int) []byte { return fmt.Appendf(nil, "settled %d lb\n", w) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			format, err := NewFormat(c.profile)
			if err != nil {
				t.Fatal(err)
			}
			line := &stream{draw: rand.New(rand.NewPCG(*brokenSeed, 7)), frame: c.frame, weight: 76820, left: *brokenFrames}
			in, judge := newFrames(line, c.profile), newRest(c.rule, scale.Division)
			taken, wrong := 0, 0
			for {
				body, err := in.next()
				if err != nil {
					break
				}
				reading, err := format.Parse(body)
				if err != nil {
					judge.forget()
					continue
				}
				if reading = judge.judge(reading); scale.Accept(reading) != nil {
					continue
				}
				if taken++; !reading.Weight.Equal(quantity.Int(76820, quantity.Lb)) {
					wrong++
					t.Errorf("%q was taken as %s", reading.Raw, reading.Weight)
				}
			}
			if taken < 6**brokenFrames {
				t.Errorf("%d of about %d whole frames were taken", taken, 9**brokenFrames)
			}
			t.Logf("%d broken frames, %d weights taken, %d of them wrong", *brokenFrames, taken, wrong)
		})
	}
}
