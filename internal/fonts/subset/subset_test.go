package subset_test

import (
	"bytes"
	"os"
	"testing"

	"tenthpoint/internal/fonts"
	"tenthpoint/internal/fonts/subset"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

var faces = map[string][]byte{"regular.ttf": fonts.Regular, "bold.ttf": fonts.Bold}

func original(t *testing.T, file string) []byte {
	t.Helper()
	b, err := os.ReadFile("../original/" + file)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestFontsAreCut: the fonts in the repository are those that the chore makes.
func TestFontsAreCut(t *testing.T) {
	for file, style := range map[string]string{"regular.ttf": "Regular", "bold.ttf": "Bold"} {
		cut, err := subset.Of(original(t, file), subset.Printed(), subset.PaperName(style))
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(cut, faces[file]) {
			t.Errorf("%s is not what `go run ./cmd/task fonts` makes", file)
		}
	}
}

// TestLettersAreTheOriginals: every letter has the outline and the width it has in
// the font it was cut from.
func TestLettersAreTheOriginals(t *testing.T) {
	for file, cut := range faces {
		from, err := sfnt.Parse(original(t, file))
		if err != nil {
			t.Fatal(err)
		}
		to, err := sfnt.Parse(cut)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range subset.Printed() {
			want, wantWidth := outline(t, from, r)
			got, gotWidth := outline(t, to, r)
			if !bytes.Equal(want, got) || wantWidth != gotWidth {
				t.Errorf("%s: %q is another letter in the cut font", file, r)
			}
		}
		if _, width := outline(t, to, '漢'); width != 0 {
			t.Errorf("%s: a letter that is not printed was not cut away", file)
		}
	}
}

// outline is a letter as points, and its width; nothing where the font lacks it.
func outline(t *testing.T, f *sfnt.Font, r rune) ([]byte, fixed.Int26_6) {
	t.Helper()
	var buffer sfnt.Buffer
	glyph, err := f.GlyphIndex(&buffer, r)
	if err != nil {
		t.Fatal(err)
	}
	if glyph == 0 {
		return nil, 0
	}
	segments, err := f.LoadGlyph(&buffer, glyph, fixed.I(2048), nil)
	if err != nil {
		t.Fatal(err)
	}
	var out []byte
	for _, s := range segments {
		out = append(out, byte(s.Op))
		for _, p := range s.Args {
			out = append(out, byte(p.X), byte(p.X>>8), byte(p.X>>16), byte(p.Y), byte(p.Y>>8), byte(p.Y>>16))
		}
	}
	width, err := f.GlyphAdvance(&buffer, glyph, fixed.I(2048), font.HintingNone)
	if err != nil {
		t.Fatal(err)
	}
	return out, width
}

// TestCutFontsAreRenamed: the licence asks that a changed font has another name.
func TestCutFontsAreRenamed(t *testing.T) {
	for file, cut := range faces {
		f, err := sfnt.Parse(cut)
		if err != nil {
			t.Fatal(err)
		}
		name, err := f.Name(nil, sfnt.NameIDFamily)
		if err != nil || name != "Tenthpoint Papers" {
			t.Errorf("%s is named %q (%v)", file, name, err)
		}
	}
}

// TestNotAFont: what is no font is refused, not cut.
func TestNotAFont(t *testing.T) {
	whole := original(t, "bold.ttf")
	for name, file := range map[string][]byte{"nothing": nil, "text": []byte("this is a letter, but no font"), "half a font": whole[:len(whole)/2]} {
		if _, err := subset.Of(file, subset.Printed(), subset.Name{}); err == nil {
			t.Errorf("%s was cut as a font", name)
		}
	}
}
