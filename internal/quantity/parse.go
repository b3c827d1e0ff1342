package quantity

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"tenthpoint/internal/message"
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

// Parse reads a figure as people type it: "52,300", "52300 lb", "15.3 %". The unit may be left out;
// if given it must be the field's. A decimal comma is refused, because 15,300 read with a thousands
// comma is a thousand times 15.3.
func (f Field) Parse(text string) (Amount, error) {
	if strings.TrimSpace(text) == "" {
		return Amount{}, message.Invalid.Errorf("%s is empty; type a figure in %s", f.Name, f.unitWords())
	}
	d, unit, err := figureAndUnit(text)
	if err == nil {
		err = f.checkUnit(unit)
	}
	if err != nil {
		return Amount{}, message.Errorf("%s %s %w", f.Name, quoted(text), err)
	}
	return f.check(New(d, f.Unit))
}

// checkUnit takes no unit, the field's own, or % for a difference of percents.
func (f Field) checkUnit(text string) error {
	if text == "" {
		return nil
	}
	switch unit, err := ParseUnit(text); {
	case err != nil:
		return message.Invalid.Errorf("has %s for a unit; type the figure in %s", quoted(text), f.unitWords())
	case unit != f.Unit && !(f.Unit == Point && unit == Percent):
		return message.Invalid.Errorf("is in %s, not in %s; type the figure in %s", unit, f.unitWords(), f.unitWords())
	}
	return nil
}

func (f Field) check(a Amount) (Amount, error) {
	if -a.num.Exponent() > f.Places && !a.num.Equal(a.num.Truncate(f.Places)) {
		if f.Places == 0 {
			return Amount{}, message.Invalid.Errorf("%s %s is not a whole number; type it without decimals", f.Name, a)
		}
		return Amount{}, message.Invalid.Errorf("%s %s has more than %s; round it at the instrument, not here", f.Name, a, decimalsWord(f.Places))
	}
	if a.Less(f.Min) || a.More(f.Max) {
		return Amount{}, message.Invalid.Errorf("%s %s is outside %s to %s; check the figure and type it again", f.Name, a, f.Min, f.Max)
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
	if places == 1 {
		return "one decimal"
	}
	return fmt.Sprintf("%d decimals", places)
}

// ParseAmount reads a figure with its unit, as an edition writes it: "15.5 %", "0.045 $/bu/pt", "56
// lb/bu". The unit is required; the message names it when it is missing.
func ParseAmount(text string) (Amount, error) {
	d, unitText, err := figureAndUnit(text)
	if err != nil {
		return Amount{}, message.Errorf("%s %w", quoted(text), err)
	}
	if unitText == "" {
		return Amount{}, message.NotFound.Errorf("%s has no unit; write the figure and its unit, such as \"15.5 %%\" or \"0.045 $/bu/pt\"", quoted(text))
	}
	d, unitText = inDollars(d, unitText)
	unit, err := ParseUnit(unitText)
	if err != nil {
		return Amount{}, message.Errorf("%s: %w", quoted(text), err)
	}
	return New(d, unit), nil
}

// inDollars takes rates in cents as the trade quotes them, "4.5 c/bu/pt" or
// "4.5 ¢/bu/pt", to dollars.
func inDollars(d decimal.Decimal, unit string) (decimal.Decimal, string) {
	for _, cent := range []string{"c", "¢"} {
		if rest, ok := strings.CutPrefix(unit, cent); ok && (rest == "" || strings.HasPrefix(rest, "/")) {
			return d.Shift(-2), "$" + rest
		}
	}
	return d, unit
}
