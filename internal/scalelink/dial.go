package scalelink

import (
	"context"
	"io"
	"net"
	"time"

	"tenthpoint/internal/message"
)

// Dialer opens connections to an indicator. A read must fail when nothing arrives for the dialer's
// silence timeout, and closing the connection must end a blocked read. String names the address,
// for messages.
type Dialer interface {
	Dial(ctx context.Context) (io.ReadWriteCloser, error)
	String() string
}

// The silences and waits used where a setting is zero.
const (
	usualSilence  = 5 * time.Second
	usualDialWait = 5 * time.Second
)

// TCP reaches an indicator, or a serial port server in front of one, by
// network. Address is "host:port".
type TCP struct {
	Address string
	Silence time.Duration // longest quiet before the line counts as lost; zero means 5 s
}

// Dial connects, waiting at most 5 s.
func (t TCP) Dial(ctx context.Context) (io.ReadWriteCloser, error) {
	conn, err := (&net.Dialer{Timeout: usualDialWait}).DialContext(ctx, "tcp", t.Address)
	if err != nil {
		return nil, err
	}
	return quietConn{conn, orUsual(t.Silence)}, nil
}

func (t TCP) String() string { return "TCP " + t.Address }

// Check faults an address without a host or a port.
func (t TCP) Check() error {
	host, port, err := net.SplitHostPort(t.Address)
	if err != nil || host == "" || port == "" {
		return message.Device.Errorf("The scale's network address %q is not a host and a port. Write it like 192.0.2.10:4001.", t.Address)
	}
	return nil
}

// quietConn fails a read that nothing answers.
type quietConn struct {
	net.Conn
	silence time.Duration
}

func (c quietConn) Read(p []byte) (int, error) {
	if err := c.SetReadDeadline(time.Now().Add(c.silence)); err != nil {
		return 0, err
	}
	return c.Conn.Read(p)
}

func orUsual(silence time.Duration) time.Duration {
	if silence <= 0 {
		return usualSilence
	}
	return silence
}
