package demo

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/load"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// visit is one truck from its coming to its going.
type visit struct {
	season  *season
	truck   truck
	crop    priced
	grower  elevator.Grower
	details load.Details
	sample  load.Sample
	clerk   string
	day     int // of the season
	net     int64
	odd     oddity

	id     string
	number int64 // of its ticket, once issued
	gone   bool  // turned away
}

// visit draws a truck and all that it does.
func (s *season) visit(day int, at time.Time) []act {
	v := s.arrival(day, at)
	come, weighed := at, at.Add(v.seconds(20, 50))
	back := weighed.Add(v.seconds(360, 840))
	tested := weighed.Add(v.seconds(90, 240))
	if v.odd.late {
		tested = back.Add(v.seconds(60, 180))
	}
	acts := []act{
		{come, v.clerk, v.open},
		{weighed, v.clerk, v.weighGross},
		{tested, Tester, v.test},
		{back, v.clerk, v.weighTare},
		{latest(back, tested).Add(v.seconds(15, 40)), v.clerk, v.issue},
	}
	return append(acts, v.oddActs(weighed, latest(back, tested).Add(time.Minute))...)
}

func latest(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}

func (v *visit) seconds(low, high int64) time.Duration {
	return time.Duration(v.season.chance.between(low, high)) * time.Second
}

// arrival generates a visit.
func (s *season) arrival(day int, at time.Time) *visit {
	c := s.chance
	v := &visit{season: s, day: day, truck: s.came.free(pick(c, s.fleet), s.fleet, at), crop: s.crop(), clerk: Clerk}
	if c.in1000(350) {
		v.clerk = SecondClerk
	}
	v.grower = growerOf(c, v.truck)
	v.net = v.truck.build.carryLb - divisionLb*c.about(0, 500)
	v.odd = drawOddity(c, v.truck)
	v.sample = s.bench(v)
	v.details = load.Details{
		Direction: load.Inbound, Day: s.first.AddDays(day),
		Commodity: v.crop.commodity, CropYear: fmt.Sprint(s.first.AddDays(day).Year()), Schedule: v.crop.schedule,
		Grower: load.Party{ID: v.grower.ID, Name: v.grower.Name}, Shares: owners(v.grower),
		Truck:  load.Truck{ID: v.truck.ID, Plate: v.truck.Plate, Trailer: v.truck.Trailer},
		Driver: pick(c, drivers), Bin: pick(c, placesFor(v.crop.commodity)),
	}
	v.terms(c)
	return v
}

// longestVisit is the longest time a truck may be on the yard.
const longestVisit = 45 * time.Minute

// comings are when each truck came, by its id.
type comings map[string][]time.Time

// free is a truck, or the next of its fleet that is not on the yard.
func (c comings) free(t truck, fleet []truck, at time.Time) truck {
	first := slices.IndexFunc(fleet, func(o truck) bool { return o.ID == t.ID })
	for i := range fleet {
		next := fleet[(first+i)%len(fleet)]
		isHere := func(came time.Time) bool { return at.Sub(came).Abs() < longestVisit }
		if !slices.ContainsFunc(c[next.ID], isHere) {
			c[next.ID] = append(c[next.ID], at)
			return next
		}
	}
	return t
}

var drivers = []string{"", "Ben", "Cass", "Dov", "Edie", "Finn", "Gus", "Hana"}

// growerOf returns the truck's own grower, or in one case of ten another who hired it.
func growerOf(c *chance, t truck) elevator.Grower {
	if c.in1000(100) {
		return pick(c, growers)
	}
	for _, g := range growers {
		if g.ID == t.Grower {
			return g
		}
	}
	return growers[0]
}

// crop picks the grain in the truck.
func (s *season) crop() priced {
	total := int64(0)
	for _, k := range s.crops {
		total += k.share
	}
	n := s.chance.between(1, total)
	for _, k := range s.crops {
		if n -= k.share; n <= 0 {
			return k
		}
	}
	return s.crops[0]
}

// terms sets the disposition of the grain: delivered on a contract, sold at the day's price, or
// stored with the price to come.
func (v *visit) terms(c *chance) {
	d := &v.details
	for _, terms := range v.season.contracts {
		if terms.Grower == v.grower.ID && terms.Commodity == d.Commodity && c.in1000(600) && v.season.delivered.has(terms, v) {
			d.Under, d.Terms.No = title.Contract, terms.Number
			d.Price, d.PriceSource = &terms.Price, "contract "+terms.Number
			return
		}
	}
	if c.in1000(350) {
		d.Under = title.OpenStorage
		return
	}
	price := v.crop.prices[v.day]
	d.Under, d.Price, d.PriceSource = title.CashSale, &price, "posted "+d.Day.String()
}

func (v *visit) open(ctx context.Context, w *scalehouse.Batch) (err error) {
	first := v.details
	if v.odd.misnamed {
		wrong := pick(v.season.chance, growers)
		first.Grower, first.Shares = load.Party{ID: wrong.ID, Name: wrong.Name}, owners(wrong)
	}
	v.id, err = scalehouse.OpenLoad(ctx, w, first)
	return err
}

// issue issues the ticket, unless the load was turned away. A limit exceeded is accepted by the
// manager or turns the load away.
func (v *visit) issue(ctx context.Context, w *scalehouse.Batch) (err error) {
	if v.gone {
		return nil
	}
	v.number, err = issue(ctx, w, v.season, v.id)
	var problems settle.Problems
	if errors.As(err, &problems) {
		return v.beyondLimit(ctx, w, problems)
	}
	if err != nil {
		return err
	}
	v.season.heaps.came(v.details, v.net)
	_, err = scalehouse.RecordPrint(ctx, w, v.number)
	return err
}

// issue issues a load's ticket. It first answers the guards' questions, as the manager where one is
// required.
func issue(ctx context.Context, w *scalehouse.Batch, s *season, id string) (int64, error) {
	number, err := scalehouse.Issue(ctx, w, id)
	var asked guard.Asked
	if !errors.As(err, &asked) {
		return number, err
	}
	who, at := s.desk.Who().Name, s.clock
	if err := s.as(Manager, at); err != nil {
		return 0, err
	}
	for _, f := range asked {
		if err := scalehouse.Answer(ctx, w, id, f.ID, f.Reasons[0]); err != nil {
			return 0, err
		}
	}
	if err := s.as(who, at); err != nil {
		return 0, err
	}
	return scalehouse.Issue(ctx, w, id)
}

func lb(n int64) quantity.Amount { return quantity.Int(n, quantity.Lb) }
