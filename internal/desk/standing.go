package desk

import (
	"context"
	"fmt"

	"tenthpoint/internal/house"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/store"
)

// standing reads all standing things of one kind as they now are.
func standing[F journal.Kinded](ctx context.Context, book *store.Book) ([]F, error) {
	var zero F
	rows, err := book.StandingOf(ctx, zero.Kind())
	if err != nil {
		return nil, err
	}
	return readStanding[F](rows)
}

func readStanding[F journal.Kinded](rows []store.Standing) ([]F, error) {
	out := make([]F, 0, len(rows))
	for _, row := range rows {
		fact, err := journal.ReadBody[F](row.Body)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", row.ID, err)
		}
		out = append(out, fact)
	}
	return out, nil
}

// SetProfile sets the elevator up, or changes it.
func (d *Desk) SetProfile(ctx context.Context, p house.Profile) error {
	return d.setStanding(ctx, "elevator", p)
}

// SetGrower writes a grower down.
func (d *Desk) SetGrower(ctx context.Context, g house.Grower) error {
	return d.setStanding(ctx, g.ID, g)
}

// SetTruck writes a truck down.
func (d *Desk) SetTruck(ctx context.Context, t house.Truck) error {
	return d.setStanding(ctx, t.ID, t)
}

// SetBin writes a pit or bin down.
func (d *Desk) SetBin(ctx context.Context, b house.Bin) error {
	return d.setStanding(ctx, b.ID, b)
}

// SetContract writes a contract down.
func (d *Desk) SetContract(ctx context.Context, c house.ContractTerms) error {
	return d.setStanding(ctx, c.Number, c)
}

// SetPerson writes a person at the desk down. The first one must be a manager,
// and one manager always stays.
func (d *Desk) SetPerson(ctx context.Context, p house.Person) error {
	return d.setStanding(ctx, p.Name, p)
}

func (d *Desk) setStanding(ctx context.Context, id string, f journal.Kinded) error {
	return d.Together(ctx, func(w *Work) error { return w.Standing(id, f) })
}

// Standing writes a standing thing down whole, as part of the work.
func (w *Work) Standing(id string, f journal.Kinded) error {
	if err := w.desk.mayState(f); err != nil {
		return err
	}
	if err := w.fit(f); err != nil {
		return err
	}
	body, err := journal.Canonical(f)
	if err != nil {
		return err
	}
	fact, err := w.tx.Append(w.draft(f.Kind(), f.Kind()+" "+id, body))
	if err != nil {
		return err
	}
	return w.tx.PutStanding(store.Standing{Kind: f.Kind(), ID: id, Seq: fact.Seq, Body: body})
}

// mayState says in a sentence that a standing thing is not for the person
// signed in to write down.
func (d *Desk) mayState(f journal.Kinded) error {
	switch f.(type) {
	case house.Profile:
		return d.mayManage("The set-up")
	case house.Person:
		return d.mayManage("Adding people")
	case house.ContractTerms:
		return d.mayManage("Writing a contract down")
	case meterRecord:
		return d.mayManage("Setting a meter up")
	case Bench:
		return d.mayManage("Changing how the bench tests")
	case SampleDiscarded:
		return d.maySample()
	}
	return d.mayWeigh("change the lists")
}

// fit says what is wrong with a standing thing, or nothing.
func (w *Work) fit(f journal.Kinded) error {
	switch f := f.(type) {
	case house.Profile:
		if wrong := f.Check(); len(wrong) > 0 {
			return sentences(wrong)
		}
		return nil
	case house.Person:
		if err := f.Check(); err != nil {
			return err
		}
		return w.managerStays(f)
	case interface{ Check() error }:
		return f.Check()
	}
	return nil
}

// managerStays refuses a change after which no manager would be left.
func (w *Work) managerStays(p house.Person) error {
	if p.Role == house.Manager && !p.Gone {
		return nil
	}
	people, err := w.people()
	if err != nil {
		return err
	}
	if len(people) == 0 {
		return fmt.Errorf("the first person must be a manager, or nobody could add others; %s is %s", p.Name, p.Role)
	}
	for _, other := range people {
		if other.Name != p.Name && other.Role == house.Manager && !other.Gone {
			return nil
		}
	}
	return fmt.Errorf("%s is the only manager here. Make somebody else a manager first, or nobody could add people", p.Name)
}

// people are all people as the work has left them so far.
func (w *Work) people() ([]house.Person, error) {
	rows, err := w.tx.Query("SELECT body FROM standing WHERE kind = ?", house.Person{}.Kind())
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var people []house.Person
	for rows.Next() {
		var body []byte
		if err := rows.Scan(&body); err != nil {
			return nil, err
		}
		person, err := journal.ReadBody[house.Person](body)
		if err != nil {
			return nil, err
		}
		people = append(people, person)
	}
	return people, rows.Err()
}

// Growers are all growers by code.
func (d *Desk) Growers(ctx context.Context) ([]house.Grower, error) {
	return standing[house.Grower](ctx, d.book)
}

// Trucks are all trucks by number.
func (d *Desk) Trucks(ctx context.Context) ([]house.Truck, error) {
	return standing[house.Truck](ctx, d.book)
}

// Bins are all pits and bins.
func (d *Desk) Bins(ctx context.Context) ([]house.Bin, error) {
	return standing[house.Bin](ctx, d.book)
}

// Contracts are all contracts.
func (d *Desk) Contracts(ctx context.Context) ([]house.ContractTerms, error) {
	return standing[house.ContractTerms](ctx, d.book)
}
