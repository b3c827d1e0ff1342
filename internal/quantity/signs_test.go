package quantity

import (
	"testing"

	"tenthpoint/internal/message"
)

// Every unit is known where figures are written in another language.
func TestFiguresOfEveryUnitAreRewritten(t *testing.T) {
	signs := message.Figures{Group: " ", Decimal: ",", Space: " ", MoneyAfter: true}
	for b := range bases {
		written := Of("1234.55", one(b)).String()
		want := "1 234,55 " + symbols[b]
		if got, known := signs.Rewrite(written); !known || got != want {
			t.Errorf("%q becomes %q, want %q", written, got, want)
		}
	}
}
