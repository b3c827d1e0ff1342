package message

import (
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"
)

// pounds is an amount for tests.
type pounds string

func (p pounds) String() string { return string(p) }

func (p pounds) Localize(signs Figures) string {
	out, _ := signs.Rewrite(string(p))
	return out
}

// crop is a thing with a name of its own.
type crop string

func (c crop) Message() Text { return Words(string(c)) }

func french(t *testing.T) *Printer {
	t.Helper()
	c, err := ReadCatalog([]byte(`{"language": "fr", "name": "Français",
		"figures": {"group": "\u202f", "decimal": ",", "space": "\u00a0", "moneyAfter": true},
		"texts": {
			"Corn": "Maïs", "Void": "Annulé", "screen|Void": "Nul", "the scale is silent.": "la bascule se tait.",
			"%s of %v, %s": "%[2]v, %[3]s de %[1]s",
			"load %v: %s": "chargement %v : %s",
			"there is no bin \"%v\"": "aucun silo « %v »",
			"%d tests in %s": {"one": "une analyse en %[2]s", "other": "%d analyses en %s"},
			"%d %% of it": "%d %% du tout",
			" and ": " et "}}`))
	if err != nil {
		t.Fatal(err)
	}
	return NewPrinter(c)
}

func TestTextsInTwoLanguages(t *testing.T) {
	p := french(t)
	for _, one := range []struct {
		text            Text
		english, french string
	}{
		{Text{}, "", ""},
		{Words("Corn"), "Corn", "Maïs"},
		{Words("corn"), "corn", "maïs"},
		{Words("screen|Void"), "Void", "Nul"},
		{New("screen|%d left", 3), "3 left", "3 left"},
		{Words("5 % of it"), "5 % of it", "5 % of it"},
		{New("%d %% of it", 5), "5 % of it", "5 % du tout"},
		{New("%s of %v, %s", crop("Corn"), "Corn", pounds("47,700.5 lb")), "Corn of Corn, 47,700.5 lb", "Corn, 47\u202f700,5\u00a0lb de Maïs"},
		{New("%s of %s, %s", "Corn", Own("Void"), "$62.58"), "Corn of Void, $62.58", "Void, 62,58\u00a0$ de Maïs"},
		{New("there is no bin %q", "Corn"), `there is no bin "Corn"`, "aucun silo « Corn »"},
		{Count(1, "%d test in %s", "%d tests in %s", crop("Corn")), "1 test in Corn", "une analyse en Maïs"},
		{Count(2, "%d test in %s", "%d tests in %s", crop("Corn")), "2 tests in Corn", "2 analyses en Maïs"},
		{Count(0, "%d test in %s", "%d tests in %s", crop("Corn")), "0 tests in Corn", "une analyse en Maïs"},
		{List(" and ", crop("Corn"), Own("Void"), "", Text{}), "Corn and Void", "Maïs et Void"},
		{Names(", ", []string{"Corn", "Void"}), "Corn, Void", "Corn, Void"},
		{Texts("; ", []crop{"Corn", "Void"}), "Corn; Void", "Maïs; Annulé"},
		{New("nobody says this of %s", crop("Corn")), "nobody says this of Corn", "nobody says this of Maïs"},
	} {
		if got := one.text.String(); got != one.english {
			t.Errorf("in English %q, want %q", got, one.english)
		}
		if got := p.Text(one.text); got != one.french {
			t.Errorf("in French %q, want %q", got, one.french)
		}
		if got := (*Printer)(nil).Text(one.text); got != one.english {
			t.Errorf("without a language %q, want %q", got, one.english)
		}
	}
	if got := p.Missing(); !slices.Equal(got, []string{"nobody says this of %s", "screen|%d left"}) {
		t.Errorf("missing are %q", got)
	}
}

// A name is no word of the program; a figure is one in every language; a list of nothing is
// nothing.
func TestNamesFiguresAndEmptyLists(t *testing.T) {
	p := french(t)
	for _, c := range []struct {
		text            Text
		english, french string
	}{
		{Name("Void"), "Void", "Void"},
		{List("", Digits("1,624.5")), "1,624.5", "1\u202f624,5"},
		{List(" and ", Name("Corn"), Words("Corn")), "Corn and Corn", "Corn et Maïs"},
	} {
		if c.text.String() != c.english || p.Text(c.text) != c.french || c.text.IsZero() {
			t.Errorf("%q, %q; want %q, %q", c.text, p.Text(c.text), c.english, c.french)
		}
	}
	for _, nothing := range []Text{{}, List(", ", Text{}, ""), List(" ", List("; "))} {
		if !nothing.IsZero() || nothing.String() != "" {
			t.Errorf("%q is not empty", nothing)
		}
	}
}

