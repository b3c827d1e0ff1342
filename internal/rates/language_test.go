package rates_test

import (
	"path/filepath"
	"strings"
	"testing"

	"tenthpoint/internal/i18n"
	"tenthpoint/internal/message"
	"tenthpoint/internal/tomlfile"
)

// complete are printers of the languages that have every text. They say what is
// no message in English, so that it shows.
func complete(t *testing.T) *message.Printer {
	t.Helper()
	catalog, there := i18n.Catalog("fr")
	if !there {
		t.Fatal("there is no French catalog")
	}
	return message.NewPrinter(catalog)
}

// Whatever an edition says is posted in the language of the elevator.
func TestPostedRatesInAnotherLanguage(t *testing.T) {
	p := complete(t)
	for _, name := range append(fixtureFiles(t, "good/*.toml", 4), fixtureFiles(t, "../../schedules/editions/*.toml", 15)...) {
		e, err := readFixture(t, name)
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range e.Lines() {
			p.Text(l.Section)
			p.Text(l.Label)
			p.Text(l.Value)
		}
		for _, caution := range e.Cautions() {
			if p.Text(caution) == caution.String() {
				t.Errorf("%s: %q is said in English", name, caution)
			}
		}
	}
	if lost := p.Missing(); len(lost) > 0 {
		t.Errorf("the catalog lacks %q", lost)
	}
}

// A mistake in a file is reported in the language of the elevator, with the place and the line of
// the file.
func TestMistakesInAnotherLanguage(t *testing.T) {
	p := complete(t)
	for _, name := range fixtureFiles(t, "bad/*.toml", 80) {
		_, err := readFixture(t, name)
		problems, ok := err.(tomlfile.Problems)
		if !ok {
			t.Fatalf("%s was read: %v", name, err)
		}
		said := p.Error(err)
		for _, one := range problems {
			if !strings.Contains(said, filepath.Base(name)) || !strings.Contains(said, one.Excerpt) {
				t.Errorf("%s: the place or the line is lost in\n%s", name, said)
			}
			if said, english := p.Text(one.What), one.What.String(); said == english {
				t.Errorf("%s: %q is said in English", name, english)
			}
			if said, english := p.Text(one.Remedy), one.Remedy.String(); said == english {
				t.Errorf("%s: %q is said in English", name, english)
			}
		}
	}
	if lost := p.Missing(); len(lost) > 0 {
		t.Errorf("the catalog lacks %q", lost)
	}
}
