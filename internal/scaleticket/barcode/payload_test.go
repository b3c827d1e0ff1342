package barcode

import (
	"image"
	"testing"

	"tenthpoint/internal/message/errortest"
	"tenthpoint/internal/quantity"

	"pgregory.net/rapid"
)

func TestPayloadComesBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figure := func(name string, unit quantity.Unit) quantity.Amount {
			n := quantity.Int(rapid.Int64Range(1, 99999999).Draw(t, name), quantity.Plain)
			return n.Mul(quantity.Of(rapid.SampledFrom([]string{"1", "0.1", "0.01", "0.001"}).Draw(t, name+" place"), unit))
		}
		p := Payload{
			Ticket:   rapid.Int64Range(1, 1<<60).Draw(t, "ticket"),
			Net:      figure("net", rapid.SampledFrom([]quantity.Unit{quantity.Lb, quantity.Kg}).Draw(t, "weight unit")),
			Moisture: figure("moisture", quantity.Percent),
			Dry:      figure("dry", rapid.SampledFrom([]quantity.Unit{quantity.Bushel, quantity.Cwt, quantity.Tonne}).Draw(t, "dry unit")),
			Code:     rapid.StringMatching("[0-9a-f]{12}").Draw(t, "code"),
		}
		back, err := ParsePayload(p.String())
		if err != nil {
			t.Fatal(err)
		}
		if back.Ticket != p.Ticket || back.Code != p.Code || !back.Net.Equal(p.Net) || !back.Moisture.Equal(p.Moisture) || !back.Dry.Equal(p.Dry) {
			t.Fatalf("%q came back as %q", p, back)
		}
		if _, err := Square(p.String()); err != nil {
			t.Fatalf("%q cannot be drawn: %v", p, err)
		}
	})
}

func TestPayloadRefused(t *testing.T) {
	for _, c := range []struct {
		text    string
		problem errortest.Want
	}{
		{"", errortest.Invalid()},
		{"https://example.invalid/1042", errortest.Invalid()},
		{"TENTHPOINT/2 1042 52300LB 18.4% 891.89BU 3FA9C01D22E4", errortest.Invalid()},
		{"TENTHPOINT/1 1042 52300LB 18.4% 891.89BU", errortest.Invalid()},
		{"TENTHPOINT/1 0 52300LB 18.4% 891.89BU 3FA9C01D22E4", errortest.Invalid()},
		{"TENTHPOINT/1 -3 52300LB 18.4% 891.89BU 3FA9C01D22E4", errortest.Invalid()},
		{"TENTHPOINT/1 1042 52300LB 18.4% 891.89BU 3FA9C01D22EG", errortest.Invalid("12")},
		{"TENTHPOINT/1 1042 52300LB 18.4% 891.89BU 3FA9C0", errortest.Invalid("12")},
		{"TENTHPOINT/1 1042 52300 18.4% 891.89BU 3FA9C01D22E4", errortest.Invalid()},
		{"TENTHPOINT/1 1042 52300LB 18.4% 891.89GAL 3FA9C01D22E4", errortest.Invalid()},
		{"TENTHPOINT/1 1042 LB 18.4% 891.89BU 3FA9C01D22E4", errortest.Invalid()},
	} {
		if p, err := ParsePayload(c.text); !c.problem.Met(err) {
			t.Errorf("%q read as %q, %v; want an error with %q", c.text, p, err, c.problem)
		}
	}
}

func FuzzParsePayload(f *testing.F) {
	f.Add("TENTHPOINT/1 1042 52300LB 18.4% 891.89BU 3FA9C01D22E4")
	f.Add("TENTHPOINT/1 1 -LB .% BU 000000000000")
	f.Fuzz(func(t *testing.T, text string) {
		p, err := ParsePayload(text)
		if err != nil {
			return
		}
		if back, err := ParsePayload(p.String()); err != nil || back.Ticket != p.Ticket || !back.Net.Equal(p.Net) {
			t.Errorf("%q read as %q, which reads as %q, %v", text, p, back, err)
		}
	})
}

// TestCodeIsSmall: at most 33 modules to a side print a module of half a
// millimetre on the slip, which cheap scanners and printers manage.
func TestCodeIsSmall(t *testing.T) {
	p := Payload{Ticket: 99999999, Net: quantity.Of("126480", quantity.Lb), Moisture: quantity.Of("18.4", quantity.Percent), Dry: quantity.Of("2258.57", quantity.Bushel), Code: "3fa9c01d22e4"}
	picture, err := Square(p.String())
	if err != nil {
		t.Fatal(err)
	}
	if side := picture.Bounds(); side.Dx() > 33 || side.Dx() != side.Dy() {
		t.Errorf("the code is %d by %d modules", side.Dx(), side.Dy())
	}
	if !finder(picture) {
		t.Error("no finder pattern in the upper left corner")
	}
}

// finder looks for the square of seven modules that ISO/IEC 18004 puts in the
// corner of every QR code.
func finder(code image.Image) bool {
	pattern := []string{"#######", "#.....#", "#.###.#", "#.###.#", "#.###.#", "#.....#", "#######"}
	for y, row := range pattern {
		for x, want := range row {
			if isDark(code, x, y) != (want == '#') {
				return false
			}
		}
	}
	return true
}

func isDark(code image.Image, x, y int) bool {
	r, _, _, _ := code.At(x, y).RGBA()
	return r < 0x8000
}
