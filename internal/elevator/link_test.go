package elevator

import (
	"errors"
	"tenthpoint/internal/message"
	"testing"
)

// A link says by what wire the scale is reached, and how a serial line is set.
func TestReadWire(t *testing.T) {
	usual := Link{Port: "/dev/ttyUSB0", Baud: 9600, DataBits: 8, Parity: "none", StopBits: 1}
	for link, want := range map[string]Link{
		"tcp://192.0.2.10:4001":                       {Host: "192.0.2.10:4001"},
		"serial:///dev/ttyUSB0":                       usual,
		"serial:///dev/ttyUSB0?baud=9600&parity=none": usual,
		"serial://COM3?baud=1200&data=7&parity=even":  {Port: "COM3", Baud: 1200, DataBits: 7, Parity: "even", StopBits: 1},
		"serial://COM3?parity=odd&stop=2":             {Port: "COM3", Baud: 9600, DataBits: 8, Parity: "odd", StopBits: 2},
	} {
		if got, err := ParseLink(link); err != nil || got != want {
			t.Errorf("%s is %+v, %v; want %+v", link, got, err, want)
		}
	}
}

// Everything wrong with a link is said at once.
func TestWrongWires(t *testing.T) {
	for link, faults := range map[string]int{
		"192.0.2.10:4001":        1,
		"http://192.0.2.10":      1,
		"":                       1,
		"tcp://192.0.2.10":       1,
		"tcp://:4001":            1,
		"tcp://192.0.2.10:99999": 1,
		"serial://":              1,
		"serial:///dev/ttyUSB0?baud=fast&data=9&parity=mark&stop=3&flow=x": 5,
	} {
		if _, err := ParseLink(link); !errors.Is(err, message.Invalid) || len(message.Lines(err)) != faults {
			t.Errorf("%q: %v; want %d faults", link, err, faults)
		}
	}
}
