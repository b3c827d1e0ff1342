package quantity

import (
	"strings"
	"tenthpoint/internal/message/errortest"
	"testing"

	"pgregory.net/rapid"
)

var (
	gross  = Field{Name: "Gross weight", Unit: Lb, Places: 0, Min: Zero(Lb), Max: Int(200000, Lb)}
	wet    = Field{Name: "Moisture", Unit: Percent, Places: 2, Min: Int(3, Percent), Max: Int(60, Percent)}
	spread = Field{Name: "Largest spread", Unit: Point, Places: 1, Min: Zero(Point), Max: Int(5, Point)}
	price  = Field{Name: "Price", Unit: DollarsPerBu, Places: 4, Min: Int(-1, DollarsPerBu), Max: Int(100, DollarsPerBu)}
	tested = Field{Name: "Probes", Unit: Plain, Places: 0, Min: Int(1, Plain), Max: Int(20, Plain)}
)

func TestFieldParse(t *testing.T) {
	for _, c := range []struct {
		field Field
		text  string
		want  string
	}{
		{gross, "52300", "52,300 lb"},
		{gross, " 52,300 lb ", "52,300 lb"},
		{gross, "+52300lb", "52,300 lb"},
		{gross, "100,000", "100,000 lb"},
		{gross, "52300.0", "52,300 lb"},
		{gross, "200000", "200,000 lb"},
		{gross, "0", "0 lb"},
		{gross, "-0", "0 lb"},
		{wet, "15.3", "15.3 %"},
		{wet, "15.34 %", "15.34 %"},
		{wet, "15.", "15 %"},
		{wet, "15.3400", "15.34 %"},
		{spread, ".5", "0.5 pt"},
		{spread, "0.5 %", "0.5 pt"},
		{price, "$4.15", "$4.15/bu"},
		{price, "$4.15/bu", "$4.15/bu"},
		{price, "4.15 $/bu", "$4.15/bu"},
		{price, "4.1525", "$4.1525/bu"},
		{price, "-$0.25/bu", "-$0.25/bu"},
		{price, "-0.25", "-$0.25/bu"},
		{tested, "5", "5"},
	} {
		got, err := c.field.Parse(c.text)
		if c.text == "$4.15" { // dollars alone are not dollars per bushel
			if !errortest.Invalid("Price", "\"$4.15\"", "$", "$/bu").Met(err) {
				t.Errorf("%q: %v", c.text, err)
			}
			continue
		}
		if err != nil || got.String() != c.want || got.Unit() != c.field.Unit {
			t.Errorf("%s %q: %s %v, want %s", c.field.Name, c.text, got, err, c.want)
		}
	}
}

func TestFieldRefusesInSentences(t *testing.T) {
	for _, c := range []struct {
		field Field
		text  string
		want  errortest.Want
	}{
		{gross, "", errortest.Invalid("Gross weight", "lb")},
		{tested, " \t ", errortest.Invalid("Probes", "plain numbers")},
		{wet, "wet", errortest.Invalid("Moisture", "\"wet\"")},
		{wet, "%", errortest.Invalid("Moisture", "\"%\"")},
		{wet, "-", errortest.Invalid("Moisture", "\"-\"")},
		{wet, ".", errortest.Invalid("Moisture", "\".\"")},
		{wet, "1-5", errortest.Invalid("Moisture", "\"1-5\"")},
		{wet, "15.3.1", errortest.Invalid("Moisture", "\"15.3.1\"")},
		{gross, "+-5", errortest.Invalid("Gross weight", "\"+-5\"")},
		{price, "-$-4", errortest.Invalid("Price", "\"-$-4\"")},
		{gross, "52.3 t", errortest.Invalid("Gross weight", "\"52.3 t\"", "t", "lb")},
		{gross, "52 %", errortest.Invalid("Gross weight", "\"52 %\"", "%", "lb")},
		{wet, "2 pt", errortest.Invalid("Moisture", "\"2 pt\"", "pt", "%")},
		{gross, "1e999999", errortest.Invalid("Gross weight", "\"1e999999\"", "\"e999999\"", "lb")},
		{gross, "1E5", errortest.Invalid("Gross weight", "\"1E5\"", "\"E5\"", "lb")},
		{gross, "0x10", errortest.Invalid("Gross weight", "\"0x10\"", "\"x10\"", "lb")},
		{gross, "1_000", errortest.Invalid("Gross weight", "\"1_000\"", "\"_000\"", "lb")},
		{gross, "NaN", errortest.Invalid("Gross weight", "\"NaN\"")},
		{gross, "52 300", errortest.Invalid("Gross weight", "\"52 300\"")},
		{gross, "52 300 lb", errortest.Invalid("Gross weight", "\"52 300 lb\"")},
		{gross, "1234567890123456", errortest.Invalid("Gross weight", "\"1234567890123456\"", "16", "15")},
		{gross, strings.Repeat("9", 61), errortest.Invalid("Gross weight", "\"99999999999999999999\"…")},
		{gross, strings.Repeat("$", 1<<20), errortest.Invalid("Gross weight", "\"$$$$$$$$$$$$$$$$$$$$\"…")},
		{gross, "52300.5", errortest.Invalid("Gross weight", "52,300.5 lb")},
		{wet, "15.345", errortest.Invalid("Moisture", "15.345 %", "2 decimals")},
		{spread, "0.55", errortest.Invalid("Largest spread", "0.55 pt", "one decimal")},
		{gross, "-1", errortest.Invalid("Gross weight", "-1 lb", "0 lb", "200,000 lb")},
		{gross, "200,001", errortest.Invalid("Gross weight", "200,001 lb", "0 lb", "200,000 lb")},
		{wet, "0", errortest.Invalid("Moisture", "0 %", "3 %", "60 %")},
		{wet, "15,300", errortest.Invalid("Moisture", "15,300 %", "3 %", "60 %")},
	} {
		got, err := c.field.Parse(c.text)
		if !c.want.Met(err) {
			t.Errorf("%s %.30q: %s\n%v\nwant\n%s", c.field.Name, c.text, got, err, c.want)
		}
	}
}

