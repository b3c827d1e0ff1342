package scalelink

import (
	"errors"
	"testing"

	"pgregory.net/rapid"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"
)

// west is an invented scale: 10,000 divisions of 20 lb.
func west() Scale {
	return Scale{Name: "West scale", Capacity: lb("200000"), Division: lb("20")}
}

func atRest(weight quantity.Amount) Reading {
	return Reading{Weight: weight, State: Stable, Mode: Gross}
}

func TestAccept(t *testing.T) {
	broken := Scale{Name: "Mill", Capacity: kg("60"), Division: kg("0.5")}
	tests := []struct {
		name    string
		scale   Scale
		reading Reading
		reasons []Reason
		says    errortest.Want
	}{
		{"a truck at rest", west(), atRest(lb("52300")), nil, errortest.Want{}},
		{"one division", west(), atRest(lb("20")), nil, errortest.Want{}},
		{"mode not told", west(), Reading{Weight: lb("52300"), State: Stable}, nil, errortest.Want{}},
		{"105 percent exactly", west(), atRest(lb("210000")), nil, errortest.Want{}},
		{"a broken division", broken, atRest(kg("40.5")), nil, errortest.Want{}},
		{"one division over 105 percent", west(), atRest(lb("210020")), []Reason{OverCapacity},
			errortest.Refused("West scale", "210,020 lb", "210,000 lb", "200,000 lb", "20 lb")},
		{"nothing on the deck", west(), atRest(lb("0")), []Reason{NotAboveZero}, errortest.Refused("West scale", "0 lb")},
		{"below zero", west(), atRest(lb("-20")), []Reason{NotAboveZero}, errortest.Refused("-20 lb")},
		{"off the division", west(), atRest(lb("52310")), []Reason{OffDivision},
			errortest.Refused("West scale", "52,310 lb", "20 lb", "52,300 lb", "10 lb")},
		{"off a broken division", broken, atRest(kg("40.3")), []Reason{OffDivision}, errortest.Refused("40 kg", "0.3 kg")},
		{"moving", west(), Reading{Weight: lb("52300"), State: Motion, Mode: Gross}, []Reason{InMotion}, errortest.Refused("52,300 lb")},
		{"rest not told", west(), Reading{Weight: lb("52300"), Mode: Gross}, []Reason{NotAtRest}, errortest.Refused("52,300 lb")},
		{"a tare in the indicator", west(), Reading{Weight: lb("52300"), State: Stable, Mode: Net}, []Reason{NotGross}, errortest.Refused()},
		{"other unit", west(), atRest(kg("23720")), []Reason{WrongUnit}, errortest.Refused("23,720 kg", "lb")},
		{"overload", west(), Reading{Weight: lb("0"), State: Over, Mode: Gross}, []Reason{OutOfRange}, errortest.Refused()},
		{"underload", west(), Reading{Weight: lb("0"), State: Under, Mode: Gross}, []Reason{OutOfRange}, errortest.Refused()},
		{"fault", west(), Reading{Weight: lb("0"), State: Fault, Mode: Gross}, []Reason{BrokenScale}, errortest.Refused()},
		{"all at once", west(), Reading{Weight: lb("210011"), State: Motion, Mode: Net}, []Reason{InMotion, NotGross, OffDivision, OverCapacity}, errortest.Refused("11 lb")},
		{"the empty reading", west(), Reading{}, []Reason{NotAtRest, WrongUnit}, errortest.Refused()},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			err := tt.scale.Accept(tt.reading)
			var refused Refused
			if errors.As(err, &refused) != (len(tt.reasons) > 0) || len(refused) != len(tt.reasons) {
				t.Fatalf("Accept = %v, want reasons %q", err, tt.reasons)
			}
			for _, reason := range tt.reasons {
				if !refused.Has(reason) {
					t.Errorf("Accept = %v lacks the reason %q", err, reason)
				}
			}
			if err != nil && !tt.says.Met(err) {
				t.Errorf("Accept = %q, want %q in it", err, tt.says)
			}
		})
	}
}

// A reading at rest is taken exactly when it is 1 to 1.05 x capacity whole
// divisions, counted in whole numbers apart from the code's own arithmetic.
func TestAcceptIsWholeDivisionsUpTo105Percent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		division := rapid.Int64Range(1, 100).Draw(t, "division")
		capacity := division * rapid.Int64Range(1, 10_000).Draw(t, "divisions")
		shown := rapid.Int64Range(-capacity, 2*capacity).Draw(t, "shown")
		scale := Scale{Name: "s", Capacity: quantity.Int(capacity, quantity.Lb), Division: quantity.Int(division, quantity.Lb)}
		err := scale.Accept(atRest(quantity.Int(shown, quantity.Lb)))
		want := shown > 0 && shown%division == 0 && shown*100 <= capacity*105
		if (err == nil) != want {
			t.Fatalf("%d on a scale of %d by %d: %v, want taken %v", shown, capacity, division, err, want)
		}
	})
}

func TestScaleCheck(t *testing.T) {
	tests := []struct {
		scale Scale
		want  []errortest.Want
	}{
		{west(), nil},
		{Scale{Name: "x", Capacity: kg("60000"), Division: lb("20")}, []errortest.Want{errortest.Device()}},
		{Scale{}, []errortest.Want{errortest.Device(), errortest.Device()}},
		{Scale{Capacity: lb("0"), Division: lb("20")}, []errortest.Want{errortest.Device(), errortest.Device()}},
		{Scale{Name: "x", Capacity: lb("200000"), Division: lb("-20")}, []errortest.Want{errortest.Device()}},
		{Scale{Name: "x", Capacity: lb("200010"), Division: lb("20")}, []errortest.Want{errortest.Device("200,010 lb", "20 lb")}},
	}
	for _, tt := range tests {
		err := tt.scale.Check()
		if (err == nil) != (len(tt.want) == 0) {
			t.Errorf("%+v: Check() = %v, want %q", tt.scale, err, tt.want)
		}
		for _, want := range tt.want {
			if err != nil && !want.Met(err) {
				t.Errorf("%+v: Check() = %q lacks %q", tt.scale, err, want)
			}
		}
	}
}
