package demo

import (
	"context"
	"time"

	"tenthpoint/internal/load"
	"tenthpoint/internal/scalehouse"
)

// buyers take grain away. They are as invented as the rest.
var buyers = []string{"Lower Ford Feed Mill (invented)", "Quarry Road Terminal (invented)", "Hobb Lane Oil Works (invented)"}

// ownGrain is the elevator as the owner of grain that leaves.
var ownGrain = grower("000", "Ottermill Siding Elevator")

const (
	leavesOf  = 12      // one truck leaves for so many that come
	leastLeft = 150_000 // lb in a bin before anything is taken out of it
)

// heap is one commodity in one place.
type heap struct{ commodity, place string }

// departure is one truck that comes empty and leaves full.
type departure struct {
	season *season
	truck  truck
	clerk  string
	day    int
	from   heap
	net    int64
	buyer  string
	id     string // empty when there was nothing to take
}

// departures are the acts of a day's trucks that leave with grain.
func (s *season) departures(day, come int, from, until time.Time) []act {
	var acts []act
	minutes := int64(until.Sub(from) / time.Minute)
	for range come / leavesOf {
		at := from.Add(time.Duration(s.chance.between(0, max(minutes-60, 1))) * time.Minute)
		d := &departure{season: s, truck: s.came.free(pick(s.chance, s.fleet), s.fleet, at), clerk: Clerk, day: day, buyer: pick(s.chance, buyers)}
		d.net = d.truck.build.carryLb - divisionLb*s.chance.between(0, 60)
		loaded := at.Add(time.Duration(s.chance.between(900, 1800)) * time.Second)
		acts = append(acts,
			act{at, d.clerk, d.arrive},
			act{loaded, d.clerk, d.weighFull},
			act{loaded.Add(30 * time.Second), d.clerk, d.issue},
		)
	}
	return acts
}

// heaps is the grain in the bins, in lb.
type heaps map[heap]int64

// came adds a load: four fifths of the weight, to allow for water and handling.
func (h heaps) came(d load.Details, netLb int64) {
	h[heap{d.Commodity, restsIn(d.Bin, d.Commodity)}] += netLb * 4 / 5
}

// fullest returns the largest heap of the crops, and whether it is enough to load from.
func (h heaps) fullest(crops []priced) (heap, bool) {
	var best heap
	for _, k := range crops {
		for _, p := range places {
			if one := (heap{k.commodity, p.ID}); h[one] > h[best] {
				best = one
			}
		}
	}
	return best, h[best] >= leastLeft
}

func (d *departure) arrive(ctx context.Context, w *scalehouse.Batch) (err error) {
	from, enough := d.season.heaps.fullest(d.season.crops)
	if !enough {
		return nil
	}
	d.from = from
	d.season.heaps[from] -= d.net
	d.id, err = scalehouse.OpenLoad(ctx, w, load.Details{
		Direction: load.Outbound, Day: d.season.first.AddDays(d.day), Commodity: from.commodity, Bin: from.place,
		Grower: load.Party{ID: ownGrain.ID, Name: ownGrain.Name}, Consignee: d.buyer,
		Truck: load.Truck{ID: d.truck.ID, Plate: d.truck.Plate, Trailer: d.truck.Trailer},
	})
	if err != nil {
		return err
	}
	return scalehouse.Weigh(ctx, w, d.id, draft(load.Tare, "", d.truck.empty))
}

func (d *departure) weighFull(ctx context.Context, w *scalehouse.Batch) error {
	if d.id == "" {
		return nil
	}
	return scalehouse.Weigh(ctx, w, d.id, draft(load.Gross, "", d.truck.empty+d.net))
}

func (d *departure) issue(ctx context.Context, w *scalehouse.Batch) error {
	if d.id == "" {
		return nil
	}
	number, err := issue(ctx, w, d.season, d.id)
	if err != nil {
		return err
	}
	_, err = scalehouse.RecordPrint(ctx, w, number)
	return err
}