func TestErrorsAreTextsAndErrors(t *testing.T) {
	p := french(t)
	inner := Device.Errorf("the scale is silent")
	outer := Errorf("load %s: %w", "L1", inner)
	if outer.Error() != "load L1: the scale is silent" || p.Error(outer) != "chargement L1 : la bascule se tait" {
		t.Errorf("%q, %q", outer, p.Error(outer))
	}
	if !errors.Is(outer, inner) || !errors.Is(outer, Device) || errors.Is(outer, Storage) || KindOf(outer) != Device {
		t.Error("the wrapped error, or its kind, is lost")
	}
	if refused := Refused.Errorf("load %s: %w", "L1", inner); !errors.Is(refused, Refused) || !errors.Is(refused, Device) || KindOf(refused) != Refused {
		t.Error("an error of a kind hides the kind of what it wraps")
	}
	foreign := Errorf("load %v: %w", "Corn", io.EOF)
	if !errors.Is(foreign, io.EOF) || foreign.Error() != "load Corn: EOF" || p.Error(foreign) != "chargement Corn : EOF" {
		t.Errorf("%q, %q", foreign, p.Error(foreign))
	}
	var typed *Error
	if !errors.As(fmt.Errorf("outside: %w", outer), &typed) || typed.Message().Key() != "load %s: %w" {
		t.Error("errors.As does not find the error")
	}
	if KindOf(nil) != "" || KindOf(io.EOF) != "" || p.Error(nil) != "" {
		t.Error("no error has a kind or words")
	}
}

// Every line of joined errors is translated separately.
func TestJoinedErrors(t *testing.T) {
	both := errors.Join(Errorf("load %s: %s", Own("L1"), crop("Void")), errors.New("Corn"))
	if got := french(t).Error(both); got != "chargement L1 : Annulé\nMaïs" {
		t.Errorf("%q", got)
	}
}

func TestWordsAreKeptInEnglish(t *testing.T) {
	kept, err := Count(2, "%d test in %s", "%d tests in %s", crop("Corn")).MarshalText()
	var read Text
	if err != nil || string(kept) != "2 tests in Corn" || read.UnmarshalText(kept) != nil || !read.Equal(Words("2 tests in Corn")) {
		t.Errorf("%q, %v, %v", kept, err, read)
	}
}

func TestFiguresOfALanguage(t *testing.T) {
	signs := Figures{Group: "_", Decimal: ",", Space: "~", MoneyAfter: true}
	for english, want := range map[string]string{
		"47,700 lb": "47_700~lb", "12.6 %": "12,6~%", "$62.58": "62,58~$", "-$1,062.50": "-1_062,50~$", "$4.12/bu": "4,12~$/bu",
		"5,879.881656… lb": "5_879,881656…~lb", "0.5": "0,5", "47,700": "47_700", "65 °F": "65~°F", "0.045 %/pt": "0,045~%/pt",
	} {
		if got, is := signs.Rewrite(english); got != want || !is {
			t.Errorf("%s is %s, want %s", english, got, want)
		}
		if got, _ := (Figures{}).Rewrite(english); got != english {
			t.Errorf("in English %s is %s", english, got)
		}
	}
	for _, text := range []string{"", "1042", "2026-08-01", "10:30", "192.0.2.10", "4,77", "lb", "12 Rail Street", "47,700 lb net"} {
		if got, _ := signs.Rewrite(text); got != text {
			t.Errorf("%q becomes %q", text, got)
		}
	}
}

func TestWrongCatalogs(t *testing.T) {
	for wrong, part := range map[string]string{
		`[]`:                                     "no catalog",
		`{"language": "nobody's"}`:               "language",
		`{"language": "fr", "texts": {"a": ""}}`: "no words",
		`{"language": "fr", "texts": {"a %s": "a"}}`:                            "gaps",
		`{"language": "fr", "texts": {"a": 3}}`:                                 "neither",
		`{"language": "fr", "texts": {"a": {"one": "a"}}}`:                      "other",
		`{"language": "fr", "texts": {"a %q": "b %q", "a \"%v\"": "b \"%v\""}}`: "one key",
	} {
		if _, err := ReadCatalog([]byte(wrong)); err == nil || !strings.Contains(err.Error(), part) {
			t.Errorf("%s gives %v, want %s", wrong, err, part)
		}
	}
}

func FuzzFormats(f *testing.F) {
	for _, format := range []string{"", "%", "%%", "%s %q", "%[2]s of %[1]d", "100 %", "%[9]v", "%.20q"} {
		f.Add(format)
	}
	c, err := ReadCatalog([]byte(`{"language": "fr", "texts": {"a": "b"}}`))
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, format string) {
		NewPrinter(c).Say(format, "one", 2)
	})
}

// A page of help is not searched for texts within it.
func TestWholeLooksForNothingInside(t *testing.T) {
	c, err := ReadCatalog([]byte(`{"language": "fr", "texts": {"Corn": "Maïs"}}`))
	if err != nil {
		t.Fatal(err)
	}
	p := NewPrinter(c)
	if got := p.Whole("Corn"); got != "Maïs" {
		t.Errorf("%q", got)
	}
	if got := p.Whole("Corn, a page of it"); got != "Corn, a page of it" {
		t.Errorf("%q", got)
	}
}
