package scalehouse_test

import (
	"testing"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// Scenes before a move. Each gives the load and the ticket in question.

type situation = func(*scene) (id string, number int64)

func nothing(*scene) (string, int64) { return "L1", 0 }

func arrived(s *scene) (string, int64) { return s.arrive(52300), 0 }

func weighed(s *scene) (string, int64) {
	id := s.arrive(52300)
	s.weigh(id, load.Tare, 24300)
	return id, 0
}

func ready(s *scene) (string, int64) { return s.whole(), 0 }

func ticketed(s *scene) (string, int64) { return s.ticket() }

func swapped(s *scene) (string, int64) {
	id := s.arrive(24300)
	s.weigh(id, load.Tare, 52300)
	s.sample(id, "18.0")
	return id, 0
}

func withFactor(factor grain.FactorID, text string) situation {
	return func(s *scene) (string, int64) {
		id := s.whole()
		s.sample(id, "18.0", found(factor, text, quantity.Percent))
		return id, 0
	}
}

func withDetails(change func(*load.Details)) situation {
	return func(s *scene) (string, int64) {
		id := s.whole()
		d := s.load(id).Details
		change(&d)
		must(s.t, scalehouse.Amend(ctx, s.Desk, id, d))
		return id, 0
	}
}

func tooCold(s *scene) (string, int64) {
	id := s.whole()
	cold := sampleOf("18.0")
	cold.Flags = []string{"too-cold: The sample was at 36 °F."}
	must(s.t, scalehouse.RecordSample(ctx, s.Desk, id, cold))
	return id, 0
}

func voided(s *scene) (string, int64) {
	id, number := s.ticket()
	must(s.t, scalehouse.Void(ctx, s.as(manager).Desk, number, "a trial"))
	return id, number
}

func corrected(s *scene) (string, int64) {
	id, number := s.ticket()
	next, err := scalehouse.Correct(ctx, s.as(manager).Desk, number, "a trial")
	must(s.t, err)
	_, err = scalehouse.Issue(ctx, s.Desk, next)
	must(s.t, err)
	return id, number
}

func underCorrection(s *scene) (string, int64) {
	_, number := s.ticket()
	id, err := scalehouse.Correct(ctx, s.as(manager).Desk, number, "a trial")
	must(s.t, err)
	return id, number
}

func voidedUnderCorrection(s *scene) (string, int64) {
	id, number := underCorrection(s)
	must(s.t, scalehouse.Void(ctx, s.Desk, number, "a trial"))
	return id, number
}

func underReissue(s *scene) (string, int64) {
	_, number := voided(s)
	id, err := scalehouse.Reissue(ctx, s.Desk, number, "torn in the printer")
	must(s.t, err)
	return id, number
}

func reissued(s *scene) (string, int64) {
	id, number := underReissue(s)
	_, err := scalehouse.Issue(ctx, s.Desk, id)
	must(s.t, err)
	return id, number
}

// reissueSwapped has the truck weighed again while its ticket is reissued, and
// the figure typed is its gross.
func reissueSwapped(s *scene) (string, int64) {
	id, number := underReissue(s)
	s.weigh(id, load.Tare, 62300)
	return id, number
}

func turnedAway(s *scene) (string, int64) {
	id := s.arrive(52300)
	must(s.t, scalehouse.Refuse(ctx, s.Desk, id, "hot"))
	return id, 0
}

func dayClosed(s *scene) (string, int64) {
	must(s.t, scalehouse.CloseDay(ctx, s.as(manager).Desk, s.Today(), ""))
	return "", 0
}

func asManager(before situation) situation { return signedIn(manager, before) }
func asTester(before situation) situation  { return signedIn(tester, before) }

// signedIn lets another person make the move.
func signedIn(name string, before situation) situation {
	return func(s *scene) (string, int64) {
		id, number := before(s)
		s.as(name)
		return id, number
	}
}

// unsigned is a desk on the same book at which nobody has signed in.
func unsigned(t *testing.T, s *scene) *scalehouse.Desk {
	d, err := scalehouse.Open(ctx, s.book, scalehouse.Options{Rates: s.Rates(), Clock: s.clock()})
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

func amend(s *scene, id string, _ int64) error { return scalehouse.Amend(ctx, s.Desk, id, details()) }

func weighGross(s *scene, id string, _ int64) error {
	return scalehouse.Weigh(ctx, s.Desk, id, scaleWeight(load.Gross, 52300))
}

func weigh(w load.Weighing) move {
	return func(s *scene, id string, _ int64) error { return scalehouse.Weigh(ctx, s.Desk, id, w) }
}

func sample(moisture string) move {
	return func(s *scene, id string, _ int64) error {
		return scalehouse.RecordSample(ctx, s.Desk, id, sampleOf(moisture))
	}
}

func open(change func(*load.Details)) move {
	return func(s *scene, _ string, _ int64) error {
		d := details()
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

func amount(text string) *quantity.Amount {
	var a quantity.Amount
	if err := a.UnmarshalText([]byte(text)); err != nil {
		panic(err)
	}
	return &a
}

func plain(n int64) quantity.Amount { return quantity.Int(n, quantity.Plain) }

var halfShared = elevator.Grower{ID: "G1", Name: "Ada Field", Shares: []elevator.Share{{GrowerID: "G1", Parts: plain(1), Of: plain(2)}}}

func overShared(d *load.Details) {
	d.Shares = []load.Owner{
		{Party: d.Grower, Parts: plain(1), Of: plain(1)},
		{Party: load.Party{ID: "G2", Name: "Bo Acre"}, Parts: plain(1), Of: plain(2)},
	}
}
