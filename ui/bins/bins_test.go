package bins

import (
	"context"
	"strings"
	"testing"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/bin/shape"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain/look"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session/sessiontest"
)

func demoBins(t *testing.T) (*sessiontest.Room, *Bins) {
	t.Helper()
	r := sessiontest.DemoRoom(t, 60)
	b := NewBins(r.Session)
	b.Reload()
	return r, b
}

func lies(t *testing.T, r *sessiontest.Room, id, commodity string) quantity.Amount {
	t.Helper()
	one, err := binlog.One(context.Background(), r.Session.Desk, id, r.Session.Desk.Today())
	sessiontest.Must(t, err)
	for _, h := range one.Grain {
		if h.Commodity == commodity {
			return h.Lies()
		}
	}
	return quantity.Zero(quantity.Lb)
}

// What needs looking at stands first, and every bin is drawn once.
func TestBinsListWhatNeedsLookingAtFirst(t *testing.T) {
	_, b := demoBins(t)
	rows := b.Rows()
	if len(rows) < len(b.all) || len(b.Pictures()) != len(b.all) {
		t.Fatalf("%d rows and %d pictures of %d bins", len(rows), len(b.Pictures()), len(b.all))
	}
	for i := 1; i < len(rows); i++ {
		if rows[i].State > rows[i-1].State {
			t.Errorf("row %d, %s, is more urgent than the one above it", i, rows[i].Key)
		}
	}
}

// Grain is moved from the chosen bin into another: both have it after that, and the message names the number.
func TestMoveGrain(t *testing.T) {
	r, b := demoBins(t)
	b.Choose("B1")
	before, there := lies(t, r, "B1", "corn"), lies(t, r, "B2", "corn")
	b.Move(bin.Transfer)
	if got := r.Question().Fields[0].Value; got != "B1" {
		t.Errorf("the bin it is taken from is %q", got)
	}
	if faults := r.Answer(map[string]string{"from": "B1", "into": "B2", "weight": "8000"}); len(faults) > 0 {
		t.Fatalf("refused: %v", faults)
	}
	sessiontest.WantSaid(t, r, model.OK, "is written down")
	moved := quantity.Int(8000, quantity.Lb)
	if got := lies(t, r, "B1", "corn"); !got.Equal(before.Sub(moved)) {
		t.Errorf("B1 has %s, want %s", got, before.Sub(moved))
	}
	if got := lies(t, r, "B2", "corn"); !got.Equal(there.Add(moved)) {
		t.Errorf("B2 has %s, want %s", got, there.Add(moved))
	}
	if !b.CanUndo() {
		t.Fatal("the movement cannot be taken back")
	}
	b.Undo()
	r.Answer(map[string]string{"reason": "it was never moved"})
	if got := lies(t, r, "B1", "corn"); !got.Equal(before) {
		t.Errorf("taken back, B1 has %s, want %s", got, before)
	}
}

// What is wrong is told at its field, and nothing is written.
func TestMoveTellsWhatIsWrong(t *testing.T) {
	r, b := demoBins(t)
	b.Choose("B1")
	before := lies(t, r, "B1", "corn")
	b.Move(bin.Transfer)
	faults := r.Answer(map[string]string{"from": "B1", "into": "B2", "weight": "much"})
	if faults["weight"] == "" {
		t.Errorf("faults are %v", faults)
	}
	b.Move(bin.Transfer)
	r.Answer(map[string]string{"from": "B1", "into": "B2", "weight": "99000000"})
	if got := lies(t, r, "B1", "corn"); !got.Equal(before) {
		t.Errorf("B1 has %s, want %s", got, before)
	}
}

// A manager's act asks for the manager; every dangerous act has its caution where it is.
func TestMovementsHaveTheirCautions(t *testing.T) {
	r, b := demoBins(t)
	b.Choose("B1")
	for _, kind := range []bin.Kind{bin.Transfer, bin.Blend, bin.Turn, bin.Clean, bin.Dry, bin.Aerate, bin.Temperatures, bin.MeasureUp, bin.WeighOver, bin.WriteOff} {
		b.Move(kind)
		asked := r.Question()
		last := asked.Fields[len(asked.Fields)-1].ID
		if wants := kind == bin.MeasureUp || kind == bin.WeighOver || kind == bin.WriteOff; wants != (last == managerField) {
			t.Errorf("%s: the last field is %s", kind, last)
		}
		for _, c := range kind.Cautions() {
			if !strings.Contains(asked.Text, c.Said().String()) {
				t.Errorf("%s does not say %q", kind, c)
			}
		}
	}
}

// Lengths are drawn to one scale, metres beside feet, and an unmeasured bin in an ordinary size.
func TestPicturesAreToScale(t *testing.T) {
	r := sessiontest.EmptyRoom(t)
	b := NewBins(r.Session)
	b.all = []binlog.Bin{
		{Bin: elevator.Bin{ID: "A", Shape: shape.Shape{Form: shape.Hopper, Diameter: quantity.Of("30", quantity.Foot), Wall: quantity.Of("60", quantity.Foot), Cone: quantity.Of("20", quantity.Foot), Peak: quantity.Of("20", quantity.Foot)}}},
		{Bin: elevator.Bin{ID: "B", Shape: shape.Shape{Form: shape.Round, Diameter: quantity.Of("15.24", quantity.Metre), Wall: quantity.Of("3.048", quantity.Metre)}}},
		{Bin: elevator.Bin{ID: "C"}},
	}
	got := b.Pictures()
	for i, want := range []model.BinPicture{
		{Key: "A", Label: "A", Under: "empty", Width: 300, Wall: 600, Cone: 200, Peak: 200},
		{Key: "B", Label: "B", Under: "empty", Width: 500, Wall: 100},
		{Key: "C", Label: "C", Under: "empty", Width: 200, Wall: 200, Unmeasured: true},
	} {
		if want.Look = look.Other; got[i] != want {
			t.Errorf("drawn as %+v, want %+v", got[i], want)
		}
	}
}
