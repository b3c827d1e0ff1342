package scalelink

import (
	"fmt"
	"io"
	"os"
	"syscall"
	"tenthpoint/internal/message/errortest"
	"testing"
	"time"
	"unsafe"
)

// terminalPair opens a pseudo terminal: what is written to the far end comes
// out of the serial port called name. It is the only serial port every Linux
// machine has.
func terminalPair(t *testing.T) (far *os.File, name string) {
	t.Helper()
	far, err := os.OpenFile("/dev/ptmx", os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		t.Fatalf("this machine has no pseudo terminals: %v", err)
	}
	t.Cleanup(func() { far.Close() })
	var unlocked, number int32
	for request, value := range map[uintptr]*int32{syscall.TIOCSPTLCK: &unlocked, syscall.TIOCGPTN: &number} {
		if _, _, errno := syscall.Syscall(syscall.SYS_IOCTL, far.Fd(), request, uintptr(unsafe.Pointer(value))); errno != 0 {
			t.Fatalf("this machine's pseudo terminals cannot be opened: %v", errno)
		}
	}
	return far, fmt.Sprintf("/dev/pts/%d", number)
}

func serialLine(t *testing.T, name string, silence time.Duration, clock Clock) *Line {
	t.Helper()
	port := Serial{Port: name, Baud: 9600, DataBits: 8, Parity: "none", StopBits: 1, Silence: silence}
	return openLine(t, port, settings(clock))
}

func TestAFrameOverASerialPort(t *testing.T) {
	far, name := terminalPair(t)
	line := serialLine(t, name, time.Hour, newStepClock())
	waitConnected(line)
	say(t, line, far, "00lb G S]\r\n[+   52300lb G S]\r\n")
	say(t, line, far, "[+   52300lb G S]\r\n")
	shows(t, line, "52300", Stable)
	// Closing must end the read that waits, or this test would not end.
	if err := line.Close(); err != nil {
		t.Error(err)
	}
}

func TestAskingOverASerialPort(t *testing.T) {
	far, name := terminalPair(t)
	s := settings(newStepClock())
	s.Profile.Ask = "W\r"
	openLine(t, Serial{Port: name, Baud: 1200, DataBits: 7, Parity: "even", StopBits: 2}, s)
	asked := make([]byte, 2)
	if _, err := io.ReadFull(far, asked); err != nil || string(asked) != "W\r" {
		t.Errorf("the indicator was asked %q, %v; want W and a return", asked, err)
	}
}

func TestSilenceOnASerialPortIsALostLine(t *testing.T) {
	_, name := terminalPair(t)
	clock := newStepClock()
	line := serialLine(t, name, time.Millisecond, clock)
	<-clock.asked
	refuses(t, line, errortest.Device())
}
