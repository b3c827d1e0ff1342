package terminal

import (
	"errors"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
)

var commaSigns = message.Figures{Group: "\u202f", Decimal: ",", Space: "\u00a0", MoneyAfter: true}

const (
	lots   = "NAME=WEIGHT,MOISTURE[,TEST-WEIGHT]"
	policy = "corn:count=2,spread=0.4,near=0.5,near-count=3,drop=spoiled"
	posted = "corn:mass=250,moisture=8..20,sample=40F..100F"
	scales = "1=20lb,120000lb"
)

func TestListsTypedWithADecimalComma(t *testing.T) {
	for _, c := range []struct{ place, typed, want string }{
		{lots, "B1=30000;16,8;55", "B1=30000,16.8,55"},
		{lots, "B1=30 000;16,8", "B1=30000,16.8"},
		{lots, "B1=30000,16.8,55", "B1=30000,16.8,55"},
		{lots, "B1=30000lb,16,8 %,55", "B1=30000lb,16.8 %,55"},
		{lots, "B1=30000,16", "B1=30000,16"},
		{policy, "corn:count=2,spread=0,4,near=0,5,drop=spoiled", "corn:count=2,spread=0.4,near=0.5,drop=spoiled"},
		{policy, "every:spread=0,4", "every:spread=0.4"},
		{posted, "corn:moisture=8,5..20,5,sample=4,5C..38C", "corn:moisture=8.5..20.5,sample=4.5C..38C"},
		{scales, "1=20,120000", "1=20,120000"},
		{scales, "A=0,5kg;60 000kg", "A=0.5kg,60000kg"},
	} {
		got, err := figureLists[c.place].listWithPoint("--lot", c.typed, commaSigns)
		if err != nil || got != c.want {
			t.Errorf("%q: %q, %v; want %q", c.typed, got, err, c.want)
		}
		if plain, err := figureLists[c.place].listWithPoint("--lot", c.want, message.Figures{}); err != nil || plain != c.want {
			t.Errorf("with a decimal point %q became %q, %v", c.want, plain, err)
		}
	}
}

// TestListOfTwoReadingsIsRefused: both readings are said, with semicolons as they may be typed.
func TestListOfTwoReadingsIsRefused(t *testing.T) {
	for typed, readings := range map[string][2]string{
		"B1=30000,16,55":   {"B1=30000;16;55", "B1=30000;16,55"},
		"B1=30000,16,8,55": {"B1=30000;16;8,55", "B1=30000;16,8;55"},
		"B1=30,000,16.8":   {"B1=30;000;16.8", "B1=30,000;16.8"},
	} {
		_, err := figureLists[lots].listWithPoint("--lot", typed, commaSigns)
		if want := errortest.Invalid(readings[:]...); !want.Met(err) {
			t.Errorf("%q: %v; want %v", typed, err, want)
		}
	}
	if _, err := figureLists[lots].listWithPoint("--lot", "B1=30,000;16,8", commaSigns); !errors.Is(err, message.Invalid) {
		t.Errorf("a weight of two readings: %v", err)
	}
}
