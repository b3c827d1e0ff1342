package desk

import (
	"context"
	"fmt"

	"tenthpoint/internal/house"
	"tenthpoint/internal/journal"
	"tenthpoint/internal/store"
)

// standing reads all standing things of one kind as they now are.
func standing[F house.Fact](ctx context.Context, book *store.Book) ([]F, error) {
	var zero F
	rows, err := book.StandingOf(ctx, zero.Kind())
	if err != nil {
		return nil, err
	}
	out := make([]F, 0, len(rows))
	for _, row := range rows {
		fact, err := house.Read(row.Kind, row.Body)
		if err != nil {
			return nil, fmt.Errorf("%s %s: %w", row.Kind, row.ID, err)
		}
		out = append(out, fact.(F))
	}
	return out, nil
}

// setStanding writes a standing thing down whole.
func (d *Desk) setStanding(ctx context.Context, id string, f house.Fact) error {
	err := d.book.Write(ctx, func(tx *store.Tx) error {
		return d.in(tx).setStanding(id, f)
	})
	if err != nil {
		return err
	}
	return d.reload(ctx)
}

func (w *Work) setStanding(id string, f house.Fact) error {
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

// SetProfile sets the elevator up, or changes it.
func (d *Desk) SetProfile(ctx context.Context, p house.Profile) error {
	if err := d.mayManage("The set-up"); err != nil {
		return err
	}
	if wrong := p.Check(); len(wrong) > 0 {
		return sentences(wrong)
	}
	return d.setStanding(ctx, "elevator", p)
}

// SetGrower writes a grower down.
func (d *Desk) SetGrower(ctx context.Context, g house.Grower) error {
	return d.checked(ctx, g.ID, g, g.Check())
}

// SetTruck writes a truck down.
func (d *Desk) SetTruck(ctx context.Context, t house.Truck) error {
	return d.checked(ctx, t.ID, t, t.Check())
}

// SetBin writes a pit or bin down.
func (d *Desk) SetBin(ctx context.Context, b house.Bin) error {
	return d.checked(ctx, b.ID, b, b.Check())
}

// SetContract writes a contract down.
func (d *Desk) SetContract(ctx context.Context, c house.ContractTerms) error {
	if err := d.mayManage("Writing a contract down"); err != nil {
		return err
	}
	return d.checked(ctx, c.Number, c, c.Check())
}

// SetPerson writes a person at the desk down. The first one must be a manager.
func (d *Desk) SetPerson(ctx context.Context, p house.Person) error {
	if err := d.mayManage("Adding people"); err != nil {
		return err
	}
	if err := p.Check(); err != nil {
		return err
	}
	if len(d.people) == 0 && p.Role != house.Manager {
		return fmt.Errorf("the first person must be a manager, or nobody could add others; %s is %s", p.Name, p.Role)
	}
	return d.setStanding(ctx, p.Name, p)
}

func (d *Desk) checked(ctx context.Context, id string, f house.Fact, wrong error) error {
	if err := d.mayWeigh("change the lists"); err != nil {
		return err
	}
	if wrong != nil {
		return wrong
	}
	return d.setStanding(ctx, id, f)
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
