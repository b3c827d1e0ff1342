package slipcode

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestBase45 takes the examples of RFC 9285.
func TestBase45(t *testing.T) {
	for raw, text := range map[string]string{"AB": "BB8", "Hello!!": "%69 VD92EX0", "base-45": "UJCLQE7W581", "ietf!": "QED8WEX0", "": ""} {
		if got := encode45([]byte(raw)); got != text {
			t.Errorf("%q is written %q, want %q", raw, got, text)
		}
		if got, err := decode45(text); err != nil || string(got) != raw {
			t.Errorf("%q is read as %q, %v, want %q", text, got, err, raw)
		}
	}
	for _, bad := range []string{"GGW", ":::", "::", "A", "ab8", "BB8A"} {
		if got, err := decode45(bad); err == nil {
			t.Errorf("%q is read as %q", bad, got)
		}
	}
}

// printed is the code of a slip as it was printed once.
const printed = "TP2:000YKI728-COMI4Y7NX503H0000000000000000000ZM0100/90RJOCCGW/2++2Z50IGI-.6300ZOO000JB0DSQC-PQJGEJQ0W2"

// TestFormatStands holds the format to a code that was printed: it is read for ever.
func TestFormatStands(t *testing.T) {
	price := quantity.Of("4.12", quantity.DollarsPerBu)
	want := Code{
		Ticket: 1042, Find: [6]byte{0x3f, 0xa9, 0xc0, 0x1d, 0x22, 0xe4}, Day: quantity.MustDate("2026-10-14"),
		Edition: [16]byte{1, 2, 3}, Engine: 4, Grain: "corn", Units: Units{quantity.Lb, quantity.Lb, quantity.Bushel},
		Drafts:   []Draft{{Name: "truck", Gross: quantity.Int(76300, quantity.Lb), Tare: quantity.Int(24000, quantity.Lb)}},
		Moisture: quantity.Of("18.4", quantity.Percent),
		Sample:   []Result{{Factor: grain.TestWeight, Amount: quantity.Of("54.5", quantity.LbPerBushel)}, {Factor: grain.Musty, IsSeen: true}},
		Deal:     Deal{Under: title.CashSale, Price: &price},
		Lines:    []Line{{Name: settle.LinePayable, Figure: quantity.Of("3412.77", quantity.Plain)}, {Discount: 2, Figure: quantity.Of("12.5", quantity.Plain)}},
	}
	got, err := Parse(printed)
	if err != nil {
		t.Fatalf("%v; today it is written %s", err, mustText(t, want))
	}
	if diff := cmp.Diff(want, got, cmp.Comparer(sameAmount), cmp.Comparer(sameUnit), cmp.Comparer(sameDay)); diff != "" {
		t.Errorf("the code of a printed slip is read otherwise (-printed +read):\n%s", diff)
	}
}

