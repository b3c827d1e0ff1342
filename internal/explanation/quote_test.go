package explanation

import (
	"strings"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/schedules"
)

func shipped(t *testing.T) []*rates.Edition {
	t.Helper()
	set, err := schedules.Editions()
	if err != nil || len(set.All()) == 0 {
		t.Fatal(set, err)
	}
	return set.All()
}

// placed is a place with the key that its line begins with.
type placed struct {
	source message.Text
	key    string
}

// cells are places of an edition with what must be found there.
func cells(e *rates.Edition) []placed {
	var out []placed
	put := func(key string, c rule.Cell) {
		if c.Given() {
			out = append(out, placed{c.Source, key})
		}
	}
	put("to", e.Shrink.To)
	put("trigger", e.Shrink.Trigger)
	put("rate", e.Handling.Rate)
	put("to", e.Drying.To)
	for _, d := range e.Discounts {
		put("base", d.Base)
		put("per", d.Per)
	}
	return out
}

// What is quoted of a single figure is the line of the file that holds it.
func TestQuotedLineHoldsTheFigure(t *testing.T) {
	quoted := 0
	for _, e := range shipped(t) {
		for _, cell := range cells(e) {
			source, key := cell.source, cell.key
			text, line := quote(e, source)
			own := strings.TrimSpace(strings.Split(string(e.Text), "\n")[line-1])
			if text == "" || !strings.HasPrefix(own, key) || !strings.Contains(text, own) {
				t.Errorf("%s, %s: quoted %q, line %d is %q", e.ID, source, text, line, own)
			}
			quoted++
		}
	}
	if quoted < 20 {
		t.Errorf("only %d places were looked at", quoted)
	}
}

// A row of a table is quoted with its range: the figure alone says nothing.
func TestQuotedRowHasItsRange(t *testing.T) {
	rows := 0
	for _, e := range shipped(t) {
		for _, d := range e.Discounts {
			for _, b := range d.Rows {
				if b.Refuse {
					continue // it has no figure
				}
				text, _ := quote(e, b.Cell.Source)
				for _, bound := range []struct {
					has  bool
					text string
				}{{b.HasLow, b.Low.Written()}, {b.HasHigh, b.High.Written()}} {
					if bound.has && !strings.Contains(text, bound.text) {
						t.Errorf("%s, %s: %q does not say %s", e.ID, b.Cell.Source, text, bound.text)
					}
				}
				rows++
			}
		}
	}
	if rows == 0 {
		t.Error("no shipped edition has a table")
	}
}

func TestWhatIsNoPlaceIsNotQuoted(t *testing.T) {
	e := shipped(t)[0]
	for _, source := range []string{"", "scale 1, 2026-10-01T13:00:00Z", "7 CFR 810.104(b)", e.ID + ": no line", e.ID + ": x, line 0",
		e.ID + ": x, line 99999", e.ID + ": x, line -3", "other-edition: shrink.to, line 12", "the pure water formula"} {
		if text, line := quote(e, message.Words(source)); text != "" || line != 0 {
			t.Errorf("quote(%q) = %q, %d", source, text, line)
		}
	}
	if text, _ := quote(nil, message.Words("x: y, line 1")); text != "" {
		t.Errorf("quoted %q of no edition", text)
	}
}
