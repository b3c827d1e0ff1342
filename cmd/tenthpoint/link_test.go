package main

import (
	"testing"

	"tenthpoint/internal/scalelink"
)

// A link says by what wire the scale is reached, and a serial one how fast.
func TestLinkOfAScale(t *testing.T) {
	serial := scalelink.Serial{Port: "/dev/ttyUSB0", Baud: 9600, DataBits: 8, Parity: "none", StopBits: 1}
	slow := serial
	slow.Port, slow.Baud = "COM3", 1200
	for link, want := range map[string]scalelink.Dialer{
		"tcp://192.0.2.10:4001": scalelink.TCP{Address: "192.0.2.10:4001"},
		"serial:///dev/ttyUSB0": serial, "serial://COM3?baud=1200": slow,
	} {
		if got, err := dialerOf(link); err != nil || got != want {
			t.Errorf("%s is %#v, %v", link, got, err)
		}
	}
	for _, link := range []string{"192.0.2.10", "http://192.0.2.10", "serial:///dev/ttyUSB0?baud=fast"} {
		if got, err := dialerOf(link); err == nil {
			t.Errorf("%s is %#v", link, got)
		}
	}
}
