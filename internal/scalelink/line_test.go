package scalelink

import (
	"errors"
	"io"
	"slices"
	"strings"
	"tenthpoint/internal/message/errortest"
	"testing"
	"time"
)

func TestLatestFollowsTheLine(t *testing.T) {
	clock, dialer := newStepClock(), newWires()
	line := openLine(t, dialer, settings(clock))
	end := dialer.end(line)
	say(t, line, end, "[+   52300lb G M]\r\n")
	shows(t, line, "52300", Motion)
	clock.pass(3 * time.Second)
	shows(t, line, "52300", Motion)
	clock.pass(time.Millisecond)
	refuses(t, line, errortest.Device("3s"))
	say(t, line, end, "[+   52320lb G S]\r\n")
	shows(t, line, "52320", Motion) // one frame alone may be a broken one
	say(t, line, end, "[+   52320lb G S]\r\n")
	shows(t, line, "52320", Stable)
	if got, _ := line.Latest(); !got.At.Equal(clock.Now()) || got.Raw != "+   52320lb G S" {
		t.Errorf("reading %+v, want it timed %s with its frame", got, clock.Now())
	}
}

func TestLatestTellsWhyThereIsNone(t *testing.T) {
	clock, dialer := newStepClock(), newWires()
	line, err := New(dialer, settings(clock))
	if err != nil {
		t.Fatal(err)
	}
	refuses(t, line, errortest.Device("West scale", "wire 1"))
	if err := line.Open(t.Context()); err != nil {
		t.Fatal(err)
	}
	refuses(t, line, errortest.Device())
	end := dialer.end(line)
	refuses(t, line, errortest.Device())
	say(t, line, end, "[+   52300oz G S]\r\n")
	refuses(t, line, errortest.Device("oz", "unit"))
	lost := line.Changed()
	end.Close()
	<-lost
	refuses(t, line, errortest.Device("1s"))
	if err := line.Close(); err != nil {
		t.Fatal(err)
	}
	refuses(t, line, errortest.Device())
}

// A reading from before the line was lost is not shown after it is back.
func TestOldReadingsDoNotSurviveALostLine(t *testing.T) {
	clock, dialer := newStepClock(), newWires()
	line := openLine(t, dialer, settings(clock))
	end := dialer.end(line)
	say(t, line, end, "[+   52300lb G S]\r\n")
	end.Close()
	clock.step()
	dialer.end(line)
	refuses(t, line, errortest.Device())
}

func TestConnectingAgainWaitsLongerEachTime(t *testing.T) {
	clock, dialer := newStepClock(), newWires()
	dialer.refuse = errors.New("no such wire")
	s := settings(clock)
	s.Backoff = Backoff{First: time.Second, Most: 6 * time.Second}
	line := openLine(t, dialer, s)
	var waits []time.Duration
	for range 5 {
		waits = append(waits, <-clock.asked)
		refuses(t, line, errortest.Device(waits[len(waits)-1].String()))
		if len(waits) == 5 {
			dialer.refuse = nil // the line is asleep: nothing reads this now
		}
		clock.goOn <- struct{}{}
	}
	end := dialer.end(line)
	say(t, line, end, "[+   52300lb G S]\r\n")
	end.Close()
	waits = append(waits, clock.step()) // a reading came, so it starts over
	(dialer.end(line)).Close()
	waits = append(waits, clock.step()) // none came this time
	want := []time.Duration{1, 2, 4, 6, 6, 1, 2}
	for i := range want {
		want[i] *= time.Second
	}
	if !slices.Equal(waits, want) {
		t.Errorf("waits %v, want %v", waits, want)
	}
}

func TestNoiseIsToldAndTheLineOpenedAgain(t *testing.T) {
	clock, dialer := newStepClock(), newWires()
	line := openLine(t, dialer, settings(clock))
	end := dialer.end(line)
	go io.WriteString(end, strings.Repeat("~", 2*mostJunk))
	<-clock.asked
	refuses(t, line, errortest.Device("1s"))
}

func TestOpenAndClose(t *testing.T) {
	dialer := newWires()
	line := openLine(t, dialer, settings(newStepClock()))
	if err := line.Open(t.Context()); !errortest.Device("West scale").Met(err) {
		t.Errorf("a second Open gave %v, want a refusal", err)
	}
	end := dialer.end(line)
	for range 2 {
		if err := line.Close(); err != nil {
			t.Error(err)
		}
	}
	if _, err := end.Read(make([]byte, 1)); !errors.Is(err, io.EOF) {
		t.Errorf("the wire is still open after Close: %v", err)
	}
	if err := line.Open(t.Context()); err != nil {
		t.Fatal(err)
	}
	say(t, line, dialer.end(line), "[+   52300lb G S]\r\n")
}

// An indicator that must be asked is asked once for each frame, and twice at
// first where the first answer is thrown away.
func TestAsking(t *testing.T) {
	for _, tt := range []struct {
		profile Profile
		first   string
		answer  string
	}{
		{ExampleColumns(), "?", "[+   52300lb G S]\r\n"},
		{patternProfile(), "??", "00 lb\nsettled 52300 lb\n"},
	} {
		clock, dialer := newStepClock(), newWires()
		s := settings(clock)
		s.Profile, s.Profile.Ask = tt.profile, "?"
		line := openLine(t, dialer, s)
		end := dialer.end(line)
		asked := make([]byte, len(tt.first))
		if _, err := io.ReadFull(end, asked); err != nil || string(asked) != tt.first {
			t.Fatalf("%s: first asked %q, %v; want %q", tt.profile.Name, asked, err, tt.first)
		}
		say(t, line, end, tt.answer)
		shows(t, line, "52300", Motion)
		if d := clock.step(); d != askPause {
			t.Errorf("%s: asked again after %s, want %s", tt.profile.Name, d, askPause)
		}
		if _, err := io.ReadFull(end, asked[:1]); err != nil || asked[0] != '?' {
			t.Errorf("%s: not asked again: %q, %v", tt.profile.Name, asked[:1], err)
		}
	}
}

func TestSettingsCheck(t *testing.T) {
	mute := ExampleColumns()
	mute.Fields = mute.Fields[:4]
	tests := []struct {
		name   string
		change func(*Settings)
		want   []errortest.Want
	}{
		{"good", func(*Settings) {}, nil},
		{"rest by rule", func(s *Settings) { s.Profile, s.Steady = mute, Steady{1, 3} }, nil},
		{"rest never known", func(s *Settings) { s.Profile = mute }, []errortest.Want{errortest.Device()}},
		{"bad waits", func(s *Settings) { s.Backoff = Backoff{First: 2, Most: 1} }, []errortest.Want{errortest.Device()}},
		{"all at once", func(s *Settings) { *s = Settings{Steady: Steady{1, 1}, Fresh: -1} },
			[]errortest.Want{errortest.Device(), errortest.Device(), errortest.Device(), errortest.Device()}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			s := settings(newStepClock())
			tt.change(&s)
			_, err := New(newWires(), s)
			if (err == nil) != (len(tt.want) == 0) {
				t.Fatalf("New = %v, want faults %q", err, tt.want)
			}
			for _, want := range tt.want {
				if !want.Met(err) {
					t.Errorf("New = %q lacks %q", err, want)
				}
			}
		})
	}
	if _, err := New(TCP{Address: "nowhere"}, Settings{}); !errortest.Device().Met(err) || !errortest.Device().Met(err) {
		t.Errorf("New = %v, want the dialer's faults and the settings'", err)
	}
}
