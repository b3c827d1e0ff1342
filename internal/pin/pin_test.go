package pin_test

import (
	"encoding/base64"
	"errors"
	"strings"
	"testing"
	"time"

	"golang.org/x/crypto/argon2"

	"tenthpoint/internal/message"
	"tenthpoint/internal/pin"
)

func lock(t *testing.T, typed string, salt pin.Salt) string {
	t.Helper()
	l, err := pin.Lock(typed, salt)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestLockOpensForItsPINAlone(t *testing.T) {
	salt := pin.Salt{1, 2, 3}
	l := lock(t, "4711", salt)
	sum := argon2.IDKey([]byte("4711"), salt[:], 2, 19*1024, 1, 32)
	if want := "$argon2id$v=19$m=19456,t=2,p=1$AQIDAAAAAAAAAAAAAAAAAA$" + base64.RawStdEncoding.EncodeToString(sum); l != want {
		t.Errorf("the lock is %s, want %s", l, want)
	}
	if !pin.Opens(l, "4711") {
		t.Error("its PIN does not open it")
	}
	for _, wrong := range []string{"", "4712", "47110", " 4711", "4711 "} {
		if pin.Opens(l, wrong) {
			t.Errorf("%q opens it", wrong)
		}
	}
	if other := lock(t, "4711", pin.Salt{9}); other == l || !pin.Opens(other, "4711") {
		t.Error("the salt makes no difference")
	}
}

func TestLockThatIsNoneOpensForNothing(t *testing.T) {
	l := lock(t, "4711", pin.Salt{1})
	for what, broken := range map[string]string{
		"nothing": "", "cut off": l[:len(l)-1], "more behind": l + "A", "more memory": strings.Replace(l, "m=19456", "m=99999999", 1),
		"other passes": strings.Replace(l, "t=2", "t=1", 1), "another method": strings.Replace(l, "argon2id", "argon2i", 1),
		"no salt": strings.Replace(l, "AQAAAAAAAAAAAAAAAAAAAA", "", 1), "the PIN itself": "4711",
	} {
		if pin.Opens(broken, "4711") || pin.Opens(broken, "") {
			t.Errorf("%s opens", what)
		}
	}
}

func TestPINHasALength(t *testing.T) {
	for typed, wrong := range map[string]bool{"123": true, "1234": false, strings.Repeat("é", 64): false, strings.Repeat("1", 65): true, "12\x0034": true, "": true} {
		if _, err := pin.Lock(typed, pin.Salt{}); errors.Is(err, message.Invalid) != wrong {
			t.Errorf("%q: %v", typed, err)
		}
	}
}

func TestGuessingSlowsDown(t *testing.T) {
	for wrong, want := range map[int]time.Duration{
		0: 0, 1: 0, 2: 0, 3: 15 * time.Second, 4: 30 * time.Second, 5: time.Minute, 10: 32 * time.Minute, 11: time.Hour, 1_000_000: time.Hour,
	} {
		if got := pin.Wait(wrong); got != want {
			t.Errorf("after %d wrong PINs %s, want %s", wrong, got, want)
		}
	}
}
