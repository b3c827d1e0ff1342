package look

import (
	"testing"

	"tenthpoint/internal/grain"
)

func TestEveryGrainHasItsOwnLook(t *testing.T) {
	var before []string
	for _, c := range grain.All() {
		l, known := of[c.ID]
		if !known {
			t.Errorf("%s has no look", c.ID)
			continue
		}
		for _, id := range before {
			if other := of[id]; other == l {
				t.Errorf("%s and %s look the same", c.ID, id)
			}
		}
		before = append(before, c.ID)
	}
	if len(of) != len(before) {
		t.Errorf("%d looks for %d grains", len(of), len(before))
	}
}

// What most houses take in must be told apart by its hatching alone.
func TestCommonGrainsDifferWithoutColour(t *testing.T) {
	common := []string{"corn", "soybeans", "wheat-hrw", "wheat-hrs", "sorghum", "oats", "barley", "wheat-durum", "rye", "sunflower"}
	for i, a := range common {
		for _, b := range common[:i] {
			if Of(a).Hatch == Of(b).Hatch {
				t.Errorf("%s and %s have one hatching", a, b)
			}
		}
	}
}

// What draws dots and what draws lines must show one picture: every stroke lies on ink, and all
// lines that cross a rectangle are there.
func TestStrokesLieOnInk(t *testing.T) {
	const left, top, width, height, thick = 13, 7, 90, 61, 2
	for name, h := range map[string]Hatch{
		"rising": Rising, "falling": Falling, "level": Level, "upright": Upright, "cross": Cross, "grid": Grid, "dots": Dots, "wide cross": Wide(Cross), "wide dots": Wide(Dots),
	} {
		strokes := h.Strokes(left, top, width, height, thick)
		if len(strokes) < 4 {
			t.Errorf("%s: only %d strokes", name, len(strokes))
		}
		for _, s := range strokes {
			if s.X1 < left || s.X2 < left || s.X1 > left+width || s.X2 > left+width || min(s.Y1, s.Y2) < top || max(s.Y1, s.Y2) > top+height {
				t.Errorf("%s: %v leaves the rectangle", name, s)
			}
			if !h.Inked(s.X1, s.Y1, thick) {
				t.Errorf("%s: %v does not begin on ink", name, s)
			}
			if !h.dots && !h.Inked((s.X1+s.X2)/2, (s.Y1+s.Y2)/2, thick) && (s.X1+s.X2)%2 == 0 && (s.Y1+s.Y2)%2 == 0 {
				t.Errorf("%s: the middle of %v has no ink", name, s)
			}
		}
	}
	if strokes := Full.Strokes(left, top, width, height, thick); strokes != nil {
		t.Errorf("a full surface has strokes: %v", strokes)
	}
}

func TestToward(t *testing.T) {
	black, white := Colour{}, Colour{255, 255, 255}
	if got := black.Toward(white, 40); got != (Colour{102, 102, 102}) {
		t.Errorf("black with 40 parts of white is %v", got)
	}
	if got := white.Toward(black, 0); got != white {
		t.Errorf("white with nothing is %v", got)
	}
}
