package entry_test

import (
	"strings"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/entrytest"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/schedules"
)

func editions(t *testing.T) *rates.Set {
	t.Helper()
	set, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	return set
}

func open(t *testing.T) *scalehouse.Desk { return entrytest.Open(t, "lb", editions(t)) }

// form is a form over a load, or over none, with texts: field, text, field, text.
func form(t *testing.T, d *scalehouse.Desk, l *load.Load, texts ...string) *entry.Form {
	t.Helper()
	f := entry.New(office.NewEntering(t.Context(), d), entry.Start{Book: l, Reason: func(string) string { return "read from the indicator" }})
	for i := 0; i < len(texts); i += 2 {
		f.Set(texts[i], texts[i+1])
	}
	return f
}

// doubted is a load whose bench test stops the ticket.
func doubted() *load.Load {
	percent := quantity.Of("18.9", quantity.Percent)
	return &load.Load{ID: "L1", Phase: load.OnYard, Details: load.Details{Direction: load.Inbound, Commodity: "corn", Day: quantity.MustDate("2025-10-14")},
		Sample: load.Sample{
			Tester: "Tess Lind", Moisture: &load.Moisture{Percent: percent, Method: "dial and chart"},
			Flags: []load.Flag{load.OldFlag("cold: The sample was at 35 °F.")}, Stops: []load.Stop{{Code: "cold", Sentence: message.OldWords("The sample was at 35 °F.")}},
		}}
}

// The warnings about a test go with its moisture, typed again or taken away, and stay with every
// other change of the sample.
func TestDoubtsGoWithTheirMoisture(t *testing.T) {
	d := open(t)
	for _, c := range []struct {
		field, text string
		stops       int
		tester      string
	}{
		{"moisture", "15.2", 0, entrytest.Manager}, {"moisture", "", 0, "Tess Lind"},
		{"moisture", "15,2", 1, "Tess Lind"}, {"bcfm", "2.1", 1, "Tess Lind"}, {"number", "12", 1, "Tess Lind"},
	} {
		l := form(t, d, doubted(), c.field, c.text).Tried().Load
		if got := len(entry.Stops(l, d.Profile())); got != c.stops || len(l.Sample.Flags) != c.stops || l.Sample.Tester != c.tester {
			t.Errorf("%s %q leaves %d stops, %d flags, tested by %s", c.field, c.text, got, len(l.Sample.Flags), l.Sample.Tester)
		}
	}
}

// A stop is let through by its code, unless it is final; a flag stops only where the elevator says
// so.
func TestStops(t *testing.T) {
	ours := elevator.Profile{StopOn: []string{"cold"}}
	l := doubted()
	if got := entry.Stops(l, ours); len(got) != 2 || got[0].Refusal().Key() == got[1].Refusal().Key() || got[0].Refusal().Args()[1] != "cold" || got[1].Refusal().Args()[1] != "cold" {
		t.Errorf("stops %+v", got)
	}
	l.Accepted = []load.AcceptedLimit{{Accepted: load.Accepted{Limit: "cold"}}}
	if got := entry.Stops(l, ours); len(got) != 0 {
		t.Errorf("let through, and still %+v", got)
	}
	l.Sample.Stops[0].Final = true
	if got := entry.Stops(l, ours); len(got) != 1 || !got[0].Refusal().Equal(got[0].Sentence) {
		t.Errorf("a final stop was let through: %+v", got)
	}
}

// Why there are no rates is said beside the commodity, also while other things are
// missing and while a price or a result is typed.
func TestNoRatesAreSaidBesideTheCommodity(t *testing.T) {
	d := open(t)
	for _, texts := range [][]string{
		{"commodity", "oats"}, {"commodity", "oats", "moisture", "12"}, {"commodity", "corn", "day", "1999-01-02"}, {"commodity", "corn", "schedule", "none such"},
	} {
		r := form(t, d, nil, texts...).Tried().Messages["commodity"]
		if r.Severity != entry.Stop || !strings.HasPrefix(r.Text.String(), "no rates are in force for ") {
			t.Errorf("%v: %+v", texts, r)
		}
	}
	out := entry.New(office.NewEntering(t.Context(), d), entry.Start{Direction: load.Outbound})
	out.Set("commodity", "oats")
	if r, said := out.Tried().Messages["commodity"]; said {
		t.Errorf("grain that leaves is settled under no rates: %+v", r)
	}
}

// Facts hold what was typed and could be read, and nothing else.
func TestFactsAreWhatWasTyped(t *testing.T) {
	d := open(t)
	f := form(t, d, doubted(), "gross", "52300", "bin", "P9")
	if facts := f.Facts(); facts.Details != nil || facts.Sample != nil || len(facts.Weighed) != 1 {
		t.Errorf("facts %+v", facts)
	}
	if field, err := f.FirstRefused(); field != "bin" || !errortest.NotFound("B3", "P1").Met(err) {
		t.Errorf("refused %s: %v", field, err)
	}
	if f := form(t, d, doubted()); !f.Facts().IsEmpty() || f.Opening().IsEmpty() {
		t.Error("a form without texts has facts")
	}
	if _, err := form(t, d, doubted(), "garlic", "3").FirstRefused(); !errortest.Invalid("Corn", "garlic").Met(err) {
		t.Errorf("garlic of corn: %v", err)
	}
}

