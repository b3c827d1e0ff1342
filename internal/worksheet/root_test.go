package worksheet

import (
	"strings"
	"testing"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

func TestRootIsWrittenAndUsed(t *testing.T) {
	var s Sheet
	squared := quantity.Point.Times(quantity.Point)
	r := quantity.To("0.0001", quantity.HalfUp)
	variance := s.Given("variance", message.Words("Variance"), quantity.Of("0.1521", squared), quantity.Unrounded, Unsourced)
	sd := s.Work("sd", message.Words("Spread"), Root(variance, r), r, Unsourced)
	// 0.39 x 0.39 = 0.1521
	if got := sd.Printed(); got != "0.3900 pt" {
		t.Errorf("root of 0.1521 is %s", got)
	}
	if sd.Formula() != "√Variance" || len(sd.Uses()) != 1 || sd.Uses()[0] != variance {
		t.Errorf("formula %q uses %v", sd.Formula(), sd.Uses())
	}
	se := s.Work("se", message.Words("Standard error"), Root(Over(variance, Const(quantity.Int(10, quantity.Plain))), r), r, Unsourced)
	if !strings.HasPrefix(se.Formula(), "√(Variance ÷ 10)") || se.Printed() != "0.1233 pt" {
		t.Errorf("standard error %q = %s", se.Formula(), se.Printed())
	}
	sum := s.Work("sum", message.Words("Sum"), Sum(sd, Root(variance, r)), quantity.Unrounded, Unsourced)
	if sum.Formula() != "Spread + √Variance" {
		t.Errorf("sum is written %q", sum.Formula())
	}
}
