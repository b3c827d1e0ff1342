package apptheme

import (
	"testing"

	"fyne.io/fyne/v2/theme"

	"tenthpoint/internal/grain/look"
)

// A grain must be seen on every ground it is drawn on, its lines on the surface between them, and
// the surface of a hatching must not hide the letters written on it.
func TestGrainIsSeen(t *testing.T) {
	all := map[string]look.Look{"other": look.Other}
	for _, id := range look.Grains() {
		all[id] = look.Of(id)
	}
	for n := range 8 {
		all[string(rune('a'+n))] = look.Kind(n)
	}
	for _, th := range []Theme{{Dark: false}, {Dark: true}} {
		for id, l := range all {
			ink, between := LookInk(th, l), LookGround(th, l)
			if got := contrast(ink, nrgba(th, theme.ColorNameBackground)); got < 3 {
				t.Errorf("dark %v: %s on the ground is %.2f : 1, want at least 3", th.Dark, id, got)
			}
			if got := contrast(ink, nrgba(th, ColorPanel)); got < 3 {
				t.Errorf("dark %v: %s on a panel is %.2f : 1, want at least 3", th.Dark, id, got)
			}
			if got := contrast(ink, between); got < 1.8 {
				t.Errorf("dark %v: the lines of %s are %.2f : 1 on their surface, want at least 1.8", th.Dark, id, got)
			}
		}
	}
}