// The limit of a weight and its decimals follow the scale.
func TestAWeightFollowsItsScale(t *testing.T) {
	d := open(t)
	for _, c := range []struct {
		scale, typed string
		want         errortest.Want
	}{
		{"1", "1000", errortest.Want{}}, {"1", "1000.5", errortest.Invalid()}, {"small", "1000.5", errortest.Want{}}, {"small", "1000.25", errortest.Invalid("1,000.25 lb")},
		{"small", "2101", errortest.Invalid()}, {"9", "1000", errortest.NotFound("9")},
	} {
		_, err := form(t, d, nil, "scale", c.scale, "gross", c.typed).FirstRefused()
		if !c.want.Met(err) {
			t.Errorf("%s on scale %s: %v, want %v", c.typed, c.scale, err, c.want)
		}
	}
}

// A load that is in no book is read by the same parsers; all that is wrong is
// named by its field, in order.
func TestTrial(t *testing.T) {
	set := editions(t)
	e, err := set.On("main", "corn", quantity.MustDate("2025-10-14"))
	if err != nil {
		t.Fatal(err)
	}
	facts, faults := entry.Trial{Edition: e, Source: message.New("as given")}.Read(map[string]string{"net": "28,000", "moisture": "15.2", "price": "$4.12", "test-weight": "54.2", "musty": "y", "bcfm": " "})
	if len(faults) > 0 || len(facts.Drafts) != 1 || facts.Price.Amount.String() != "$4.12/bu" || len(facts.Findings) != 2 {
		t.Errorf("facts %+v, faults %v", facts, faults)
	}
	_, faults = entry.Trial{Edition: e, Needed: []string{"gross", "tare", "moisture"}}.Read(map[string]string{"gross": "52,30", "moisture": "152", "price": "4,12", "musty": "perhaps", "garlic": "3"})
	var fields []string
	for _, f := range faults {
		fields = append(fields, f.Field)
	}
	if got := strings.Join(fields, " "); got != "gross tare moisture price musty garlic" {
		t.Errorf("faults at %s: %v", got, faults)
	}
	if _, faults := (entry.Trial{Edition: e}).Read(map[string]string{"net": "0"}); len(faults) != 1 {
		t.Errorf("a load of nothing: %v", faults)
	}
}

// One test at the bench: figures by method, temperatures in either scale.
func TestBenchTest(t *testing.T) {
	begun := moisture.Reading{Method: meter.ByDial}
	r, faults := entry.Test{Begun: begun, Degrees: quantity.Fahrenheit}.Read(map[string]string{"dial": "70.5", "mass": "250", "temperature": "18 °c", "room": "68", "dryer": "yes"})
	if len(faults) > 0 || r.Dial.String() != "70.5 div" && r.Dial.Figure() != "70.5" || r.Sample.Unit() != quantity.Celsius || r.Room.Unit() != quantity.Fahrenheit || !r.FromDryer {
		t.Errorf("reading %+v, faults %v", r, faults)
	}
	_, faults = entry.Test{Begun: begun, Needed: []string{"dial"}}.Read(map[string]string{"mass": "x", "room": "68"})
	if len(faults) != 3 || faults[0].Field != "mass" || faults[1].Field != "dial" || faults[2].Field != "room" {
		t.Errorf("faults %v", faults)
	}
	if r, _ := (entry.Test{Begun: moisture.Reading{Method: meter.Typed}}).Read(map[string]string{"percent": "17.1", "reason": " certificate ", "room": "x"}); r.Reason != "certificate" || r.Percent.Figure() != "17.1" {
		t.Errorf("typed %+v", r)
	}
}

// A share is typed as a fraction or in percent, and is above zero.
func TestParseShare(t *testing.T) {
	tests := []struct {
		text, parts, of string
		wrong           errortest.Want
	}{
		{"1/3", "1", "3", errortest.Want{}},
		{" 2 / 3 ", "2", "3", errortest.Want{}},
		{"33.5", "33.5", "100", errortest.Want{}},
		{"33.5%", "33.5", "100", errortest.Want{}},
		{"", "", "", errortest.Invalid()},
		{"half", "", "", errortest.Invalid()},
		{"0", "", "", errortest.Invalid()},
		{"1/0", "", "", errortest.Invalid()},
		{"1/2/3", "", "", errortest.Invalid()},
	}
	for _, tt := range tests {
		parts, of, err := entry.ParseShare("Share", tt.text)
		switch {
		case !tt.wrong.Met(err):
			t.Errorf("%q says %v, want %v", tt.text, err, tt.wrong)
		case err == nil && (parts.Figure() != tt.parts || of.Figure() != tt.of):
			t.Errorf("%q is %s of %s, %v", tt.text, parts.Figure(), of.Figure(), err)
		}
	}
}

// A day is called by its name in any language of the program, whichever the house speaks.
func TestDaysByName(t *testing.T) {
	today := quantity.MustDate("2026-10-01")
	for text, want := range map[string]string{
		"today": "2026-10-01", " Yesterday ": "2026-09-30", "aujourd'hui": "2026-10-01", "hier": "2026-09-30", "hoy": "2026-10-01", "AYER": "2026-09-30", "2026-01-05": "2026-01-05",
	} {
		if got, err := entry.ParseDay("Day", text, today); err != nil || got.String() != want {
			t.Errorf("%q: %s, %v", text, got, err)
		}
	}
	for _, text := range []string{"tomorrow", "demain", "01/05/2026"} {
		if got, err := entry.ParseDay("Day", text, today); err == nil {
			t.Errorf("%q is taken as %s", text, got)
		}
	}
}
