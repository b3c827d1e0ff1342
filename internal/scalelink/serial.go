package scalelink

import (
	"context"
	"errors"
	"io"
	"os"
	"slices"
	"time"

	"go.bug.st/serial"

	"tenthpoint/internal/message"
)

// Serial reaches an indicator by a serial port. Baud, DataBits, Parity and
// StopBits must be those set in the indicator.
type Serial struct {
	Port     string // "/dev/ttyUSB0", "COM3"
	Baud     int    // bits per second
	DataBits int    // 7 or 8
	Parity   string // "none", "odd" or "even"
	StopBits int    // 1 or 2
	Silence  time.Duration
}

var parities = map[string]serial.Parity{"none": serial.NoParity, "odd": serial.OddParity, "even": serial.EvenParity}

var stopBits = map[int]serial.StopBits{1: serial.OneStopBit, 2: serial.TwoStopBits}

// Check returns every fault of the port's settings at once, joined.
func (s Serial) Check() error {
	var faults []error
	say := func(format string, a ...any) { faults = append(faults, message.Device.Errorf(format, a...)) }
	if s.Port == "" {
		say("No serial port is named. Choose one, such as /dev/ttyUSB0 or COM3.")
	}
	if s.Baud < 300 || s.Baud > 230400 {
		say("Serial port %s: %d is no speed of an indicator. Copy it from the indicator's set-up; 9600 is common.", s.Port, s.Baud)
	}
	if !slices.Contains([]int{7, 8}, s.DataBits) {
		say("Serial port %s: %d data bits; it must be 7 or 8.", s.Port, s.DataBits)
	}
	if _, ok := parities[s.Parity]; !ok {
		say("Serial port %s: parity %q; it must be none, odd or even.", s.Port, s.Parity)
	}
	if _, ok := stopBits[s.StopBits]; !ok {
		say("Serial port %s: %d stop bits; it must be 1 or 2.", s.Port, s.StopBits)
	}
	return errors.Join(faults...)
}

// Dial opens the port.
func (s Serial) Dial(context.Context) (io.ReadWriteCloser, error) {
	port, err := serial.Open(s.Port, &serial.Mode{
		BaudRate: s.Baud,
		DataBits: s.DataBits,
		Parity:   parities[s.Parity],
		StopBits: stopBits[s.StopBits],
	})
	if err != nil {
		return nil, serialFault(err)
	}
	if err := port.SetReadTimeout(orUsual(s.Silence)); err != nil {
		return nil, errors.Join(err, port.Close())
	}
	return quietPort{port}, nil
}

func (s Serial) String() string {
	return message.New("serial port %v at %d baud", s.Port, s.Baud).String()
}

// serialFault adds the remedy to the two failures people meet most.
func serialFault(err error) error {
	var fault *serial.PortError
	if !errors.As(err, &fault) {
		return err
	}
	switch fault.Code() {
	case serial.PermissionDenied:
		return message.Errorf("%w: this person may not use the port; on Linux add them to the group that owns it, often dialout", err)
	case serial.PortBusy:
		return message.Errorf("%w: another program is using the port; close that program", err)
	}
	return err
}

// quietPort turns the port's empty answer after its time-out into an error.
type quietPort struct{ serial.Port }

func (p quietPort) Read(b []byte) (int, error) {
	n, err := p.Port.Read(b)
	if n == 0 && err == nil && len(b) > 0 {
		return 0, os.ErrDeadlineExceeded
	}
	return n, err
}
