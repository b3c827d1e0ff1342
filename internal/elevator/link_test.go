package elevator

import (
	"strings"
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
	for link, wants := range map[string][]string{
		"192.0.2.10:4001":        {"begins with tcp://"},
		"http://192.0.2.10":      {"begins with tcp://"},
		"":                       {"begins with tcp://"},
		"tcp://192.0.2.10":       {"its port"},
		"tcp://:4001":            {"address"},
		"tcp://192.0.2.10:99999": {"1 to 65535"},
		"serial://":              {"names no port"},
		"serial:///dev/ttyUSB0?baud=fast&data=9&parity=mark&stop=3&flow=x": {
			"300 and 230400", "data=7", "parity=none", "stop=1", `says "flow"`,
		},
	} {
		_, err := ParseLink(link)
		if err == nil {
			t.Errorf("%q is taken", link)
			continue
		}
		for _, want := range wants {
			if !strings.Contains(err.Error(), want) {
				t.Errorf("%q: %q does not say %q", link, err, want)
			}
		}
	}
}
