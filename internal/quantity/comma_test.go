package quantity

import (
	"strings"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/message/errortest"
)

var commaSigns = message.Figures{Group: "\u202f", Decimal: ",", Space: "\u00a0", MoneyAfter: true}

func TestFiguresTypedWithADecimalComma(t *testing.T) {
	moisture := Field{Name: "Moisture", Unit: Percent, Places: 2, Min: Zero(Percent), Max: Int(100, Percent)}
	weight := Field{Name: "Gross", Unit: Lb, Places: 2, Min: Zero(Lb), Max: Int(9_999_999, Lb)}
	price := Field{Name: "Price", Unit: DollarsPerBu, Places: 4, Min: Zero(DollarsPerBu), Max: Int(100, DollarsPerBu)}
	for _, one := range []struct {
		field       Field
		typed, want string
	}{
		{moisture, "15,3", "15.3 %"}, {moisture, "15.3", "15.3 %"}, {moisture, "15,30 %", "15.3 %"}, {moisture, "0,300", "0.3 %"},
		{weight, "47700", "47,700 lb"}, {weight, "47 700", "47,700 lb"}, {weight, "47\u202f700 lb", "47,700 lb"}, {weight, "1 047\u00a0700,5 lb", "1,047,700.5 lb"},
		{weight, "1,047,700", "1,047,700 lb"}, {weight, "47,700.5", "47,700.5 lb"}, {weight, "+47 700", "47,700 lb"},
		{price, "$4,15", "$4.15/bu"}, {price, "4,15 $/bu", "$4.15/bu"},
	} {
		text, err := WithPoint(one.field.Name, one.typed, commaSigns)
		if err != nil {
			t.Errorf("%q is refused: %v", one.typed, err)
			continue
		}
		if one.field.Unit == DollarsPerBu {
			text = strings.TrimPrefix(text, "$")
		}
		if a, err := one.field.Parse(text); err != nil || a.String() != one.want {
			t.Errorf("%q is %s, %v, want %s", one.typed, a, err, one.want)
		}
	}
	for _, typed := range []string{"47 70", "4 7700", "15,3,4", "15.300,5", "1 234 56"} {
		text, err := WithPoint("Gross", typed, commaSigns)
		if err == nil {
			_, err = weight.Parse(text)
		}
		if err == nil {
			t.Errorf("%q is taken", typed)
		}
	}
}

// What could be thousands or decimals is refused with both readings.
func TestAFigureOfTwoReadingsIsRefused(t *testing.T) {
	for typed, readings := range map[string][]string{"47,700": {"47700", "47,7"}, "15,300 %": {"15300", "15,3"}, "-1,500": {"-1500", "-1,5"}} {
		_, err := WithPoint("Gross", typed, commaSigns)
		if want := errortest.Invalid(readings...); !want.Met(err) {
			t.Errorf("%q gives %v; want %v", typed, err, want)
		}
	}
}

// Without a decimal comma in the language a text is left to the parser.
func TestOtherLanguagesAreLeftAlone(t *testing.T) {
	for _, typed := range []string{"15,3", "47,700", "47 700", " x "} {
		if text, err := WithPoint("Gross", typed, message.Figures{}); err != nil || text != typed {
			t.Errorf("%q becomes %q, %v", typed, text, err)
		}
	}
}
