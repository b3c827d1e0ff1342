package gallery

import (
	"fmt"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/paperview"
	"testing"

	"fyne.io/fyne/v2"
)

// longSlip is longer than any window is high.
func longSlip() (lines []scaleticket.PaperLine) {
	for i := range 80 {
		lines = append(lines, scaleticket.PaperLine{Left: fmt.Sprint("line ", i), Right: "1"})
	}
	return lines
}

// A line out of sight is brought into sight, and one in sight moves nothing.
func TestRevealScrollsNoFurtherThanNeeded(t *testing.T) {
	h := newHouse(t)
	v := paperview.NewSlipView()
	lines := longSlip()
	v.SetLines(lines)
	h.Show(v, fyne.NewSize(400, 300))
	for _, step := range []struct {
		line int
		move bool
	}{{0, false}, {5, false}, {60, true}, {61, true}, {58, false}, {0, true}, {-1, false}, {80, false}} {
		before := v.Offset()
		v.Reveal(step.line)
		if moved := v.Offset() != before; moved != step.move {
			t.Errorf("revealing line %d moved the slip from %v to %v, want a move: %v", step.line, before, v.Offset(), step.move)
		}
		if step.line >= 0 && step.line < len(lines) {
			if top := v.Paper().InType().RowOf(step.line).Top; top < v.Offset() || top > v.Offset()+v.Scroll.Size().Height {
				t.Errorf("line %d at %v is out of sight: the slip stands at %v", step.line, top, v.Offset())
			}
		}
	}
}

// A line looked for while the slip had no room is where it belongs once there is
// some: a slip whose line stands near its head shows from its head.
func TestRevealedBeforeThereWasRoom(t *testing.T) {
	h := newHouse(t)
	v := paperview.NewSlipView()
	v.SetLines(longSlip())
	h.Show(v, fyne.NewSize(400, 40))
	v.Reveal(6)
	if v.Offset() == 0 {
		t.Fatal("with no room the line was in sight")
	}
	v.Resize(fyne.NewSize(400, 300))
	if v.Offset() != 0 {
		t.Errorf("with room the slip stands at %v", v.Offset())
	}
}
