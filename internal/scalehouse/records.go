package scalehouse

import (
	"context"
	"errors"
	"slices"
	"strings"

	"tenthpoint/internal/book"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/published"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/truckscale"
)

// SetProfile sets the elevator up, or changes it.
func SetProfile(ctx context.Context, at Actor, p elevator.Profile) error {
	return SetRecord(ctx, at, "elevator", p)
}

// SetGrower records a grower. A name it had before still finds it.
func SetGrower(ctx context.Context, at Actor, g elevator.Grower) error {
	return AmendGrower(ctx, at, g.ID, func(elevator.Grower) elevator.Grower { return g })
}

// AmendGrower records a grower as made of the card that is there, which is empty where there is none.
func AmendGrower(ctx context.Context, at Actor, id string, amended func(was elevator.Grower) elevator.Grower) error {
	return at.do(ctx, func(w *Batch) error {
		old, known, err := growerNow(w, id)
		if err != nil {
			return err
		}
		g := amended(old)
		if known && old.Name != g.Name && !slices.Contains(g.Former, old.Name) {
			g.Former = append(slices.Clone(g.Former), old.Name)
		}
		return SetRecord(ctx, w, g.ID, g)
	})
}

// TakeOver ends a grower's card: another takes its place. What was issued keeps the name it prints.
func TakeOver(ctx context.Context, at Actor, id string, by elevator.Takeover) error {
	return at.do(ctx, func(w *Batch) error {
		if err := w.desk.MayManage("Merging the cards of growers"); err != nil {
			return err
		}
		old, known, err := growerNow(w, id)
		if err != nil {
			return err
		}
		next, there, err := growerNow(w, by.Grower)
		switch {
		case err != nil:
			return err
		case !known || !there:
			return message.NotFound.Errorf("there is no grower %q in this book. Look the code up in the list of growers", id+" "+by.Grower)
		case id == by.Grower:
			return message.Invalid.Errorf("%s cannot take its own place; name another card", next.Name)
		case old.Into != nil:
			return message.WrongPhase.Errorf("%s has ended already; %s is in its place", old.Name, old.Into.Grower)
		case next.Into != nil:
			return message.WrongPhase.Errorf("%s has ended already; %s is in its place", next.Name, next.Into.Grower)
		case strings.TrimSpace(by.Reason) == "":
			return message.Incomplete.Errorf("a card is taken over only with a reason; type one")
		}
		by.Day = w.desk.Today()
		old.Into = &by
		return SetRecord(ctx, w, id, old)
	})
}

// growerNow is a grower by code as the work has left it so far.
func growerNow(w *Batch, id string) (g elevator.Grower, known bool, err error) {
	return recordNow(w, func(one elevator.Grower) bool { return one.ID == id })
}

// recordNow is a record of a list as the work has left it so far.
func recordNow[R journal.Kinded](w *Batch, is func(R) bool) (found R, known bool, err error) {
	all, err := RecordsIn[R](w)
	i := slices.IndexFunc(all, is)
	if err != nil || i < 0 {
		return found, false, err
	}
	return all[i], true, nil
}

// SetTruck records a truck.
func SetTruck(ctx context.Context, at Actor, t elevator.Truck) error {
	return SetRecord(ctx, at, t.ID, t)
}

// AmendTruck records a truck as made of the one that is there, which is empty where there is none.
func AmendTruck(ctx context.Context, at Actor, id string, amended func(was elevator.Truck) elevator.Truck) error {
	return at.do(ctx, func(w *Batch) error {
		was, _, err := recordNow(w, func(t elevator.Truck) bool { return t.ID == id })
		if err != nil {
			return err
		}
		return SetTruck(ctx, w, amended(was))
	})
}

// SetBin records a pit or bin.
func SetBin(ctx context.Context, at Actor, b elevator.Bin) error {
	return SetRecord(ctx, at, b.ID, b)
}

// SetContract records a contract.
func SetContract(ctx context.Context, at Actor, c elevator.ContractTerms) error {
	return SetRecord(ctx, at, c.Number, c)
}

// SetPerson records a person at the desk. The first one must be a manager, and one manager always
// stays.
func SetPerson(ctx context.Context, at Actor, p elevator.Person) error {
	return SetRecord(ctx, at, p.Name, p)
}

// PostPrice posts the price of a grain for a day, for all desks of the elevator. Loads typed
// afterwards are compared with it and remember it; those before keep what they were typed at.
func PostPrice(ctx context.Context, at Actor, p elevator.PostedPrice) error {
	return SetRecord(ctx, at, p.ID(), p)
}