// TestCommasPartThousandsOrAreRefused: a comma anywhere else was meant for a
// decimal point, and a thousand times too much is worse than a question.
func TestCommasPartThousandsOrAreRefused(t *testing.T) {
	for text, want := range map[string]string{
		"1,234":       "1234",
		"12,345":      "12345",
		"-123,456":    "-123456",
		"1,234,567":   "1234567",
		"1,234.5":     "1234.5",
		"15,3":        "15.3",
		"15,30":       "15.30",
		"1234,567":    "1234.567",
		"0,300":       "0.300",
		"-0,300":      "-0.300",
		"-,300":       "-.300",
		",300":        ".300",
		"12,34,567":   "15.3",
		"1,234,5":     "15.3",
		"1,2345":      "1.2345",
		"1.5,3":       "15.3",
		"1,234.5,678": "15.3",
		"1,,234":      "15.3",
		"1,234,":      "15.3",
	} {
		got, err := dropThousands(text)
		if refused := strings.Contains(want, ".") && text != "1,234.5"; !refused {
			if err != nil || got != want {
				t.Errorf("%q: %q %v, want %q", text, got, err, want)
			}
			continue
		}
		if !errortest.Invalid(want).Met(err) {
			t.Errorf("%q: %q %v, want %q proposed", text, got, err, want)
		}
	}
}

func TestParseAmount(t *testing.T) {
	for text, want := range map[string]string{
		"15.5 %":        "15.5 %",
		"0.045 $/bu/pt": "$0.045/bu/pt",
		"$0.045/bu/pt":  "$0.045/bu/pt",
		"-$0.02/cwt":    "-$0.02/cwt",
		"56 lb/bu":      "56 lb/bu",
		"52,300 lb":     "52,300 lb",
		"1.4 %/pt":      "1.4 %/pt",
		"2 1/bu":        "2 1/bu",
		"15.5":          `"15.5" has no unit; write the figure and its unit, such as "15.5 %" or "0.045 $/bu/pt"`,
		"":              `"" is not a number; type digits, like 52300 or 15.3`,
		"% 15":          `"% 15" is not a number; type digits, like 52300 or 15.3`,
		"15,5 %":        `"15,5 %" has a comma that does not part thousands; write a decimal with a point, such as 15.5`,
		"15.5 percent":  `"15.5 percent": "percent" is not a unit; known units are $, %, L, bu, cfm, ct, cwt, d, dial, ft, g, gal, h, hL, kWh, kg, lb, m, ppb, ppm, pt, s, t, °C, °F`,
		"1e5 lb":        `"1e5 lb": "e5 lb" is not a unit; known units are $, %, L, bu, cfm, ct, cwt, d, dial, ft, g, gal, h, hL, kWh, kg, lb, m, ppb, ppm, pt, s, t, °C, °F`,
		"5 $/bu/":       `"5 $/bu/": "" is not a unit; known units are $, %, L, bu, cfm, ct, cwt, d, dial, ft, g, gal, h, hL, kWh, kg, lb, m, ppb, ppm, pt, s, t, °C, °F`,
		"1 lb/lb/lb/lb/lb/lb/lb/lb/lb/lb/lb/lb/lb": `"1 lb/lb/lb/lb/lb/lb/lb/lb/lb/lb/lb/lb/lb": "lb/lb/lb/lb/lb/lb/lb"… has more parts than any unit; known units are $, %, L, bu, cfm, ct, cwt, d, dial, ft, g, gal, h, hL, kWh, kg, lb, m, ppb, ppm, pt, s, t, °C, °F`,
	} {
		got, err := ParseAmount(text)
		said := got.String()
		if err != nil {
			said = err.Error()
		}
		if said != want {
			t.Errorf("%q:\n%s\nwant\n%s", text, said, want)
		}
	}
}

