package main

import (
	"slices"
	"strings"
	"testing"
)

func TestDisplayFault(t *testing.T) {
	for _, c := range []struct {
		system string
		env    map[string]string
		want   string // part of the sentence; empty: the window can open
	}{
		{"linux", map[string]string{"DISPLAY": ":0"}, ""},
		{"linux", map[string]string{"DISPLAY": ":0", "WAYLAND_DISPLAY": "wayland-0"}, ""},
		{"linux", map[string]string{"WAYLAND_DISPLAY": "wayland-0"}, "Xwayland"},
		{"linux", nil, "There is no display"},
		{"freebsd", nil, "There is no display"},
		{"windows", nil, ""},
		{"darwin", nil, ""},
	} {
		got := displayFault(c.system, func(name string) string { return c.env[name] })
		if (got == "") != (c.want == "") || !strings.Contains(got, c.want) {
			t.Errorf("%s %v: %q, want %q", c.system, c.env, got, c.want)
		}
	}
}

func TestDispatchRefuses(t *testing.T) {
	t.Chdir(".") // dispatch steps into the root; the test steps back
	for _, c := range []struct {
		args []string
		want string
	}{
		{nil, "name a chore"},
		{[]string{"sweep"}, `"sweep" is not a chore`},
		{[]string{"check", "fast"}, "check takes no arguments"},
		{[]string{"shots"}, "name the folder"},
		{[]string{"run", "fast"}, `run does not take "fast"`},
	} {
		err := dispatch(c.args)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %q", c.args, err, c.want)
		}
	}
}

func TestSlowestFirst(t *testing.T) {
	got := slowestFirst([]string{modulePath + "/cmd/a", modulePath + "/internal/settle", modulePath + "/b", modulePath + "/ui/desktop"})
	want := []string{modulePath + "/ui/desktop", modulePath + "/internal/settle", modulePath + "/cmd/a", modulePath + "/b"}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}
