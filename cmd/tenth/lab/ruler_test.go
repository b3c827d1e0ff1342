package lab

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/quantity"
)

func TestDrawRuler(t *testing.T) {
	percent := func(text string) quantity.Amount { return quantity.Of(text, quantity.Percent) }
	r := moisture.NewRuler(moisture.BandOf(percent("18.2"), quantity.Of("0.5", quantity.Point)), []moisture.Limit{{Name: message.Words("shrink-to"), At: percent("15.0")}, {Name: message.Words("drying trigger"), At: percent("19.0")}})
	want := strings.TrimPrefix(`
14        15        16        17        18        19        20
|.........|.........|.........|......[====*====]..|.........|
          ^ shrink-to 15.0 %
                            drying trigger 19.0 % ^
                              read 18.2 % ^
`, "\n")
	for _, width := range []int{61, 79} { // six points of ten letters either way
		if got := drawRuler(r, width, nil); got != want {
			t.Errorf("drawn\n%s\nwant\n%s", got, want)
		}
	}
}

// Whatever is on the ruler, it is drawn.
func TestDrawRulerOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		percent := func(name string) quantity.Amount {
			return quantity.Int(rapid.Int64Range(1, 9999).Draw(t, name), quantity.Percent).Div(quantity.Int(100, quantity.Plain))
		}
		var limits []moisture.Limit
		for range rapid.IntRange(0, 5).Draw(t, "limits") {
			limits = append(limits, moisture.Limit{Name: message.Words("limit"), At: percent("limit")})
		}
		tolerance := quantity.Int(rapid.Int64Range(1, 150).Draw(t, "tolerance"), quantity.Point).Div(quantity.Int(100, quantity.Plain))
		r := moisture.NewRuler(moisture.BandOf(percent("reading"), tolerance), limits)
		if drawRuler(r, 72, nil) == "" {
			t.Fatal("nothing drawn")
		}
		for _, m := range r.Marks {
			if at := r.MarkPlace(m); at < 0 || at > 1000 {
				t.Fatalf("mark %+v is drawn at %d", m, at)
			}
		}
	})
	if got := drawRuler(moisture.Ruler{}, 60, nil); got != "" {
		t.Errorf("an empty ruler is drawn as %q", got)
	}
}