// TestPrintedAmountsReadBack: whatever the program prints without "…", it
// reads again as the same amount.
func TestPrintedAmountsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawDecimal(t, "figure", drawUnit(t))
		if a.Unit() == Plain {
			return
		}
		back, err := ParseAmount(a.String())
		if err != nil || !back.Equal(a) {
			t.Fatalf("%s read back as %s, %v", a, back, err)
		}
	})
}

// FuzzFieldParse: what is taken lies within the field, in its unit and with no
// more than its decimals, and reads the same again when printed; what is not
// is refused with a sentence that names the field.
func FuzzFieldParse(f *testing.F) {
	for _, text := range []string{"52,300 lb", "15.3 %", "1e999999", "-$4.15/bu", "15,3", "0,300", "$$$", "52 300", "NaN", "٣", "1/bu", "…", "9999999999999999", "-,300", "1234,567"} {
		f.Add(text)
	}
	fields := []Field{gross, wet, spread, price, tested}
	f.Fuzz(func(t *testing.T, text string) {
		for _, field := range fields {
			a, err := field.Parse(text)
			if err != nil {
				if !errortest.Invalid(field.Name).Met(err) {
					t.Errorf("%q: %v", text, err)
				}
				continue
			}
			if a.Unit() != field.Unit || a.Less(field.Min) || a.More(field.Max) {
				t.Errorf("%q was taken as %s", text, a)
			}
			if d, whole := a.Decimal(); !whole || !d.Equal(d.Truncate(field.Places)) {
				t.Errorf("%q was taken as %s, with too many decimals", text, a)
			}
			again, err := field.Parse(a.String())
			if err != nil || !again.Equal(a) {
				t.Errorf("%q was taken as %s, which reads as %s, %v", text, a, again, err)
			}
		}
	})
}

// FuzzParseAmount: what is taken reads the same again when printed.
func FuzzParseAmount(f *testing.F) {
	for _, text := range []string{"0.045 $/bu/pt", "$0.045/bu/pt", "56 lb/bu", "1e9 lb", "15.5", "-$3", "2 1/bu", "3 lb·%", "1 lb/lb"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		a, err := ParseAmount(text)
		if err != nil || a.Unit() == Plain {
			return
		}
		again, err := ParseAmount(a.String())
		if err != nil || !again.Equal(a) {
			t.Errorf("%q was taken as %s, which reads as %s, %v", text, a, again, err)
		}
	})
}

// The trade quotes cents: 4.5 c/bu/pt is 0.045 $/bu/pt.
func TestCentsAreDollars(t *testing.T) {
	for text, want := range map[string]Amount{
		"4.5 c/bu/pt": Of("0.045", DollarsPerBu.Per(Point)), "25 ¢": Of("0.25", Dollar), "-1 c/t": Of("-0.01", DollarsPerT),
		"1.2 ppm": Of("1.2", PPM), "20 ppb": Of("20", PPB), "300 s": Of("300", Second), "3 c/ppm": Of("0.03", Dollar.Per(PPM)),
		"2 cwt": Of("2", Cwt), "3 ct": Of("3", Count),
	} {
		if got, err := ParseAmount(text); err != nil || got.Unit() != want.Unit() || !got.Equal(want) {
			t.Errorf("%q is %s, %v; want %s", text, got, err, want)
		}
	}
}
