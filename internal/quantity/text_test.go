package quantity

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestAmountsPrint(t *testing.T) {
	third := Int(1, Lb).Div(Int(3, Plain))
	for _, c := range []struct{ got, want string }{
		{Int(52300, Lb).String(), "52,300 lb"},
		{Int(-1234567, Lb).String(), "-1,234,567 lb"},
		{Int(999, Lb).String(), "999 lb"},
		{Int(-999, Lb).String(), "-999 lb"},
		{Of("0.045", DollarsPerBu.Per(Point)).String(), "$0.045/bu/pt"},
		{Of("-0.39", Dollar).String(), "-$0.39"},
		{Of("1234.5", Dollar).String(), "$1,234.50"},
		{Int(5, Plain).String(), "5"},
		{third.String(), "0.333333… lb"},
		{third.Neg().String(), "-0.333333… lb"},
		{Int(1, Lb).Div(Int(8, Plain)).String(), "0.125 lb"},
		{Int(84, Lb).Div(Int(2, Plain)).String(), "42 lb"},
		{Int(10000, Lb).Div(Int(3, Plain)).Mul(Int(3, Plain)).String(), "10,000 lb"},
		{Of("1.5", Bushel).FixedString(2), "1.50 bu"},
		{Of("1234.5", Dollar).FixedString(2), "$1,234.50"},
		{Of("-0.3", Dollar).FixedString(2), "-$0.30"},
		{Of("1.555", Bushel).FixedString(2), "1.555 bu"}, // never cut
		{third.FixedString(2), "0.333333… lb"},
		{Of("15.0", Percent).Written(), "15.0 %"},
		{Of("15", Percent).Written(), "15 %"},
		{Of("1500", Lb).Written(), "1,500 lb"},
		{third.Written(), "0.333333… lb"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

// TestStoredAmountsComeBack: text for the book and for JSON loses nothing.
func TestStoredAmountsComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawFraction(t, "figure", drawUnit(t))
		text, err := a.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		var back Amount
		if err := back.UnmarshalText(text); err != nil || !back.Equal(a) {
			t.Fatalf("%s was stored as %q and came back as %s, %v", a, text, back, err)
		}
		again, _ := back.MarshalText()
		if string(again) != string(text) {
			t.Fatalf("%q came back as %q", text, again)
		}
	})
}

// TestALongSettlementCanBeStored: exact figures grow a few digits with every
// step; fifty steps of them still fit.
func TestALongSettlementCanBeStored(t *testing.T) {
	a := Of("52300.25", Lb)
	for i := range 50 {
		a = a.Mul(Of("1.0125", Plain)).Div(Int(int64(7+i), Plain)).Add(Of("0.01", Lb))
	}
	text, _ := a.MarshalText()
	var back Amount
	if err := back.UnmarshalText(text); err != nil || !back.Equal(a) {
		t.Errorf("%d characters: %v", len(text), err)
	}
}

func TestStoredTextIsChecked(t *testing.T) {
	for text, want := range map[string]string{
		"52300 lb":                        "52,300 lb",
		"496850/84.5 lb":                  "5,879.881656… lb",
		"5":                               "5",
		"-3/4 %":                          "-0.75 %",
		"":                                "is not a stored figure",
		"lb":                              "is not a stored figure",
		"1e999999 lb":                     "is not a stored figure",
		"1E5 lb":                          "is not a stored figure",
		"5/0 lb":                          "the part below the line is not a number above zero",
		"5/-2 lb":                         "the part below the line is not a number above zero",
		"5/ lb":                           "the part below the line is not a number above zero",
		"5/2/2 lb":                        "the part below the line is not a number above zero",
		"5 stone":                         `"stone" is not a unit`,
		"5 lb ":                           "5 lb",
		"0x10 lb":                         "is not a stored figure",
		"1_000 lb":                        "is not a stored figure",
		strings.Repeat("9", 5000) + " lb": "is not a stored figure",
	} {
		var a Amount
		err := a.UnmarshalText([]byte(text))
		said := a.String()
		if err != nil {
			said = err.Error()
		}
		if err == nil && said != want || !strings.Contains(said, want) {
			t.Errorf("%.30q: %s, want %s", text, said, want)
		}
	}
}

// FuzzStoredAmount: what is taken is stored again as the same amount.
func FuzzStoredAmount(f *testing.F) {
	for _, text := range []string{"52300 lb", "496850/84.5 lb", "1e9 lb", "5/0", "-1/3 $/bu/pt", "5 lb·%", "", " ", "/"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var a, back Amount
		if a.UnmarshalText([]byte(text)) != nil {
			return
		}
		again, err := a.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if err := back.UnmarshalText(again); err != nil || !back.Equal(a) {
			t.Errorf("%q is %s, stored as %q, and came back as %s, %v", text, a, again, back, err)
		}
	})
}
