package equipment

import (
	"slices"
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/ui/model"
)

// Bin, meter, sample and crop year are asked where the house made them compulsory, and
// the reasons for a typed weight are the house's.
func TestCompulsoryFieldsFromTheWindow(t *testing.T) {
	_, r, _ := gearRoom(t, 0)
	AskCompulsory(r.Session)
	wrong := r.Answer(map[string]string{"bin": model.TickOn, "crop-year": model.TickOn, "meter": "", "sample": "", "reasons": "link is down; ; scale ticket of the co-op"})
	if len(wrong) > 0 {
		t.Fatalf("refused: %v", wrong)
	}
	p := r.Session.Desk.Profile()
	if want := []elevator.Compulsory{elevator.BinCompulsory, elevator.CropYearCompulsory}; !slices.Equal(p.Compulsory, want) {
		t.Errorf("compulsory are %v, want %v", p.Compulsory, want)
	}
	if want := []string{"link is down", "scale ticket of the co-op"}; !slices.Equal(p.WhyManual(), want) {
		t.Errorf("the reasons are %q, want %q", p.WhyManual(), want)
	}
}
