package quantity

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"
)

// Field describes a figure that people type: its name in sentences, its unit,
// how many decimals it may have and its limits, both inclusive.
type Field struct {
	Name   string
	Unit   Unit
	Places int32
	Min    Amount
	Max    Amount
}

// maxDigits bounds people's text before it reaches the decimal library, which
// would take 1e999999 for a number.
const maxDigits = 15

// Parse reads a figure as people type it: "52,300", "52300 lb", "15.3 %". The
// unit may be left out; if given it must be the field's. A decimal comma is
// refused, because 15,300 with it left out of view is a thousand times 15.3.
func (f Field) Parse(text string) (Amount, error) {
	figure, unit := splitUnit(text)
	if figure == "" {
		return Amount{}, fmt.Errorf("%s is empty; type a figure in %s", f.Name, f.unitWords())
	}
	if unit != "" && !sameUnit(unit, f.Unit) {
		return Amount{}, fmt.Errorf("%s is in %s; %q is in %q. Type the figure in %s", f.Name, f.unitWords(), strings.TrimSpace(text), unit, f.unitWords())
	}
	plain, err := dropThousands(figure)
	if err != nil {
		return Amount{}, fmt.Errorf("%s %q: %w", f.Name, strings.TrimSpace(text), err)
	}
	d, err := bounded(plain)
	if err != nil {
		return Amount{}, fmt.Errorf("%s %q: %w", f.Name, strings.TrimSpace(text), err)
	}
	return f.check(New(d, f.Unit))
}

func (f Field) check(a Amount) (Amount, error) {
	if -a.num.Exponent() > f.Places && !a.num.Equal(a.num.Truncate(f.Places)) {
		return Amount{}, fmt.Errorf("%s %s has more than %s; round it at the instrument, not here", f.Name, a, decimalsWord(f.Places))
	}
	if a.Less(f.Min) || a.More(f.Max) {
		return Amount{}, fmt.Errorf("%s %s is outside %s to %s; check the figure and type it again", f.Name, a, f.Min, f.Max)
	}
	return a, nil
}

func (f Field) unitWords() string {
	if f.Unit == Plain {
		return "plain numbers"
	}
	return f.Unit.String()
}

func decimalsWord(places int32) string {
	switch places {
	case 0:
		return "no decimals"
	case 1:
		return "one decimal"
	}
	return fmt.Sprintf("%d decimals", places)
}

// splitUnit parts "52,300 lb" into "52,300" and "lb". Money is written either
// way round: "$4.15" or "4.15 $/bu".
func splitUnit(text string) (figure, unit string) {
	text = strings.TrimSpace(text)
	if rest, ok := strings.CutPrefix(text, "-$"); ok {
		figure, unit = splitUnit(rest)
		return "-" + figure, "$" + unit
	}
	if rest, ok := strings.CutPrefix(text, "$"); ok {
		figure, unit = splitUnit(rest)
		return figure, "$" + unit
	}
	i := strings.IndexFunc(text, func(r rune) bool {
		return !strings.ContainsRune("0123456789.,-+", r)
	})
	if i < 0 {
		return text, ""
	}
	return strings.TrimSpace(text[:i]), strings.TrimSpace(text[i:])
}

func sameUnit(text string, unit Unit) bool {
	u, err := ParseUnit(text)
	return err == nil && (u == unit || unit == Point && u == Percent)
}

// dropThousands takes "52,300" to "52300" and refuses commas anywhere else.
func dropThousands(figure string) (string, error) {
	if !strings.Contains(figure, ",") {
		return figure, nil
	}
	whole, rest, hasPoint := strings.Cut(figure, ".")
	groups := strings.Split(whole, ",")
	for i, g := range groups {
		if i > 0 && len(g) != 3 || i == 0 && (len(g) == 0 || len(g) > 4) {
			return "", fmt.Errorf("the comma does not part thousands; write a decimal with a point, such as %s", strings.ReplaceAll(figure, ",", "."))
		}
	}
	plain := strings.Join(groups, "")
	if hasPoint {
		plain += "." + rest
	}
	return plain, nil
}

// bounded reads plain decimal text: an optional sign, digits, at most one
// point, no exponent, no more than maxDigits digits.
func bounded(text string) (decimal.Decimal, error) {
	digits := strings.TrimLeft(text, "+-")
	if len(text)-len(digits) > 1 {
		return decimal.Decimal{}, fmt.Errorf("has more than one sign; type it once, like 52300")
	}
	if strings.Count(digits, ".") > 1 {
		return decimal.Decimal{}, fmt.Errorf("has more than one point; type it with one, like 15.3")
	}
	bare := strings.Replace(digits, ".", "", 1)
	if bare == "" || strings.Trim(bare, "0123456789") != "" {
		return decimal.Decimal{}, fmt.Errorf("is not a number; type digits, like 52300 or 15.3")
	}
	if len(bare) > maxDigits {
		return decimal.Decimal{}, fmt.Errorf("has %d digits; no figure here needs more than %d", len(bare), maxDigits)
	}
	return decimal.NewFromString(text)
}

// ParseAmount reads a figure with its unit, as an edition writes it: "15.5 %",
// "0.045 $/bu/pt", "56 lb/bu". The unit is required; its name is given in the
// message when it is missing.
func ParseAmount(text string) (Amount, error) {
	figure, unitText := splitUnit(text)
	if unitText == "" {
		return Amount{}, fmt.Errorf("%q has no unit; write the figure and its unit, such as \"15.5 %%\" or \"0.045 $/bu/pt\"", text)
	}
	unit, err := ParseUnit(unitText)
	if err != nil {
		return Amount{}, fmt.Errorf("%q: %w", text, err)
	}
	plain, err := dropThousands(figure)
	if err != nil {
		return Amount{}, fmt.Errorf("%q: %w", text, err)
	}
	d, err := bounded(plain)
	if err != nil {
		return Amount{}, fmt.Errorf("%q: %w", text, err)
	}
	return New(d, unit), nil
}
