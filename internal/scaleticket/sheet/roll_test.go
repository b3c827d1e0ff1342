package sheet

import (
	"strings"
	"testing"

	"tenthpoint/internal/paper/roll"
	"tenthpoint/internal/paper/roll/rollread"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/internal/tickettest"
)

// TestRollIsTheSlip does with the bytes of every ticket what a receipt printer does,
// and finds the lines of the slip, its code, and one cut at the end.
func TestRollIsTheSlip(t *testing.T) {
	for _, c := range tickettest.Table {
		d := scaleticket.Compose(c.Make(t))
		for _, columns := range []int{roll.Narrow, roll.Wide} {
			for _, page := range []string{"437", "850", "858", "1252"} {
				bytes, err := Roll(d, roll.Settings{Columns: columns, Page: page})
				if err != nil {
					t.Fatal(err)
				}
				got, err := rollread.Read(bytes)
				if err != nil {
					t.Fatalf("%s: %v", c.Name, err)
				}
				ticket, working := texts(d, columns)
				payload, hasCode := scaleticket.QR(d)
				want := rollread.Printed{Text: ticket + working, Cuts: 1}
				if hasCode {
					want = rollread.Printed{Text: ticket + "\n" + working, Cuts: 1, Payload: payload.Text, CodeAt: len(ticket)}
				}
				if page != "1252" { // the marks of the ticket with words of its own
					want.Text = strings.NewReplacer("‹", "?", "›", "?").Replace(want.Text)
					want.CodeAt = min(want.CodeAt, len(strings.NewReplacer("‹", "?", "›", "?").Replace(ticket)))
				}
				if got != want {
					t.Errorf("%s in %d columns and page %s: the roll says\n%s\nnot\n%s", c.Name, columns, page, got.Text, want.Text)
				}
			}
		}
	}
}

// TestRollInFrench: the letters of a French house come out of every page but those it
// lacks, which are seen to be missing.
func TestRollInFrench(t *testing.T) {
	ticket := tickettest.Corn(t)
	ticket.House.Language = "fr"
	d := scaleticket.Compose(ticket)
	for page, lacks := range map[string]string{"858": "", "1252": "", "850": ""} {
		bytes, err := Roll(d, roll.Settings{Columns: roll.Narrow, Page: page})
		if err != nil {
			t.Fatal(err)
		}
		got, err := rollread.Read(bytes)
		if err != nil || !strings.Contains(got.Text, "é") || !strings.Contains(got.Text, scaleticket.WordsIn("fr").Moisture) || strings.Contains(got.Text, "?") != (lacks != "") {
			t.Errorf("page %s (%v):\n%s", page, err, got.Text)
		}
	}
}

func TestRollThatNoPrinterHas(t *testing.T) {
	d := scaleticket.Compose(tickettest.Corn(t))
	for _, s := range []roll.Settings{{Columns: 80, Page: "858"}, {Columns: 42, Page: "klingon"}, {}} {
		if _, err := Roll(d, s); err == nil {
			t.Errorf("%+v was taken", s)
		}
	}
}
