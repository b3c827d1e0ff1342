package scalehouse_test

import (
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/scalehouse/housetest"
)

// Scenes before a move. Each gives the load and the ticket in question.

type situation = func(*scene) (id string, number int64)

func nothing(*scene) (string, int64) { return "L1", 0 }

func arrived(s *scene) (string, int64) { return s.Arrive(52300), 0 }

func weighed(s *scene) (string, int64) {
	id := s.Arrive(52300)
	s.Weigh(id, load.Tare, 24300)
	return id, 0
}

func ready(s *scene) (string, int64) { return s.Whole(), 0 }

func ticketed(s *scene) (string, int64) { return s.Ticket() }

func swapped(s *scene) (string, int64) {
	id := s.Arrive(24300)
	s.Weigh(id, load.Tare, 52300)
	s.Sample(id, "18.0")
	return id, 0
}

func withFactor(factor grain.FactorID, text string) situation {
	return func(s *scene) (string, int64) {
		id := s.Whole()
		s.Sample(id, "18.0", housetest.Found(factor, text, quantity.Percent))
		return id, 0
	}
}

func withDetails(change func(*load.Details)) situation {
	return func(s *scene) (string, int64) {
		id := s.Whole()
		d := s.Load(id).Details
		change(&d)
		must(s.T, scalehouse.Amend(ctx, s.Desk, id, d))
		return id, 0
	}
}

func tooCold(s *scene) (string, int64) {
	id := s.Whole()
	cold := housetest.SampleOf("18.0")
	cold.Flags = []load.Flag{load.OldFlag("too-cold: The sample was at 36 °F.")}
	must(s.T, scalehouse.RecordSample(ctx, s.Desk, id, cold))
	return id, 0
}

func underCorrection(s *scene) (string, int64) {
	_, number := s.Ticket()
	id, err := scalehouse.Correct(ctx, s.As(housetest.Manager).Desk, number, "a trial")
	must(s.T, err)
	return id, number
}

func voidedUnderCorrection(s *scene) (string, int64) {
	id, number := underCorrection(s)
	must(s.T, scalehouse.Void(ctx, s.Desk, number, "a trial"))
	return id, number
}

// reissueSwapped has the truck weighed again while its ticket is reissued, and
// the figure typed is its gross.
func reissueSwapped(s *scene) (string, int64) {
	id, number := housetest.UnderReissue(s)
	s.Weigh(id, load.Tare, 62300)
	return id, number
}

func dayClosed(s *scene) (string, int64) {
	must(s.T, scalehouse.CloseDay(ctx, s.As(housetest.Manager).Desk, s.Today(), ""))
	return "", 0
}

func asManager(before situation) situation { return signedIn(housetest.Manager, before) }

func asTester(before situation) situation { return signedIn(housetest.Tester, before) }

// signedIn lets another person make the move.
func signedIn(name string, before situation) situation {
	return func(s *scene) (string, int64) {
		id, number := before(s)
		s.As(name)
		return id, number
	}
}

// unsigned is a desk on the same book at which nobody has signed in.
func unsigned(t *testing.T, s *scene) *scalehouse.Desk {
	d, err := scalehouse.Open(ctx, s.Store, scalehouse.Options{Rates: s.Rates(), Clock: s.Clock()})
	must(t, err)
	return d
}

// Moves.

type move = func(s *scene, id string, number int64) error

func issue(s *scene, id string, _ int64) error {
	_, err := scalehouse.Issue(ctx, s.Desk, id)
	return err
}

func printed(s *scene, _ string, number int64) error {
	_, err := scalehouse.RecordPrint(ctx, s.Desk, number)
	return err
}

func amend(s *scene, id string, _ int64) error {
	return scalehouse.Amend(ctx, s.Desk, id, housetest.Details())
}

func weighGross(s *scene, id string, _ int64) error {
	return scalehouse.Weigh(ctx, s.Desk, id, housetest.ScaleWeight(load.Gross, 52300))
}

func weigh(w load.Weighing) move {
	return func(s *scene, id string, _ int64) error { return scalehouse.Weigh(ctx, s.Desk, id, w) }
}

func sample(moisture string) move {
	return func(s *scene, id string, _ int64) error {
		return scalehouse.RecordSample(ctx, s.Desk, id, housetest.SampleOf(moisture))
	}
}

func open(change func(*load.Details)) move {
	return func(s *scene, _ string, _ int64) error {
		d := housetest.Details()
		change(&d)
		_, err := scalehouse.OpenLoad(ctx, s.Desk, d)
		return err
	}
}

func void(reason string) move {
	return func(s *scene, _ string, number int64) error { return scalehouse.Void(ctx, s.Desk, number, reason) }
}

func correct(reason string) move {
	return func(s *scene, _ string, number int64) error {
		_, err := scalehouse.Correct(ctx, s.Desk, number, reason)
		return err
	}
}

func reissue(reason string) move {
	return func(s *scene, _ string, number int64) error {
		_, err := scalehouse.Reissue(ctx, s.Desk, number, reason)
		return err
	}
}

func refuse(reason string) move {
	return func(s *scene, id string, _ int64) error { return scalehouse.Refuse(ctx, s.Desk, id, reason) }
}

func accept(limit, reason string) move {
	return func(s *scene, id string, _ int64) error { return scalehouse.Accept(ctx, s.Desk, id, limit, reason) }
}

func closeDay(day string) move {
	return func(s *scene, _ string, _ int64) error {
		return scalehouse.CloseDay(ctx, s.Desk, quantity.MustDate(day), "")
	}
}

func setProfile(p elevator.Profile) move {
	return func(s *scene, _ string, _ int64) error { return scalehouse.SetProfile(ctx, s.Desk, p) }
}

func setPerson(p elevator.Person) move {
	return func(s *scene, _ string, _ int64) error { return scalehouse.SetPerson(ctx, s.Desk, p) }
}

func setGrower(g elevator.Grower) move {
	return func(s *scene, _ string, _ int64) error { return scalehouse.SetGrower(ctx, s.Desk, g) }
}

func setTruck(tr elevator.Truck) move {
	return func(s *scene, _ string, _ int64) error { return scalehouse.SetTruck(ctx, s.Desk, tr) }
}

var halfShared = elevator.Grower{ID: "G1", Name: "Ada Field", Shares: []elevator.Share{{GrowerID: "G1", Parts: housetest.Plain(1), Of: housetest.Plain(2)}}}

func overShared(d *load.Details) {
	d.Shares = []load.Owner{
		{Party: d.Grower, Parts: housetest.Plain(1), Of: housetest.Plain(1)},
		{Party: load.Party{ID: "G2", Name: "Bo Acre"}, Parts: housetest.Plain(1), Of: housetest.Plain(2)},
	}
}
