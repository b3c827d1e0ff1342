package moisture

import (
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

func kept(number, taken, rule string) Sample {
	keep, _ := RetentionByID(law.First(), rule)
	return Sample{Number: number, Crop: "corn", Taken: quantity.MustDate(taken), By: "A. Tester", Probes: []Probe{{Place: "left front"}}, Place: "shelf B-3", Keep: keep}
}

func TestDiscardDates(t *testing.T) {
	for _, c := range []struct{ rule, taken, through, from string }{
		{"us-inbound-truck", "2025-10-31", "2025-11-03", "2025-11-04"},
		{"canada", "2025-10-31", "2025-11-07", "2025-11-08"},
		{"canada", "2025-12-28", "2026-01-04", "2026-01-05"},
		{"montana", "2025-10-31", "2025-12-30", "2025-12-31"},
		{"montana", "2024-01-15", "2024-03-15", "2024-03-16"}, // over 29 February
	} {
		s := kept("1", c.taken, c.rule)
		if s.KeepThrough().String() != c.through || s.DiscardFrom().String() != c.from {
			t.Errorf("%s from %s: through %s, discard from %s; want %s, %s", c.rule, c.taken, s.KeepThrough(), s.DiscardFrom(), c.through, c.from)
		}
	}
	if _, ok := RetentionByID(law.First(), "nowhere"); ok {
		t.Error("a rule of nowhere was found")
	}
}

func TestDueOn(t *testing.T) {
	held, gone, none := kept("5", "2025-10-01", "canada"), kept("6", "2025-10-01", "canada"), kept("7", "2025-10-01", "canada")
	held.Held, gone.Discarded, none.Place = message.OldWords("dispute on ticket 1042"), quantity.MustDate("2025-10-09"), ""
	samples := []Sample{kept("3", "2025-10-24", "canada"), kept("2", "2025-10-20", "us-inbound-truck"), kept("1", "2025-10-20", "us-inbound-truck"),
		kept("4", "2025-10-25", "canada"), held, gone, none, kept("8", "2025-10-20", "montana")}
	due := func(day string) string {
		var numbers []string
		for _, s := range samples {
			if s.DueOn(quantity.MustDate(day)) {
				numbers = append(numbers, s.Number)
			}
		}
		slices.Sort(numbers)
		return strings.Join(numbers, " ")
	}
	for day, want := range map[string]string{"2025-10-23": "", "2025-10-24": "1 2", "2025-10-31": "1 2", "2025-11-01": "1 2 3", "2025-11-02": "1 2 3 4", "2025-12-20": "1 2 3 4 8"} {
		if got := due(day); got != want {
			t.Errorf("on %s %q are due, want %q", day, got, want)
		}
	}
}

func TestSampleCheck(t *testing.T) {
	expectErrors(t, "good", kept("118", "2025-10-31", "canada").Check())
	expectErrors(t, "not retained", Sample{Number: "1", Crop: "corn", Taken: day, By: "A", Probes: []Probe{{Place: "rear"}}}.Check())
	expectErrors(t, "empty", Sample{}.Check(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid(), errortest.Invalid())
	noRule := kept("118", "2025-10-31", "nowhere")
	expectErrors(t, "no rule", noRule.Check(), errortest.Invalid("shelf B-3"))
	early := kept("118", "2025-10-31", "canada")
	early.Discarded, early.Held = quantity.MustDate("2025-11-07"), message.OldWords("dispute")
	expectErrors(t, "early", early.Check(), errortest.Invalid("2025-11-07", "7"), errortest.Invalid())
	early.Discarded, early.Held = quantity.MustDate("2025-11-08"), message.Kept{}
	expectErrors(t, "in time", early.Check())
}
