package view

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"tenthpoint/ui/kit"
)

// looks are the looks every screen is drawn in.
var looks = []struct {
	name string
	look Look
	size fyne.Size
}{
	{"light-1280", Look{Scale: kit.TextOrdinary}, fyne.NewSize(1280, 720)},
	{"dark-1280", Look{Dark: true, Scale: kit.TextOrdinary}, fyne.NewSize(1280, 720)},
	{"light-1920", Look{Scale: kit.TextOrdinary}, fyne.NewSize(1920, 1080)},
	{"dark-1920", Look{Dark: true, Scale: kit.TextOrdinary}, fyne.NewSize(1920, 1080)},
}

// TestShots draws every screen in every look. With TENTHPOINT_SHOTS set to a
// folder the pictures are written there for a person to look at; without it
// they are drawn all the same and held against what must be in them.
func TestShots(t *testing.T) {
	for _, l := range looks {
		t.Run(l.name, func(t *testing.T) {
			s := newScene(t, l.look, 120)
			s.fyne.Resize(l.size)
			for _, row := range screens {
				s.Go(row.id)
				s.shoot(l.name, row.id, l.look)
			}
			s.Go("yard")
			s.press(fyne.KeyF2)
			s.shoot(l.name, "yard-truck", l.look)
			empty := newScene(t, l.look, 0)
			empty.fyne.Resize(l.size)
			empty.shoot(l.name, "first", l.look)
		})
	}
}

func (s *scene) shoot(look, name string, l Look) {
	s.t.Helper()
	picture := s.fyne.Canvas().Capture()
	s.checkPicture(picture, l)
	folder := os.Getenv("TENTHPOINT_SHOTS")
	if folder == "" {
		return
	}
	f, err := os.Create(filepath.Join(folder, fmt.Sprintf("desk-%s-%s.png", name, look)))
	must(s.t, err)
	must(s.t, png.Encode(f, picture))
	must(s.t, f.Close())
}

// checkPicture looks for the theme's own colours: a screen that failed to draw
// is one flat colour.
func (s *scene) checkPicture(picture image.Image, l Look) {
	s.t.Helper()
	seen := map[color.NRGBA]bool{}
	b := picture.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			seen[color.NRGBAModel.Convert(picture.At(x, y)).(color.NRGBA)] = true
		}
	}
	for _, name := range []fyne.ThemeColorName{theme.ColorNameBackground, kit.ColorPanel, kit.ColorInk} {
		want := color.NRGBAModel.Convert(l.Theme().Color(name, 0)).(color.NRGBA)
		if !seen[want] {
			s.t.Errorf("nothing in the picture is %s (%v)", name, want)
		}
	}
}
