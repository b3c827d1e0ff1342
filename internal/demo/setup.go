package demo

import (
	"context"
	"fmt"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/scalehouse"
)

// setUp writes the elevator, its people, master data and meters into an empty book.
func (s *season) setUp(ctx context.Context) error {
	if name := s.desk.Profile().Business; name != "" {
		return fmt.Errorf("the book %s already belongs to %s. The demo needs a book of its own: name a file that is not there yet", s.desk.Book().Path(), name)
	}
	s.clock = s.hour(s.first.AddDays(-14), 9, 0)
	if err := s.desk.SignIn(Manager); err != nil {
		return err
	}
	err := s.desk.Batch(ctx, func(w *scalehouse.Batch) error {
		for _, one := range s.masterRecords() {
			if err := scalehouse.SetRecord(ctx, w, one.id, one.fact); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	if err := s.setUpBench(ctx); err != nil {
		return err
	}
	return s.setUpMeters(ctx)
}

// masterRecord is a record of the house, from before the first truck.
type masterRecord struct {
	id   string
	fact elevator.Fact
}

// masterRecords returns all master records from before the first truck.
func (s *season) masterRecords() []masterRecord {
	all := []masterRecord{{"elevator", profile(s.grains(), s.Language)}}
	for _, p := range people {
		all = append(all, masterRecord{p.Name, p})
	}
	all = append(all, masterRecord{ownGrain.ID, ownGrain})
	for _, g := range growers {
		all = append(all, masterRecord{g.ID, g})
	}
	for _, g := range landlords {
		all = append(all, masterRecord{g.ID, g})
	}
	for _, b := range places {
		all = append(all, masterRecord{b.ID, b})
	}
	for _, t := range s.fleet {
		all = append(all, masterRecord{t.ID, t.Truck})
	}
	for _, c := range s.contracts {
		all = append(all, masterRecord{c.Number, c})
	}
	return all
}

// grains are the commodities taken and the schedules they are settled under.
func (s *season) grains() []elevator.GrainRule {
	var out []elevator.GrainRule
	for _, k := range s.crops {
		out = append(out, elevator.GrainRule{Commodity: k.commodity, Schedule: k.schedule})
	}
	return out
}
