package scalehouse_test

import (
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/office"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/draft"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// An edition is made the house's own by a manager, never with the mark of an example; its text is kept
// by its hash.
func TestMakeEdition(t *testing.T) {
	s := housetest.Workday(t)
	e, some := s.Desk.Rates().ByID(s.Desk.Rates().All()[0].ID)
	if !some {
		t.Fatal("no rates")
	}
	mine, problems := draft.MakeMine(e, draft.Head{ID: "corn-own", From: "2026-10-01", Issued: "2026-10-01", By: "Our Elevator", Document: "posted"}).Check("")
	if mine == nil {
		t.Fatal(problems)
	}
	own := *mine
	example := own
	example.Status = rates.Example
	if err := scalehouse.MakeEdition(ctx, s.Desk, &example, e.ID, true); err == nil {
		t.Error("an example was made the house's own with its mark")
	}
	must(t, s.Desk.SignIn(housetest.Manager))
	must(t, scalehouse.MakeEdition(ctx, s.Desk, &own, e.ID, true))
	made, err := office.RecordsOf[elevator.OwnEdition](ctx, s.Desk.Reader())
	must(t, err)
	if len(made) != 1 || made[0].ID != "corn-own" || made[0].Base != e.ID || !made[0].AsItIs || made[0].Commodity != e.Commodity.ID {
		t.Errorf("made: %+v", made)
	}
	if _, text, err := s.Desk.Reader().Edition(ctx, own.Hash); err != nil || text != string(own.Text) {
		t.Errorf("the text kept: %v", err)
	}
	must(t, s.Desk.SignIn(housetest.Tester))
	if err := scalehouse.MakeEdition(ctx, s.Desk, &own, e.ID, true); err == nil {
		t.Error("a tester made an edition the house's own")
	}
}
