package roll_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/paper/roll"
	"tenthpoint/internal/paper/roll/rollread"
)

// What a printer makes of the bytes is the text, the code at its place, and one cut.
func TestPaperIsRead(t *testing.T) {
	for _, page := range roll.Pages() {
		p, err := roll.Begin(roll.Settings{Columns: roll.Narrow, Page: page})
		if err != nil {
			t.Fatal(err)
		}
		p.Text("Poids net 28 000 lb é\n")
		payload := strings.Repeat("1234567890", 30) // longer than one byte of length counts
		p.Code(payload)
		p.Text("below\n")
		got, err := rollread.Read(p.End())
		if err != nil {
			t.Fatalf("page %s: %v", page, err)
		}
		above := "Poids net 28 000 lb é\n"
		want := rollread.Printed{Text: above + "\nbelow\n", Payload: payload, CodeAt: len(above), Cuts: 1}
		if got != want {
			t.Errorf("page %s: the printer makes %+v, want %+v", page, got, want)
		}
	}
}

// A letter that the page lacks is seen to be missing, and no text can give the printer a command.
func TestLettersAPageLacks(t *testing.T) {
	p, err := roll.Begin(roll.Settings{Columns: roll.Wide, Page: "437"})
	if err != nil {
		t.Fatal(err)
	}
	p.Text("Ł \x1b@ \t\u202f1")
	got, err := rollread.Read(p.End())
	if err != nil || got.Text != "? ?@   1" {
		t.Errorf("%q, %v", got.Text, err)
	}
}

func TestSettingsThatNoPrinterHas(t *testing.T) {
	for _, s := range []roll.Settings{{Columns: 80, Page: roll.DefaultPage}, {Columns: roll.Narrow, Page: "klingon"}, {}} {
		if _, err := roll.Begin(s); err == nil {
			t.Errorf("%+v was taken", s)
		}
	}
}
