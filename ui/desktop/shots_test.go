package desktop

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

	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/shell"
)

// looks are the looks every screen is drawn in.
var looks = []struct {
	name string
	look shell.Look
	size fyne.Size
}{
	{"light-1280", shell.Look{Scale: apptheme.TextOrdinary}, fyne.NewSize(1280, 720)},
	{"dark-1280", shell.Look{Dark: true, Scale: apptheme.TextOrdinary}, fyne.NewSize(1280, 720)},
	{"light-1920", shell.Look{Scale: apptheme.TextOrdinary}, fyne.NewSize(1920, 1080)},
	{"dark-1920", shell.Look{Dark: true, Scale: apptheme.TextOrdinary}, fyne.NewSize(1920, 1080)},
	{"large-1280", shell.Look{Scale: apptheme.TextLarge}, fyne.NewSize(1280, 720)},
	{"largest-1280", shell.Look{Scale: apptheme.TextLargest}, fyne.NewSize(1280, 720)},
	{"largest-1920", shell.Look{Scale: apptheme.TextLargest}, fyne.NewSize(1920, 1080)},
}

// TestShots draws every screen in every look. With TENTHPOINT_SHOTS set to a folder the pictures
// are written there for a person to look at; without it the smallest window is drawn, light and
// dark, and compared with what must be in it.
func TestShots(t *testing.T) {
	drawn := looks
	if os.Getenv("TENTHPOINT_SHOTS") == "" {
		drawn = looks[:2]
	}
	for _, l := range drawn {
		t.Run(l.name, func(t *testing.T) {
			s := newScene(t, l.look, 120)
			s.resize(l.size)
			for _, row := range Screens {
				s.Go(row.ID)
				s.shoot(l.name, row.ID, l.look)
			}
			s.shootLoads(l.name, l.look)
			s.shootBench(l.name, l.look)
			s.shootMeters(l.name, l.look)
			s.shootDay(l.name, l.look)
			s.shootLists(l.name, l.look)
			empty := newScene(t, l.look, 0)
			empty.resize(l.size)
			empty.shoot(l.name, "first", l.look)
			empty.shootEmpty(l.name, l.look)
		})
	}
}

// shootLoads draws the yard screen as a morning goes: a truck half done, one
// that is whole, a wrong figure, the working, a question, many trucks.
func (s *scene) shootLoads(look string, l shell.Look) {
	s.Go("yard")
	s.press(fyne.KeyF2)
	s.shoot(look, "yard-half", l)
	s.Commands.Run("load.new")
	s.come("123", "corn", "77")
	s.write("52300", "17.2", "56.4", "5.5", "3.2", "n", "", "24120", "P1", "sold", "4.15")
	s.shoot(look, "yard-whole", l)
	s.Commands.Run("load.working")
	s.shoot(look, "yard-working", l)
	s.Commands.Run("load.working")
	s.Commands.Run("load.read")
	s.shoot(look, "yard-read", l)
	s.press(fyne.KeyEscape)
	yardOf(s.Window).Load.FocusOrder.Focus("tare")
	s.letters("54300")
	s.shoot(look, "yard-wrong", l)
	s.press(fyne.KeyEscape)
	yardOf(s.Window).Load.FocusOrder.Focus("grower")
	s.letters("f")
	s.shoot(look, "yard-list", l)
	s.press(fyne.KeyEscape, fyne.KeyEscape)
	s.Commands.Run("load.refuse")
	s.shoot(look, "yard-refuse", l)
	s.UI.FrontDialog().Dismiss()
	s.Commands.Run("load.new")
	s.Commands.Run("load.leaves")
	s.write("123", "Example Feed Mill", "corn", "T9", "78000", "", "", "27600", "B1")
	s.shoot(look, "yard-leaves", l)
	for _, gross := range []string{"41000", "52000", "60000", "35000"} {
		s.Commands.Run("load.new")
		s.come("123", "corn", "T"+gross)
		s.write(gross)
	}
	s.shoot(look, "yard-many", l)
	s.Go("board")
	s.shoot(look, "board-many", l)
	s.Go("yard")
}

func (s *scene) shoot(look, name string, l shell.Look) {
	s.t.Helper()
	if s.reading != nil {
		s.reading(name)
		return
	}
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
func (s *scene) checkPicture(picture image.Image, l shell.Look) {
	s.t.Helper()
	seen := map[color.NRGBA]bool{}
	b := picture.Bounds()
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			seen[color.NRGBAModel.Convert(picture.At(x, y)).(color.NRGBA)] = true
		}
	}
	want := []fyne.ThemeColorName{theme.ColorNameBackground, apptheme.ColorPanel, apptheme.ColorInk}
	if s.UI.FrontDialog() != nil { // the window behind is dimmed
		want = []fyne.ThemeColorName{theme.ColorNameOverlayBackground, apptheme.ColorInk}
	}
	for _, name := range want {
		c := color.NRGBAModel.Convert(l.Theme().Color(name, 0)).(color.NRGBA)
		if !seen[c] {
			s.t.Errorf("nothing in the picture is %s (%v)", name, c)
		}
	}
}