// MakeEdition writes down that a manager made an edition the house's own, and keeps its text in the
// book. Base is the edition it was begun from; asItIs, that no figure of it was changed.
func MakeEdition(ctx context.Context, at Actor, e *rates.Edition, base string, asItIs bool) error {
	if e.Status != rates.House {
		return message.Refused.Errorf("edition %s is marked %s. An edition of the house is marked %q", e.ID, e.Status.Message(), string(rates.House))
	}
	return at.do(ctx, func(w *Batch) error {
		if err := SetRecord(ctx, w, e.ID, elevator.OwnEdition{
			ID: e.ID, Hash: e.Hash, Commodity: e.Commodity.ID, Schedule: e.Schedule, From: e.From, Base: base, AsItIs: asItIs,
		}); err != nil {
			return err
		}
		return KeepIn(w, e.ID, e.Hash, e.Text)
	})
}

// SetRecord writes a record of the master data whole, under its id: the last one
// written is the one in force.
func SetRecord(ctx context.Context, at Actor, id string, f journal.Kinded) error {
	return at.do(ctx, func(w *Batch) error {
		if err := w.desk.mayRecord(f); err != nil {
			return err
		}
		if err := w.fit(f); err != nil {
			return err
		}
		w.recorded, w.pits = true, nil
		return w.putRecord(f.Kind()+" "+id, id, f)
	})
}

// putRecord appends a fact that is also the record in force under its id.
func (w *Batch) putRecord(subject, id string, f journal.Kinded) error {
	fact, err := w.appendFact(f.Kind(), subject, f)
	if err != nil {
		return err
	}
	return w.tx.PutRecord(book.Record{Kind: f.Kind(), ID: id, Seq: fact.Seq, Body: fact.Body})
}

// mayRecord returns an error when the person signed in may not write a record.
func (d *Desk) mayRecord(f journal.Kinded) error {
	switch f.(type) {
	case elevator.Profile:
		return d.MayManage("The set-up")
	case elevator.Person:
		return d.MayManage("Adding people")
	case elevator.ContractTerms:
		return d.MayManage("Writing a contract down")
	case elevator.OwnEdition:
		return d.MayManage("Making an edition the house's own")
	case truckscale.Certificate:
		return d.MayManage("Writing a certificate down")
	case truckscale.Service:
		if f.(truckscale.Service).Out {
			return d.MayWeigh("take a scale out of service")
		}
		return d.MayManage("Putting a scale back in service")
	case office.MeterRecord:
		return d.MayManage("Setting a meter up")
	case office.Bench:
		return d.MayManage("Changing how the bench tests")
	case office.SampleDiscarded:
		return MaySample(d)
	}
	return MayAct(d, elevator.ListActs, "change the lists")
}

// fit returns what is wrong with a record, or nil.
func (w *Batch) fit(f journal.Kinded) error {
	switch f := f.(type) {
	case elevator.Profile:
		return message.Errs(message.Incomplete, f.Check())
	case elevator.Person:
		if err := f.Check(); err != nil {
			return err
		}
		return managerStays(w, f)
	case elevator.Grower:
		return errors.Join(f.Check(), isTheOffices(w, f))
	case interface{ Check() error }:
		return f.Check()
	}
	return nil
}

// isTheOffices refuses a change of a card that the head office lays down.
func isTheOffices(w *Batch, g elevator.Grower) error {
	received, err := book.RecordsIn[published.Received](w.tx)
	if err != nil {
		return err
	}
	of := published.Publication{Grower: &g}.Of()
	if r, holds := published.InForce(received, w.desk.Today())[of]; holds {
		return message.Refused.Errorf("the card of %s is the head office's, of site %v, since %s. Have it changed there; it comes with the next \"tenth office fetch\"", g.Name, r.Office, r.From)
	}
	return nil
}

// managerStays refuses a change after which no manager would be left.
func managerStays(w *Batch, p elevator.Person) error {
	if p.Role == elevator.Manager && !p.Gone {
		return nil
	}
	people, err := w.people()
	if err != nil {
		return err
	}
	if len(people) == 0 {
		return message.Refused.Errorf("the first person must be a manager, or nobody could add others; %s is %s", p.Name, p.Role)
	}
	for _, other := range people {
		if other.Name != p.Name && other.Role == elevator.Manager && !other.Gone {
			return nil
		}
	}
	return message.Refused.Errorf("%s is the only manager here. Make somebody else a manager first, or nobody could add people", p.Name)
}

// people are all people as the work has left them so far.
func (w *Batch) people() ([]elevator.Person, error) { return RecordsIn[elevator.Person](w) }
