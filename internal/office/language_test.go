package office_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/daysheet"
	"tenthpoint/internal/office"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
	"tenthpoint/internal/settle"
)

// speaks has the elevator choose a language.
func speaks(s *scene, language string) {
	s.T.Helper()
	p := s.Profile()
	p.Language = language
	s.As(housetest.Manager)
	must(s.T, scalehouse.SetProfile(ctx, s.Desk, p))
}

// A day that was closed prints in the language it was closed in, whatever the elevator speaks
// later; the day after it prints in the new one.
func TestClosedDayKeepsItsLanguage(t *testing.T) {
	s := housetest.Workday(t)
	before := s.DayPaper(housetest.Oct1).Text(110)
	speaks(s, "fr")
	if after := s.DayPaper(housetest.Oct1).Text(110); after != before {
		t.Errorf("the closed day reads\n%s\nand read\n%s", after, before)
	}
	s.At("2026-10-02 08:00")
	if text := s.DayPaper(housetest.Oct2).Text(110); !strings.Contains(text, "FEUILLE DE JOURNÉE") {
		t.Errorf("the new day reads\n%s", text)
	}
}

// What a day is closed with is hashed from its facts, in no language; and a book
// of either is sound.
func TestHashesKnowNoLanguage(t *testing.T) {
	sheets := map[string]daysheet.Sheet{}
	for _, language := range []string{"", "fr"} {
		s := housetest.New(t)
		speaks(s, language)
		s.Ticket()
		s.At("2026-10-01 19:05")
		must(t, scalehouse.CloseDay(ctx, s.Desk, housetest.Oct1, "all well"))
		sheet, err := office.DaySheet(ctx, s.Desk, housetest.Oct1)
		must(t, err)
		sheets[language] = sheet
		if sound := s.Verify(); len(sound.Problems) > 0 {
			t.Errorf("%q: %q", language, sound.Problems)
		}
		if sheet.Closed == nil || sheet.Closed.Differs {
			t.Errorf("%q: the sheet is not the one that was closed", language)
		}
	}
	english, err := sheets[""].Digest(settle.Current)
	must(t, err)
	french, err := sheets["fr"].Digest(settle.Current)
	must(t, err)
	if english != french {
		t.Errorf("the day is written down as\n%s\nand in French as\n%s", english, french)
	}
}
