package desktop

import (
	"context"
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"tenthpoint/internal/demo"
	"tenthpoint/internal/i18n/unsaid"
	"tenthpoint/internal/office"
	"tenthpoint/ui/apptheme"
	"tenthpoint/ui/handbook"
	"tenthpoint/ui/shell"
)

// Every screen of a desk that speaks French is in French, in every look there is
// a picture of: each word on it is one of the texts in French or a name.
func TestEveryScreenIsInTheLanguage(t *testing.T) {
	look := shell.Look{Scale: apptheme.TextOrdinary}
	s := inFrench(t, look, 120)
	r := screenReader{Finder: unsaid.In("fr", textsOf(t, "fr")), t: t, told: map[string]bool{}}
	r.Know(ownWords...)
	for _, c := range handbook.In("fr").All() { // written in French, compared with the English one by its own test
		r.Know(c.Text)
	}
	r.knowTheHouse(s)
	s.reading = func(shot string) { r.read(shot, s.fyne) }
	for _, row := range Screens {
		s.Go(row.ID)
		s.shoot("french", row.ID, look)
	}
	s.shootLoads("french", look)
	s.shootBench("french", look)
	s.shootMeters("french", look)
	s.shootDay("french", look)
	s.shootLists("french", look)
	s.Commands.Run("keys")
	s.shoot("french", "keys", look)
	empty := newScene(t, look, 0)
	empty.speak("fr")
	empty.reading = func(shot string) { r.read(shot, empty.fyne) }
	empty.shoot("french", "first", look)
	empty.shootEmpty("french", look)
}

// ownWords are names and what is typed in the tests: they are the same in every
// language.
var ownWords = []string{
	"English Français", demo.Manager, demo.Clerk, demo.SecondClerk, demo.Tester, "Cass", "XMP", "Minnesota Statutes",
	"Example digital meter", "Example dial meter", "Bin", "Flat store", "Pit", "wet corn", "Shelf", "Example Feed Mill",
	"Invented for the demo elevator", "none: example rates, posted nowhere", // origin of the example rates
	"main schedule, harvest 2025, corrected", "Oats", // titles of editions
	"discount",                       // as the file has it: discount.wild-oats
	"us", "corn", "soybeans", "sold", // codes
	"grain spilled on the bench", "state laboratory", "our own meter says", "moisture of the truck before was typed", "torn in the printer",
	"posted", "issued", "zebra", "ticket", "corrected", "shared", // typed
	"tmp scratch book", // where the book lies
	"Damaged kernels, total is over the limit of soybeans, discount damage, line. Refuse the load, or let a manager accept it", // why a load was refused in English
}

// screenReader compares what a window shows with the words of a language.
type screenReader struct {
	unsaid.Finder
	t    *testing.T
	told map[string]bool // each finding once
}

// knowTheHouse adds the names of the elevator of a scene.
func (r screenReader) knowTheHouse(s *scene) {
	p := s.desk.Profile()
	r.Know(p.Business, p.Street, p.Town, p.Licence)
	growers, err := office.Growers(context.Background(), s.desk)
	must(r.t, err)
	for _, g := range growers {
		r.Know(g.Name, g.Address)
	}
}

// read reads all that a window shows: its menu, its content, its overlays.
func (r screenReader) read(shot string, window fyne.Window) {
	r.t.Helper()
	for _, menu := range window.MainMenu().Items {
		r.line(shot, menu.Label)
		for _, item := range menu.Items {
			r.line(shot, item.Label)
		}
	}
	for _, o := range append(window.Canvas().Overlays().List(), window.Canvas().Content()) {
		leaves(o, fyne.NewPos(0, 0), func(l leaf) {
			if text, is := l.object.(*canvas.Text); is {
				r.line(shot, text.Text)
			}
		})
	}
}

// aside matches what a line names of a file, or a word that was cut short.
var aside = regexp.MustCompile(`[a-z0-9_ -]+(, [a-z_]+)?, ligne \d+|\b[a-z]+(-[a-z]+)*-\d{4}(-[a-z])?|discount\.[a-z-]+|\S+…`)

func (r screenReader) line(shot, text string) {
	r.t.Helper()
	left := strings.Join(r.Left(aside.ReplaceAllString(text, "")), " ")
	if left != "" && !r.told[left] {
		r.told[left] = true
		r.t.Errorf("%s: %q is left in English: %s", shot, text, left)
	}
}
