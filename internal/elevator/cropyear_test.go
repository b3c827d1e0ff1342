package elevator_test

import (
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
)

func TestCropYearOfADay(t *testing.T) {
	p := elevator.Profile{CropStarts: []elevator.CropStart{{Commodity: "corn", From: "09-01"}, {Commodity: "wheat-hrw", From: "06-01"}}}
	for _, one := range []struct{ commodity, day, want string }{
		{"corn", "2026-08-31", "2025"}, {"corn", "2026-09-01", "2026"}, {"corn", "2027-01-15", "2026"},
		{"wheat-hrw", "2026-05-31", "2025"}, {"wheat-hrw", "2026-06-01", "2026"}, {"soybeans", "2026-10-01", ""},
	} {
		if got := p.CropYear(one.commodity, quantity.MustDate(one.day)); got != one.want {
			t.Errorf("%s on %s is of %q, want %q", one.commodity, one.day, got, one.want)
		}
	}
	for from, good := range map[string]bool{"09-01": true, "02-29": true, "13-01": false, "9-1": false, "": false} {
		if err := (elevator.CropStart{Commodity: "corn", From: from}).Check(); (err == nil) != good {
			t.Errorf("%q: %v", from, err)
		}
	}
}

func TestLettersBeforeANumber(t *testing.T) {
	for letters, want := range map[string]string{"": "1042", "KHB": "KHB-1042"} {
		if got := elevator.Lettered(letters, 1042); got != want {
			t.Errorf("%q: %s, want %s", letters, got, want)
		}
	}
	for letters, good := range map[string]bool{"": true, "KH": true, "ELM2": true, "kh": false, "K H": false, "TOOLONGNAME": false} {
		if err := elevator.CheckLetters(letters); (err == nil) != good {
			t.Errorf("%q: %v", letters, err)
		}
	}
}