func mustText(t testing.TB, c Code) string {
	t.Helper()
	text, err := c.Text()
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func sameAmount(a, b quantity.Amount) bool { return a.Equal(b) }

func sameUnit(a, b quantity.Unit) bool { return a == b }

func sameDay(a, b quantity.Date) bool { return a == b }

func anyFigure(rt *rapid.T, name string, unit quantity.Unit) quantity.Amount {
	n := quantity.Int(rapid.Int64Range(-1<<40, 1<<40).Draw(rt, name), quantity.Plain)
	return n.Mul(quantity.Of(rapid.SampledFrom([]string{"1", "0.1", "0.01", "0.0001", "1000"}).Draw(rt, name+" place"), unit))
}

func anyBytes(rt *rapid.T, name string, into []byte) {
	copy(into, rapid.SliceOfN(rapid.Byte(), len(into), len(into)).Draw(rt, name))
}

func anyDeal(rt *rapid.T, price quantity.Unit) Deal {
	d := Deal{Under: rapid.SampledFrom(held).Draw(rt, "under")}
	if rapid.Bool().Draw(rt, "priced") {
		a := anyFigure(rt, "price", price)
		d.Price = &a
	}
	return d
}

func anyWord(rt *rapid.T, name string, table []string) string {
	return rapid.SampledFrom(append([]string{"own-" + name, "étrange"}, table...)).Draw(rt, name)
}

func anyCode(rt *rapid.T) Code {
	weight := rapid.SampledFrom([]quantity.Unit{quantity.Lb, quantity.Kg})
	c := Code{
		Site: rapid.Int64Range(0, 900).Draw(rt, "site"), Ticket: rapid.Int64Range(1, 1<<40).Draw(rt, "ticket"),
		Day: firstDay.AddDays(rapid.IntRange(0, mostDays).Draw(rt, "day")), Engine: settle.Engine(rapid.IntRange(1, 9).Draw(rt, "engine")),
		Grain:    anyWord(rt, "grain", grains),
		Units:    Units{weight.Draw(rt, "scale"), weight.Draw(rt, "weight"), rapid.SampledFrom([]quantity.Unit{quantity.Bushel, quantity.Cwt, quantity.Tonne}).Draw(rt, "quantity")},
		Moisture: anyFigure(rt, "moisture", quantity.Percent), NoMoney: rapid.Bool().Draw(rt, "without money"),
		Owner: rapid.IntRange(0, 3).Draw(rt, "owner"),
	}
	anyBytes(rt, "find", c.Find[:])
	anyBytes(rt, "edition", c.Edition[:])
	anyBytes(rt, "law", c.Law[:])
	for range rapid.IntRange(0, 2).Draw(rt, "drafts") {
		c.Drafts = append(c.Drafts, Draft{anyWord(rt, "draft", append([]string{""}, draftNames...)), anyFigure(rt, "gross", c.Units.Scale), anyFigure(rt, "tare", c.Units.Scale)})
	}
	for range rapid.IntRange(0, 12).Draw(rt, "results") {
		r := Result{Factor: grain.FactorID(anyWord(rt, "factor", factors)), IsSeen: rapid.Bool().Draw(rt, "yes or no")}
		if r.IsSeen {
			r.Present = rapid.Bool().Draw(rt, "present")
		} else {
			r.Amount = anyFigure(rt, "result", rapid.SampledFrom([]quantity.Unit{quantity.Percent, quantity.LbPerBushel, quantity.KgPerHL, quantity.Count, quantity.Cwt}).Draw(rt, "unit"))
		}
		c.Sample = append(c.Sample, r)
	}
	price := quantity.Dollar.Per(c.Units.Quantity)
	c.Deal = anyDeal(rt, price)
	for range rapid.IntRange(0, 5).Draw(rt, "owners") {
		c.Owners = append(c.Owners, anyOwner(rt, price))
	}
	for range rapid.IntRange(0, 40).Draw(rt, "lines") {
		l := Line{Discount: rapid.IntRange(0, 3).Draw(rt, "discount"), Owner: rapid.IntRange(0, 3).Draw(rt, "line of"), Figure: anyFigure(rt, "line", quantity.Plain)}
		if l.Discount == 0 {
			l.Name = rapid.SampledFrom(lines).Draw(rt, "name")
		}
		c.Lines = append(c.Lines, l)
	}
	return c
}

func anyOwner(rt *rapid.T, price quantity.Unit) Owner {
	o := Owner{Parts: anyFigure(rt, "parts", quantity.Plain), Of: anyFigure(rt, "of", quantity.Plain)}
	if rapid.Bool().Draw(rt, "dries apart") {
		o.Drying = &quantity.Portion{Parts: anyFigure(rt, "drying", quantity.Plain), Of: anyFigure(rt, "drying of", quantity.Plain)}
	}
	if rapid.Bool().Draw(rt, "own deal") {
		own := anyDeal(rt, price)
		o.Own = &own
	}
	return o
}

// TestCodesComeBack writes codes of any sort, signed or not, and reads them again.
func TestCodesComeBack(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		signed := rapid.Bool().Draw(rt, "signed")
		c, err := anyCode(rt).Fitted(signed)
		if err != nil {
			if !errors.Is(err, message.Invalid) {
				rt.Fatal(err)
			}
			return
		}
		if signed {
			c.Signature = &Signature{}
			anyBytes(rt, "key", c.Signature.Key[:])
			anyBytes(rt, "signature", c.Signature.Bytes[:])
		}
		text, err := c.Text()
		if err != nil {
			rt.Fatal(err)
		}
		if len(text) > 4+MostBytes*3/2 || strings.Trim(text, base45) != "" {
			rt.Fatalf("%q is too long for a code, or not in its letters", text)
		}
		back, err := Parse("  " + strings.TrimSpace(text) + "\n")
		if err != nil {
			rt.Fatal(err)
		}
		if diff := cmp.Diff(c, back, cmp.Comparer(sameAmount), cmp.Comparer(sameUnit), cmp.Comparer(sameDay)); diff != "" {
			rt.Fatalf("a code came back changed (-written +read):\n%s", diff)
		}
	})
}

