package errortest

import (
	"errors"
	"io"
	"testing"

	"tenthpoint/internal/message"
)

func TestMet(t *testing.T) {
	short := message.Device.Errorf("it is %d bytes long, not %d", 14, 15)
	frame := message.Errorf("frame %q: %w", "52300", short)
	bin := message.NotFound.Errorf("there is no bin %v", message.Own("B9"))
	both := errors.Join(frame, bin)
	for _, c := range []struct {
		want Want
		err  error
		met  bool
	}{
		{Want{}, nil, true},
		{Want{}, short, false},
		{Device(), nil, false},
		{Device("14", "15"), short, true},
		{Device("14", "16"), short, false},
		{Invalid("14"), short, false},
		{Device("52300", "15"), frame, true},
		{NotFound("B9"), both, true},
		{NotFound("15"), both, false}, // the other line gives it
		{Device("B9"), both, false},
		{Device(), io.EOF, false},
	} {
		if got := c.want.Met(c.err); got != c.met {
			t.Errorf("%v is met by %v: %v", c.want, c.err, got)
		}
	}
}
