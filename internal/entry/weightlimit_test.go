package entry_test

import (
	"errors"
	"slices"
	"testing"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/imports"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalelink"
)

// A weight has two limits, each the same on every way in: what the scale may show, for weights of
// the scale, and what no scale weighs, for those from elsewhere. The scale has divisions of 20 lb
// and a capacity of 120,000 lb.
func TestWeightHasOneLimitOnEveryWay(t *testing.T) {
	d := open(t)
	scale := d.Profile().Scales[0]
	id, err := scalehouse.OpenLoad(t.Context(), d, *form(t, d, nil, "grower", "103", "commodity", "corn", "truck", "7").Facts().Details)
	if err != nil {
		t.Fatal(err)
	}
	linked := scalelink.Scale{Name: scale.ID, Capacity: scale.Capacity, Division: scale.Division}
	onScale := map[string]func(text string) error{
		"typed": func(text string) error {
			_, err := entry.ParseScaleWeight("Gross", text, scale)
			return err
		},
		"window and terminal": func(text string) error { return form(t, d, nil, "gross", text).Tried().Messages["gross"].Err },
		"indicator": func(text string) error {
			return linked.Accept(scalelink.Reading{Weight: quantity.Of(text, quantity.Lb), State: scalelink.Stable, Mode: scalelink.Gross})
		},
		"act": func(text string) error {
			return scalehouse.Weigh(t.Context(), d, id, load.Weighing{Which: load.Gross, Weight: quantity.Of(text, quantity.Lb), Source: load.ByHand, Reason: "read from the indicator", Scale: scale.ID})
		},
	}
	elsewhere := map[string]func(text string) error{
		"typed": func(text string) error {
			_, err := entry.ParseWeight("Gross", text, quantity.Lb)
			return err
		},
		"form of a past load": func(text string) error {
			f := entry.New(office.NewEntering(t.Context(), d), entry.Start{Past: true})
			f.Set("gross", text)
			return f.Refused()["gross"]
		},
		"list": func(text string) error { return refusedInList(t, d, text) },
		"plate": func(text string) error {
			_, err := entry.ParsePlate("Capacity", text, quantity.Lb)
			return err
		},
		"log of the scale": func(text string) error {
			_, err := entry.Shown("Shown", scale, 0).Parse(text)
			return err
		},
	}
	for _, c := range []struct {
		text            string
		scale, anywhere bool // whether it is taken
	}{
		{"126000", true, true}, {"126020", false, true}, {"125990", false, true},
		{"9999999", false, true}, {"10000000", false, false}, {"-20", false, false},
	} {
		for way, refusal := range onScale {
			if err := refusal(c.text); (err == nil) != c.scale || err != nil && way != "indicator" && !errors.Is(err, message.Invalid) {
				t.Errorf("%s lb of the scale, %s: %v", c.text, way, err)
			}
		}
		for way, refusal := range elsewhere {
			if err := refusal(c.text); (err == nil) != c.anywhere || err != nil && !errors.Is(err, message.Invalid) {
				t.Errorf("%s lb from elsewhere, %s: %v", c.text, way, err)
			}
		}
	}
}

// refusedInList is why a list of past loads is refused for a gross weight.
func refusedInList(t *testing.T, d *scalehouse.Desk, gross string) error {
	t.Helper()
	list, wrong := imports.Read(imports.Loads, []byte("day,commodity,grower,truck,gross,tare,moisture\n2025-10-14,corn,103,7,"+gross+",24300,15.2\n"),
		imports.Defaults{House: office.NewEntering(t.Context(), d), Name: "old.csv"})
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	problems := list.Problems()
	if i := slices.IndexFunc(problems, func(p imports.Problem) bool { return p.Column == "gross" }); i >= 0 {
		return message.Invalid.Errorf("%s", problems[i].Reason)
	}
	return nil
}
