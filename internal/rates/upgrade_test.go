package rates_test

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/schedules"
)

// Every shipped edition becomes one of format 2 that differs in its head alone, and takes the place
// of the old one from its day on.
func TestUpgrade(t *testing.T) {
	shipped, err := schedules.Editions()
	if err != nil {
		t.Fatal(err)
	}
	day := quantity.MustDate("2027-06-01")
	for _, e := range shipped.All() {
		u := rates.Upgrade{ID: rates.NextID(e.ID) + "-two", From: day}
		text, chosen, err := u.Text(e)
		if err != nil {
			t.Fatal(e.ID, err)
		}
		made, err := rates.Read("made.toml", text)
		if err != nil {
			t.Fatal(e.ID, err)
		}
		want := rates.Format{Number: 2, LaterDry: rates.OnDry, AcceptedRefusal: rates.LastRow}
		if made.Format != want || made.ID != u.ID || made.Corrects != e.ID || made.From != day || !made.Until.IsZero() || len(chosen) != 3 {
			t.Errorf("%s: %+v %s %s %s, %v", e.ID, made.Format, made.ID, made.Corrects, made.From, chosen)
		}
		head := []string{"id", "from", "until", "corrects", "period", "format", "after_weight_discount", "accepted_refusal"}
		for _, change := range rates.Diff(e, made) {
			if _, key, _ := strings.Cut(change.Key, "."); !slices.Contains(head, key) {
				t.Errorf("%s: %s differs", e.ID, change.Key)
			}
		}
		if again, err := shipped.On(e.Schedule, e.Commodity.ID, day); err == nil {
			both, problems := rates.NewSet(append(shipped.All(), made)...)
			if now, err := both.On(e.Schedule, e.Commodity.ID, day); again == e && (len(problems) > 0 || err != nil || now != made) {
				t.Errorf("%s: on %s there is %v, %v %v", e.ID, day, now, err, problems)
			}
		}
	}
}

func TestUpgradeRefused(t *testing.T) {
	plain := fixture(t, "good/corn-plain.toml")
	if _, _, err := (rates.Upgrade{ID: "x", From: plain.From}).Text(plain); !errors.Is(err, message.Invalid) {
		t.Errorf("two on one day: %v", err)
	}
	text, _, err := rates.Upgrade{ID: "corn-two", From: plain.From.AddDays(1), LaterDry: rates.OnSettled, AcceptedRefusal: rates.BringsNothing}.Text(plain)
	if err != nil {
		t.Fatal(err)
	}
	two, err := rates.Read("two.toml", text)
	if err != nil || two.Format != (rates.Format{Number: 2, LaterDry: rates.OnSettled, AcceptedRefusal: rates.BringsNothing}) {
		t.Fatalf("%+v %v", two, err)
	}
	if _, _, err := (rates.Upgrade{ID: "x", From: two.From.AddDays(1)}).Text(two); !errors.Is(err, message.Refused) {
		t.Errorf("twice: %v", err)
	}
}

func TestNextID(t *testing.T) {
	for id, want := range map[string]string{"corn": "corn-b", "corn-b": "corn-c", "corn-main-2026": "corn-main-2026-b", "corn-z": "corn-z-b", "corn-a": "corn-a-b"} {
		if got := rates.NextID(id); got != want {
			t.Errorf("%s is followed by %s, want %s", id, got, want)
		}
	}
}

// Figures that load and can hardly be meant are looked at twice, each by one caution.
func TestUnlikelyFigures(t *testing.T) {
	plain := string(fixture(t, "good/corn-plain.toml").Text)
	for name, change := range map[string][2]string{
		"moisture to 5 %":      {`moisture = "0.1 half-up"`, `moisture = "5 half-up"`},
		"money to hundreds":    {`money = "0.01 half-up"`, `money = "100 up"`},
		"weight to a million":  {`weight = "1 half-up"`, `weight = "1000000 up"`},
		"issued after its day": {`issued = "`, `issued = "2099-01-01" # `},
	} {
		text := strings.Replace(plain, change[0], change[1], 1)
		if text == plain {
			t.Fatalf("%s: nothing changed", name)
		}
		e, err := rates.Read("t.toml", []byte(text))
		if err != nil {
			t.Fatal(name, err)
		}
		if c := e.Cautions(); len(c) != 1 {
			t.Errorf("%s: %v", name, c)
		}
	}
}
