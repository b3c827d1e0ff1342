package quantity

import (
	"regexp"
	"strings"

	"tenthpoint/internal/message"
)

// groupSpace is a blank between thousands: "47 700".
var groupSpace = regexp.MustCompile(`(\d)[ \x{a0}\x{202f}](\d{3})(\D|$)`)

// WithPoint converts a figure typed in a language's format to the one [Field.Parse] reads: where
// the language writes a decimal comma, "15,3" is 15.3 and "47 700" is 47700. A comma before three
// digits could separate thousands or decimals, so it is refused with both readings; a point is
// decimal everywhere. The name is that of the field in the sentence.
func WithPoint(name, text string, signs message.Figures) (string, error) {
	if signs.Decimal != "," {
		return text, nil
	}
	joined := strings.TrimSpace(text)
	for groupSpace.MatchString(joined) {
		joined = groupSpace.ReplaceAllString(joined, "$1$2$3")
	}
	figure, _ := splitUnit(joined)
	if strings.Count(figure, ",") != 1 || strings.Contains(figure, ".") {
		return joined, nil
	}
	if inThousands(strings.TrimLeft(figure, "+-")) {
		return "", twoReadings(name, figure)
	}
	return strings.Replace(joined, ",", ".", 1), nil
}

// HasDecimalComma reports whether a text such as "16,8 %" is a figure with one decimal comma, or one
// between thousands.
func HasDecimalComma(text string) bool {
	figure, _ := splitUnit(text)
	whole, decimals, there := strings.Cut(strings.TrimLeft(figure, "+-"), ",")
	return there && isDigits(whole) && isDigits(decimals)
}

func isDigits(text string) bool { return text != "" && strings.Trim(text, "0123456789") == "" }

func twoReadings(name, figure string) error {
	whole := strings.Replace(figure, ",", "", 1)
	decimal := trimZeros(strings.Replace(figure, ",", ".", 1))
	return message.Invalid.Errorf("%s %q may be %s or %s; type %v or %v", name, figure,
		figureOf(whole), figureOf(decimal), whole, strings.Replace(decimal, ".", ",", 1))
}

// figureOf is a figure for an error message.
func figureOf(text string) Amount {
	d, err := bounded(text)
	if err != nil {
		return Amount{}
	}
	return New(d, Plain)
}
