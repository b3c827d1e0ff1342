package quantity

import (
	"testing"

	"pgregory.net/rapid"
)

func TestConvertTemperature(t *testing.T) {
	for _, c := range []struct {
		from, want Amount
	}{
		{Int(20, Celsius), Int(68, Fahrenheit)},
		{Int(0, Celsius), Int(32, Fahrenheit)},
		{Int(-40, Celsius), Int(-40, Fahrenheit)},
		{Of("4.4", Celsius), Of("39.92", Fahrenheit)},
		{Int(50, Fahrenheit), Int(10, Celsius)},
		{Int(51, Fahrenheit), Int(95, Celsius).Div(Int(9, Plain))},
		{Int(60, Fahrenheit), Int(60, Fahrenheit)},
	} {
		got, err := ConvertTemperature(c.from, c.want.Unit())
		if err != nil || !got.Equal(c.want) {
			t.Errorf("%s is %s, %v; want %s", c.from, got, err, c.want)
		}
	}
}

func TestConvertTemperatureRefusesOtherUnits(t *testing.T) {
	for _, c := range []struct {
		a  Amount
		to Unit
	}{{Int(1, Lb), Celsius}, {Int(1, Celsius), Lb}, {Int(1, Lb), Lb}} {
		if got, err := ConvertTemperature(c.a, c.to); err == nil {
			t.Errorf("%s to %s gave %s", c.a, c.to, got)
		}
	}
}

func TestConvertTemperatureThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := Of("0.1", Fahrenheit).Mul(Int(rapid.Int64Range(-600, 2500).Draw(t, "tenths"), Plain))
		c, _ := ConvertTemperature(a, Celsius)
		back, _ := ConvertTemperature(c, Fahrenheit)
		if !back.Equal(a) {
			t.Fatalf("%s came back as %s", a, back)
		}
	})
}
