package scalehouse_test

import (
	"errors"
	"strings"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// Control characters and texts without end are refused in every name, and nothing
// is written.
func TestHostileNamesAreRefused(t *testing.T) {
	s := housetest.New(t)
	before := s.Contents()
	for what, name := range map[string]string{
		"escape": "Ada\x1b[2JField", "carriage return": "Ada\rField", "line": "Ada\nField", "tab": "Ada\tField", "bell": "Ada\a", "delete": "Ada\x7f",
		"turned writing": "Ada\u202eField", "no end": strings.Repeat("a", 201), "far too long": strings.Repeat("ä", 100000),
	} {
		if err := scalehouse.SetGrower(ctx, s.Desk, elevator.Grower{ID: "G1", Name: name}); !errors.Is(err, message.Invalid) {
			t.Errorf("%s in a grower's name: %v", what, err)
		}
		d := housetest.Details()
		d.Driver = name
		if _, err := scalehouse.OpenLoad(ctx, s.Desk, d); !errors.Is(err, message.Invalid) {
			t.Errorf("%s in a driver's name: %v", what, err)
		}
		if s.Contents() != before {
			t.Fatalf("%s: something was written", what)
		}
	}
	for _, name := range []string{"Körner & Söhne", `Ada "Red" O'Field`, `back\slash`, strings.Repeat("ä", 200)} {
		must(t, scalehouse.SetGrower(ctx, s.Desk, elevator.Grower{ID: "G1", Name: name}))
	}
	d := housetest.Details()
	d.Remark = "first line\nsecond line"
	_, err := scalehouse.OpenLoad(ctx, s.Desk, d)
	must(t, err)
}
