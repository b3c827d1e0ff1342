package place

import (
	"path/filepath"
	"testing"
)

func TestBesideABook(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", "/home/clerk/.config")
	servers := "/home/clerk/.config/tenthpoint/servers"
	for at, want := range map[string][2]string{
		"/data/house.book":                                      {"house", "/data"},
		"postgres://clerk@office.example/elevator":              {"office.example-elevator", servers + "/office.example-elevator"},
		"postgresql://office:5433/elevator?schema=riverside":    {"office-elevator-riverside", servers + "/office-elevator-riverside"},
		"postgres://clerk@/elevator?host=/run/pg&schema=../etc": {"elevator-..-etc", servers + "/elevator-..-etc"},
		"postgres://clerk@[::1]/grain%2Fhouse":                  {"1-grain-house", servers + "/1-grain-house"},
	} {
		if got := Name(at); got != want[0] {
			t.Errorf("%s is called %q, want %q", at, got, want[0])
		}
		if got := filepath.ToSlash(Beside(at)); got != want[1] {
			t.Errorf("beside %s is %s, want %s", at, got, want[1])
		}
	}
}
