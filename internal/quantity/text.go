package quantity

import (
	"strings"

	"github.com/shopspring/decimal"

	"tenthpoint/internal/message"
)

// shownPlaces is the number of decimals a non-terminating fraction is shown with.
const shownPlaces = 6

// Figure is the number alone, with thousands separated by commas: "52,300". A non-terminating
// fraction is cut at six decimals and marked with "…".
func (a Amount) Figure() string {
	if a.isWhole() {
		return group(shortest(a.num))
	}
	cut := Rounding{Step: decimal.New(1, -shownPlaces), Rule: Down}.Apply(a)
	if cut.Cmp(a) == 0 {
		return group(trimZeros(cut.num.StringFixed(shownPlaces)))
	}
	return group(cut.num.StringFixed(shownPlaces)) + "…"
}

// Fixed is the number with exactly so many decimals. The amount must already
// be rounded that far; a figure that is not is shown whole, never cut, so that
// paper cannot hide what was computed.
func (a Amount) Fixed(places int32) string {
	if !a.isWhole() || -a.num.Exponent() > places && !a.num.Equal(a.num.Truncate(places)) {
		return a.Figure()
	}
	return group(fixed(a.num, places))
}

// fixed writes a decimal with exactly so many decimals.
func fixed(d decimal.Decimal, places int32) string {
	if n, ok := smallOf(d); ok {
		if text, ok := n.text(int(places)); ok {
			return text
		}
	}
	return d.StringFixed(places)
}

// shortest writes a decimal without zeros at its end.
func shortest(d decimal.Decimal) string {
	if n, ok := smallOf(d); ok {
		if text, ok := n.text(max(0, -n.exp)); ok {
			return trimZeros(text)
		}
	}
	return d.String()
}

// Written is figure and unit with the decimals the figure was written with:
// "15.0 %" stays "15.0 %". Use it for figures that people wrote, not for
// products, which carry the decimals of all their factors.
func (a Amount) Written() string {
	if !a.isWhole() || a.num.Exponent() >= 0 {
		return a.String()
	}
	return a.FixedString(-a.num.Exponent())
}

// String is figure and unit: "52,300 lb", "15.5 %", "$0.045/bu/pt".
func (a Amount) String() string { return withUnit(a.Figure(), a.unit) }

// Localize is figure and unit with the signs of a language.
func (a Amount) Localize(signs message.Figures) string {
	return signs.Write(a.String())
}

// FixedString is [Amount.Fixed] with the unit.
func (a Amount) FixedString(places int32) string { return withUnit(a.Fixed(places), a.unit) }

func withUnit(figure string, unit Unit) string {
	if unit == Plain {
		return figure
	}
	name := unit.String()
	if per, isMoney := strings.CutPrefix(name, "$"); isMoney {
		bare, negative := strings.CutPrefix(withCents(figure), "-")
		if negative {
			return "-$" + bare + per
		}
		return "$" + bare + per
	}
	return figure + " " + name
}

// withCents pads money to at least two decimals: "$25.00", "$0.10/bu".
func withCents(figure string) string {
	_, cents, hasPoint := strings.Cut(figure, ".")
	switch {
	case !hasPoint:
		return figure + ".00"
	case len(cents) == 1:
		return figure + "0"
	}
	return figure
}

func trimZeros(s string) string {
	if !strings.Contains(s, ".") {
		return s
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// group parts the whole digits of a plain decimal by commas.
func group(s string) string {
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "-", s[1:]
	}
	whole, _, _ := strings.Cut(s, ".")
	if len(whole) <= 3 {
		return sign + s
	}
	var b strings.Builder
	b.Grow(len(sign) + len(s) + len(whole)/3)
	b.WriteString(sign)
	for i := range len(whole) {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteByte(',')
		}
		b.WriteByte(whole[i])
	}
	b.WriteString(s[len(whole):])
	return b.String()
}

// MarshalText writes the exact amount for the book and for JSON: "52300 lb",
// or "496850/84.5 lb" while it is still a fraction. The same amount always
// gives the same text.
func (a Amount) MarshalText() ([]byte, error) {
	text := a.StoredFigure()
	if a.unit != Plain {
		text += " " + a.unit.String()
	}
	return []byte(text), nil
}

// StoredFigure is the exact figure without its unit, as [Amount.MarshalText] writes it: for tables of
// the book whose columns have one unit.
func (a Amount) StoredFigure() string {
	if a.isWhole() {
		return a.num.String()
	}
	return a.num.String() + "/" + a.den.String()
}

// UnmarshalText parses the output of MarshalText.
func (a *Amount) UnmarshalText(text []byte) error {
	read, err := readStored(string(text))
	if err == nil {
		*a = read
	}
	return err
}

func readStored(text string) (Amount, error) {
	figure, unitText, _ := strings.Cut(text, " ")
	unit, err := Plain, error(nil)
	if unitText != "" {
		unit, err = ParseUnit(unitText)
	}
	if err != nil {
		return Amount{}, message.Errorf("amount %s: %w", quoted(text), err)
	}
	a, err := ReadStoredFigure(figure, unit)
	if err != nil {
		return Amount{}, message.Errorf("amount %s: %w", quoted(text), err)
	}
	return a, nil
}

// ReadStoredFigure parses the output of [Amount.StoredFigure].
func ReadStoredFigure(figure string, unit Unit) (Amount, error) {
	top, bottom, isFraction := strings.Cut(figure, "/")
	num, err := stored(top)
	if err != nil || !isFraction {
		return New(num, unit), err
	}
	den, err := stored(bottom)
	if err != nil || den.Sign() <= 0 {
		return Amount{}, message.Invalid.Errorf("the part below the line is not a number above zero")
	}
	return fraction(num, den, unit), nil
}

// maxStored bounds a stored figure. Exact fractions grow by a few digits with every step and can
// reach hundreds; the output of MarshalText must be readable again, so the bound is far above that.
const maxStored = 4000

func stored(text string) (decimal.Decimal, error) {
	if len(text) <= maxStored && !strings.ContainsAny(text, "eE") {
		if d, err := decimal.NewFromString(text); err == nil {
			return d, nil
		}
	}
	return decimal.Decimal{}, message.Invalid.Errorf("%s is not a stored figure", quoted(text))
}
