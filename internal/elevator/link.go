package elevator

import (
	"errors"
	"strconv"
	"strings"

	"tenthpoint/internal/message"
)

// Link is the connection to a weighing indicator: by the network, or by a serial line with the
// indicator's own settings.
type Link struct {
	Host string // "192.0.2.10:4001"; empty for a serial line

	Port     string // "/dev/ttyUSB0", "COM3"
	Baud     int    // bits per second, 300 to 230400
	DataBits int    // 7 or 8
	Parity   string // "none", "odd" or "even"
	StopBits int    // 1 or 2
}

// ParseLink reads the link of a scale: "tcp://192.0.2.10:4001" or
// "serial:///dev/ttyUSB0?baud=1200&data=7&parity=even&stop=1". The defaults of a serial line are
// 9600 bits per second, 8 data bits, no parity and 1 stop bit. The error has everything that is
// wrong with it.
func ParseLink(link string) (Link, error) {
	kind, rest, _ := strings.Cut(link, "://")
	switch kind {
	case "tcp":
		at := strings.LastIndex(rest, ":")
		if at < 1 || !isBetween(rest[at+1:], 1, 65535) {
			return Link{}, message.Invalid.Errorf("the link %q needs the indicator's address and its port, 1 to 65535: type it as tcp://host:port", link)
		}
		return Link{Host: rest}, nil
	case "serial":
		return readSerial(link, rest)
	}
	return Link{}, message.Invalid.Errorf("%q is no link: one begins with tcp:// or serial://. Leave it empty to type weights", link)
}

// SimulatedLink is the link of a scale that is only played: the invented
// elevator's.
const SimulatedLink = "simulator:"

// CheckLink returns what is wrong with the scale's link. An empty one is valid: weights are then
// typed.
func (s Scale) CheckLink() error {
	if s.Link == "" || s.Link == SimulatedLink {
		return nil
	}
	_, err := ParseLink(s.Link)
	return err
}

func readSerial(link, rest string) (Link, error) {
	port, told, _ := strings.Cut(rest, "?")
	w := Link{Port: port, Baud: 9600, DataBits: 8, Parity: "none", StopBits: 1}
	var wrong []error
	say := func(format string, args ...any) { wrong = append(wrong, message.Invalid.Errorf(format, args...)) }
	for setting := range strings.SplitSeq(told, "&") {
		key, value, _ := strings.Cut(setting, "=")
		number, _ := strconv.Atoi(value) // an invalid number is zero, which no setting allows
		switch key {
		case "baud":
			w.Baud = number
		case "data":
			w.DataBits = number
		case "stop":
			w.StopBits = number
		case "parity":
			w.Parity = value
		case "":
		default:
			say("the link %q says %q, which no serial line has: it may say baud, data, parity and stop", link, key)
		}
	}
	if w.Port == "" {
		say("the link %q names no port: type it as serial:///dev/name", link)
	}
	if w.Baud < 300 || w.Baud > 230400 {
		say("the link %q has no speed of an indicator: it lies between 300 and 230400, as in serial:///dev/name?baud=9600", link)
	}
	if w.DataBits != 7 && w.DataBits != 8 {
		say("the link %q has no data bits of an indicator: they are data=7 or data=8", link)
	}
	if w.Parity != "none" && w.Parity != "odd" && w.Parity != "even" {
		say("the link %q has no parity of an indicator: it is parity=none, odd or even", link)
	}
	if w.StopBits != 1 && w.StopBits != 2 {
		say("the link %q has no stop bits of an indicator: they are stop=1 or stop=2", link)
	}
	return w, errors.Join(wrong...)
}

func isBetween(text string, low, high int) bool {
	n, err := strconv.Atoi(text)
	return err == nil && n >= low && n <= high
}
