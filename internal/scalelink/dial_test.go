package scalelink

import (
	"net"
	"tenthpoint/internal/message/errortest"
	"testing"
	"time"
)

// A listener that accepts by the system's backlog and never says a word.
func TestSilenceOnTCPIsALostLine(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer listener.Close()
	clock := newStepClock()
	line := openLine(t, TCP{Address: listener.Addr().String(), Silence: time.Nanosecond}, settings(clock))
	<-clock.asked
	refuses(t, line, errortest.Device())
	refuses(t, line, errortest.Device("1s"))
}

func TestNobodyAnswersOnTCP(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	address := listener.Addr().String()
	listener.Close()
	clock := newStepClock()
	line := openLine(t, TCP{Address: address}, settings(clock))
	<-clock.asked
	refuses(t, line, errortest.Device("West scale", "TCP "+address))
}

func TestTCPCheck(t *testing.T) {
	for address, good := range map[string]bool{
		"192.0.2.10:4001": true, "scale.example:4001": true, "[2001:db8::1]:4001": true,
		"192.0.2.10": false, ":4001": false, "192.0.2.10:": false, "": false,
	} {
		if err := (TCP{Address: address}).Check(); (err == nil) != good {
			t.Errorf("%q: Check() = %v, want good %v", address, err, good)
		}
	}
}

func TestSerialCheckTellsAllAtOnce(t *testing.T) {
	good := Serial{Port: "COM3", Baud: 9600, DataBits: 7, Parity: "even", StopBits: 1}
	if err := good.Check(); err != nil {
		t.Error(err)
	}
	err := Serial{Port: "", Baud: 96, DataBits: 9, Parity: "mark", StopBits: 3}.Check()
	for _, want := range []errortest.Want{errortest.Device(), errortest.Device("96"), errortest.Device("9"), errortest.Device("mark"), errortest.Device("3")} {
		if !want.Met(err) {
			t.Errorf("Check() = %v lacks %q", err, want)
		}
	}
}

func TestSerialPortThatIsNotThere(t *testing.T) {
	clock := newStepClock()
	line := openLine(t, Serial{Port: t.TempDir() + "/ttyNone", Baud: 9600, DataBits: 8, Parity: "none", StopBits: 1}, settings(clock))
	<-clock.asked
	refuses(t, line, errortest.Device())
}