// TestTornCodes cuts a code at every letter, and changes every letter into every other: it is told as
// torn, and never read as other figures.
func TestTornCodes(t *testing.T) {
	c, err := Parse(printed)
	if err != nil {
		t.Fatal(err)
	}
	c.Signature = &Signature{}
	text := mustText(t, c)
	for at := len(mark); at < len(text); at++ {
		if _, err := Parse(text[:at]); err == nil {
			t.Errorf("%q is cut off and was read", text[:at])
		}
		for _, letter := range base45 {
			torn := text[:at] + string(letter) + text[at+1:]
			got, err := Parse(torn)
			if err != nil || torn == text {
				continue
			}
			if got.Signature = nil; mustText(t, got) != printed {
				t.Errorf("%q was misread and gives other figures", torn)
			}
		}
	}
}

func TestOtherTexts(t *testing.T) {
	for text, isCode := range map[string]bool{
		"": false, "https://example.invalid/": false, "TENTHPOINT/1 1042 52300LB 18.4% 891.89BU 3FA9C01D22E4": false,
		"TP2:": true, "TP2:A": true, "TP3:BB8": true, "TPX:BB8": false,
	} {
		if Is(text) != isCode {
			t.Errorf("Is(%q) = %v", text, !isCode)
		}
		if c, err := Parse(text); err == nil {
			t.Errorf("%q is read as ticket %d", text, c.Ticket)
		}
	}
}

// TestTablesKnowTheTrade holds the tables to what the program has: a word that is missing is spelled
// out at the cost of room.
func TestTablesKnowTheTrade(t *testing.T) {
	for _, c := range grain.All() {
		if wordNumber(grains, c.ID) == 0 {
			t.Errorf("grain %s has no number", c.ID)
		}
		for _, f := range c.Factors {
			if f.ID != grain.Moisture && wordNumber(factors, string(f.ID)) == 0 {
				t.Errorf("factor %s has no number", f.ID)
			}
			if wordNumber(units, f.Unit.String()) == 0 {
				t.Errorf("the unit %s of %s has no number", f.Unit, f.ID)
			}
		}
	}
	for _, under := range title.Kinds() {
		if !slices.Contains(held, under) {
			t.Errorf("%q has no number", under)
		}
	}
}

func FuzzParse(f *testing.F) {
	f.Add("TP2:")
	f.Add("TP2:BB8")
	f.Fuzz(func(t *testing.T, text string) {
		c, err := Parse(text)
		if err != nil {
			return
		}
		if again := mustText(t, c); strings.TrimSpace(again) != strings.TrimSpace(text) {
			t.Errorf("%q was read, and is written %q", text, again)
		}
	})
}

// FuzzBytes reads bytes behind a right check, as only somebody who knows the format can write them.
func FuzzBytes(f *testing.F) {
	f.Add([]byte{0})
	f.Add([]byte("\x00\x00\x01\x3f\xa9\xc0\x1d\x22\xe4\x00" + strings.Repeat("\x00", 40)))
	f.Fuzz(func(t *testing.T, body []byte) {
		if len(body) > 0 && body[0]&markSigned == 0 {
			if c, err := parse(checked(body)); err == nil {
				mustText(t, c)
				c.Facts()
			}
		}
	})
}
