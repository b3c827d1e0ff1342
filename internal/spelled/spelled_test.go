package spelled_test

import (
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/spelled"
)

func TestWords(t *testing.T) {
	for _, c := range []struct{ language, sum, words string }{
		{"en", "0", "zero and 00/100 dollars"},
		{"en", "1.05", "one and 05/100 dollars"},
		{"en", "2050", "two thousand fifty and 00/100 dollars"},
		{"en", "21", "twenty-one and 00/100 dollars"},
		{"en", "132433.75", "one hundred thirty-two thousand four hundred thirty-three and 75/100 dollars"},
		{"en", "999999999.99", "nine hundred ninety-nine million nine hundred ninety-nine thousand nine hundred ninety-nine and 99/100 dollars"},
		{"fr", "1", "un dollar et 00/100"},
		{"fr", "21", "vingt et un dollars et 00/100"},
		{"fr", "71", "soixante et onze dollars et 00/100"},
		{"fr", "77.10", "soixante-dix-sept dollars et 10/100"},
		{"fr", "80", "quatre-vingts dollars et 00/100"},
		{"fr", "81", "quatre-vingt-un dollars et 00/100"},
		{"fr", "91", "quatre-vingt-onze dollars et 00/100"},
		{"fr", "200", "deux cents dollars et 00/100"},
		{"fr", "202", "deux cent deux dollars et 00/100"},
		{"fr", "280", "deux cent quatre-vingts dollars et 00/100"},
		{"fr", "1001", "mille un dollars et 00/100"},
		{"fr", "80000", "quatre-vingt mille dollars et 00/100"},
		{"fr", "200000", "deux cent mille dollars et 00/100"},
		{"fr", "1000000", "un million de dollars et 00/100"},
		{"fr", "200000080", "deux cents millions quatre-vingts dollars et 00/100"},
		{"es", "1", "un dólar con 00/100"},
		{"es", "21", "veintiún dólares con 00/100"},
		{"es", "31", "treinta y un dólares con 00/100"},
		{"es", "100", "cien dólares con 00/100"},
		{"es", "101", "ciento un dólares con 00/100"},
		{"es", "1500", "mil quinientos dólares con 00/100"},
		{"es", "21000", "veintiún mil dólares con 00/100"},
		{"es", "100000.50", "cien mil dólares con 50/100"},
		{"es", "2000000", "dos millones de dólares con 00/100"},
	} {
		if words, ok := spelled.Dollars(c.language, quantity.Of(c.sum, quantity.Dollar)); !ok || words != c.words {
			t.Errorf("%s in %s: %q; want %q", c.sum, c.language, words, c.words)
		}
	}
}

func TestWhatHasNoWords(t *testing.T) {
	for _, c := range []struct {
		language string
		sum      quantity.Amount
	}{
		{"en", quantity.Of("-1", quantity.Dollar)}, {"en", quantity.Int(spelled.Most, quantity.Dollar)}, {"en", quantity.Of("1", quantity.Bushel)}, {"de", quantity.Of("1", quantity.Dollar)},
	} {
		if words, ok := spelled.Dollars(c.language, c.sum); ok {
			t.Errorf("%s in %s is %q", c.sum, c.language, words)
		}
	}
}

// Two sums never have the same words.
func TestWordsTellSumsApart(t *testing.T) {
	for _, language := range []string{"en", "fr", "es"} {
		said := map[string]int64{}
		rapid.Check(t, func(r *rapid.T) {
			n := rapid.Int64Range(0, spelled.Most-1).Draw(r, "dollars")
			words, ok := spelled.Dollars(language, quantity.Int(n, quantity.Dollar))
			if other, taken := said[words]; !ok || taken && other != n {
				r.Fatalf("%d and %d are both %q", n, other, words)
			}
			said[words] = n
		})
	}
}
