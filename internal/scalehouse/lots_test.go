package scalehouse_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/binlog"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// withLot is the scene of bins after a load of lot ORG-1 came by way of the pit into B1.
func withLot(t *testing.T) *binScene {
	s := withBins(t)
	s.brings(t, "ORG-1", 52300)
	return s
}

// brings takes a load of a lot in at the pit, and returns what the house asks about it.
func (s *binScene) brings(t *testing.T, lot string, gross int64) guard.Asked {
	t.Helper()
	return s.bringsTo(t, "Pit 1", lot, gross)
}

func (s *binScene) bringsTo(t *testing.T, pit, lot string, gross int64) guard.Asked {
	t.Helper()
	d := inbound()
	d.Bin, d.Lot, d.Truck = pit, lot, load.Truck{Plate: fmt.Sprintf("T%d", gross)}
	id := taken(t, s.Desk, d, gross, 24300)
	around, err := office.Surroundings(s.Desk, office.ReadNow(ctx, s.Desk), s.Load(id))
	must(t, err)
	asked := guard.Unanswered(s.Load(id), guard.Check(s.Load(id), around))
	_, err = scalehouse.Issue(ctx, s.Desk, id)
	must(t, err)
	return asked
}

func isAsked(asked guard.Asked, about guard.ID) bool {
	_, found := asked.Find(string(about))
	return found
}

// A truck's lot is compared with what lies in the bin that the usual path of its pit leads to.
func TestALotIsComparedWhereThePathLeads(t *testing.T) {
	s := withLot(t)
	if asked := s.brings(t, "ORG-1", 52320); len(asked) > 0 {
		t.Errorf("the same lot: %v", asked)
	}
	if asked := s.brings(t, "", 52340); !isAsked(asked, guard.OtherLot) {
		t.Errorf("grain of no lot on lot ORG-1 in B1: asked %v", asked)
	}
}

// What a movement brought into a bin is its lot too, also on a later day.
func TestAMovementCarriesItsLot(t *testing.T) {
	s := withLot(t)
	m, err := scalehouse.MoveGrain(ctx, s.Desk, transfer("B1", "B2", 8_000))
	must(t, err)
	if m.Lot != "ORG-1" || len(m.Asked) > 0 {
		t.Errorf("moved into an empty bin: lot %q, asked %v", m.Lot, m.Asked)
	}
	s.At("2026-10-02 09:00")
	if asked := s.bringsTo(t, "B2", "", 52400); !isAsked(asked, guard.OtherLot) {
		t.Errorf("grain of no lot on what was moved into B2: asked %v", asked)
	}
}

// Grain of two lots is put together by nobody who does not say why; the movement keeps what was asked.
func TestAMovementOntoAnotherLotIsAsked(t *testing.T) {
	s := withLot(t)
	must(t, scalehouse.SetBin(ctx, s.As(housetest.Manager).Desk, elevator.Bin{ID: "B3", Name: "Bin 3", Commodity: "corn", Lot: "ORG-2"}))
	s.bringsTo(t, "B2", "", 60000)
	blend := bin.Movement{What: bin.Blend, Commodity: "corn", From: append(ofBin("B1", 1_000), ofBin("B2", 1_000)...), Into: ofBin("B2", 2_000)}
	for _, c := range []struct {
		name string
		bin.Movement
	}{{"into a bin for another lot", transfer("B1", "B3", 1_000)}, {"blended with no lot", blend}, {"into it again, the blend undone", transfer("B1", "B3", 1_000)}} {
		name, m := c.name, c.Movement
		if _, err := scalehouse.MoveGrain(ctx, s.As(housetest.Clerk).Desk, m); !errors.Is(err, message.Refused) {
			t.Errorf("%s without a reason: %v", name, err)
		}
		m.Reason = "agreed with both owners"
		moved, err := scalehouse.MoveGrain(ctx, s.As(housetest.Clerk).Desk, m)
		must(t, err)
		if len(moved.Asked) != 1 || !strings.Contains(binlog.Note(moved).String(), "ORG-1") || !strings.Contains(binlog.Note(moved).String(), m.Reason) {
			t.Errorf("%s: asked %v, noted %q", name, moved.Asked, binlog.Note(moved))
		}
		back, err := scalehouse.UndoMovement(ctx, s.As(housetest.Clerk).Desk, moved.Number, "not meant")
		must(t, err)
		if back.Number == 0 {
			t.Errorf("%s: not undone", name)
		}
	}
	s.Verify()
}

// The house chooses what is done about grain on other grain, for movements as for trucks.
func TestTheHouseChoosesForMovements(t *testing.T) {
	s := withLot(t)
	onto := transfer("B1", "B4", 1_000)
	if m, err := scalehouse.MoveGrain(ctx, s.As(housetest.Manager).Desk, onto); err != nil || len(m.Asked) != 1 {
		t.Errorf("a manager's act: asked %v, %v", m.Asked, err)
	}
	for act, want := range map[elevator.GuardAct]bool{elevator.GuardOff: true, elevator.GuardRemark: true, elevator.GuardQuestion: false, elevator.GuardManager: false} {
		p := s.Profile()
		p.Guards = p.Guards.With(elevator.GuardRule{Guard: "bin", Act: act})
		must(t, scalehouse.SetProfile(ctx, s.As(housetest.Manager).Desk, p))
		m, err := scalehouse.MoveGrain(ctx, s.As(housetest.Clerk).Desk, onto)
		if (err == nil) != want {
			t.Errorf("%s: %v", act, err)
		}
		if asked := len(m.Asked) == 1; err == nil && asked != (act == elevator.GuardRemark) {
			t.Errorf("%s: asked %v", act, m.Asked)
		}
	}
}
