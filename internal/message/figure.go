package message

import (
	"regexp"
	"strings"
)

// Figures are the signs of numbers in a language. The zero Figures are those of
// English: 47,700.5 lb, $62.58.
type Figures struct {
	// Group separates thousands, Decimal the decimals.
	Group   string `json:"group"`
	Decimal string `json:"decimal"`
	// Space separates a figure from its unit.
	Space string `json:"space"`
	// MoneyAfter puts the dollar sign behind the figure.
	MoneyAfter bool `json:"moneyAfter"`
}

// Figure is an amount that is formatted by language.
type Figure interface{ Localize(Figures) string }

// Digits is a figure as the program writes it, "1,624.88", for a text.
type Digits string

// Localize is the figure with the signs of a language.
func (d Digits) Localize(signs Figures) string { return signs.Write(string(d)) }

// english reports whether figures stay as the program writes them.
func (f Figures) english() bool { return f == Figures{} }

// writtenFigure matches a figure as the program writes it: sign, dollar, digits in groups,
// decimals, a mark for a figure that continues, unit and what it is per.
var writtenFigure = regexp.MustCompile(`^([-+−]?)(\$?)(\d{1,3}(?:,\d{3})+|\d+)(?:\.(\d+))?(…?)(?:( ?)(%|°[CF]|lb|kg|gal|g|bu|cwt|cfm|ct|t|pt|ppm|ppb|hL|dial|d|h|s|L|kWh|ft|m))?((?:/[a-zA-Z]+)*)$`)

// Write writes a figure in English format with the signs of the language; any other text stays.
func (f Figures) Write(text string) string {
	if f.english() {
		return text
	}
	written, _ := f.Rewrite(text)
	return written
}

// Rewrite converts a figure from English format to that of the language, and reports whether the
// text is one. Whole numbers without a unit, and other text, are unchanged.
func (f Figures) Rewrite(text string) (string, bool) {
	m := writtenFigure.FindStringSubmatch(text)
	if m == nil {
		return text, false
	}
	if f.english() {
		return text, true
	}
	sign, dollar, whole, decimals, more, blank, unit, per := m[1], m[2], m[3], m[4], m[5], m[6], m[7], m[8]
	whole = strings.ReplaceAll(whole, ",", f.Group)
	if decimals != "" {
		whole += f.Decimal + decimals
	}
	out := sign + whole + more
	switch {
	case dollar != "" && f.MoneyAfter:
		out += f.Space + "$"
	case dollar != "":
		out = sign + dollar + strings.TrimPrefix(out, sign)
	case unit != "" && blank != "":
		out += f.Space + unit
	case unit != "":
		out += unit
	}
	return out + per, true
}
