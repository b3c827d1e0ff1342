package quantity

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"tenthpoint/internal/message"
)

// People's text is bounded before it reaches the decimal library, which would
// take 1e999999 for a number.
const (
	maxDigits = 15
	maxText   = 60 // the longest figure and the longest unit fit well within
)

// figureAndUnit reads "52,300 lb" as 52300 and "lb".
func figureAndUnit(text string) (d decimal.Decimal, unit string, err error) {
	text = strings.TrimSpace(text)
	if len(text) > maxText {
		return d, "", message.Invalid.Errorf("is too long for a figure; type it alone, like 52300 or 15.3")
	}
	figure, unit := splitUnit(text)
	if strings.IndexAny(unit, "0123456789") == 0 && !strings.HasPrefix(unit, "1/") {
		return d, "", message.Invalid.Errorf("has a space inside the figure; type it together, like 52300 or 52,300")
	}
	plain, err := dropThousands(figure)
	if err != nil {
		return d, "", err
	}
	d, err = bounded(plain)
	return d, unit, err
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

// dropThousands takes "52,300" to "52300" and refuses commas anywhere else.
func dropThousands(figure string) (string, error) {
	if !strings.Contains(figure, ",") {
		return figure, nil
	}
	whole, rest, hasPoint := strings.Cut(figure, ".")
	if !inThousands(strings.TrimLeft(whole, "+-")) || strings.Contains(rest, ",") {
		return "", message.Invalid.Errorf("has a comma that does not part thousands; write a decimal with a point, such as %s", withPoint(figure))
	}
	plain := strings.ReplaceAll(whole, ",", "")
	if hasPoint {
		plain += "." + rest
	}
	return plain, nil
}

// inThousands reports whether commas separate thousands, as in "52,300" and "1,234,567", and not in
// "52,30", "1234,567" and "0,300", which somebody meant for a decimal.
func inThousands(whole string) bool {
	for i, g := range strings.Split(whole, ",") {
		if i > 0 && len(g) != 3 || i == 0 && (len(g) == 0 || len(g) > 3 || g[0] == '0') {
			return false
		}
	}
	return true
}

// withPoint returns the likely meaning of a figure with one comma.
func withPoint(figure string) string {
	if strings.Count(figure, ",") == 1 && !strings.Contains(figure, ".") {
		return strings.Replace(figure, ",", ".", 1)
	}
	return "15.3"
}

// bounded reads plain decimal text: an optional sign, digits, at most one
// point, no exponent, no more than maxDigits digits.
func bounded(text string) (decimal.Decimal, error) {
	digits := strings.TrimLeft(text, "+-")
	if len(text)-len(digits) > 1 {
		return decimal.Decimal{}, message.Invalid.Errorf("has more than one sign; type it once, like 52300")
	}
	if strings.Count(digits, ".") > 1 {
		return decimal.Decimal{}, message.Invalid.Errorf("has more than one point; type it with one, like 15.3")
	}
	bare := strings.Replace(digits, ".", "", 1)
	if bare == "" || strings.Trim(bare, "0123456789") != "" {
		return decimal.Decimal{}, message.Invalid.Errorf("is not a number; type digits, like 52300 or 15.3")
	}
	if len(bare) > maxDigits {
		return decimal.Decimal{}, message.Invalid.Errorf("has %d digits; no figure here needs more than %d", len(bare), maxDigits)
	}
	return decimal.NewFromString(text)
}

// quoted shortens user text for a message.
func quoted(text string) string {
	text = strings.TrimSpace(text)
	if len(text) > maxText {
		return fmt.Sprintf("%.20q…", text)
	}
	return fmt.Sprintf("%q", text)
}
