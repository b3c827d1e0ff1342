package demo

import (
	"fmt"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/quantity"
)

// build is the empty weight and payload of a kind of truck, in pounds.
type build struct {
	name            string
	tareLb, carryLb int64
	drafts          bool // truck and trailer are weighed apart at times
}

var (
	straight = build{"straight truck", 13_400, 19_600, false}
	tandem   = build{"tandem", 20_200, 31_000, false}
	semi     = build{"semi", 25_400, 51_800, false}
	train    = build{"truck and trailer", 30_600, 46_000, true}
)

// truck is one that comes again.
type truck struct {
	elevator.Truck
	build build
	empty int64 // empty weight, lb
}

// builds are given out in this order, so that every grower has a semi or a
// tandem and some have two trucks.
var builds = []build{semi, tandem, semi, straight, train, semi}

const mostTrucks = 30

// fleet is every truck, its tare stored on the day given for four in five.
func fleet(c *chance, stored quantity.Date) []truck {
	out := make([]truck, mostTrucks)
	for i := range out {
		b := builds[i%len(builds)]
		t := truck{build: b, empty: b.tareLb + divisionLb*c.between(-60, 60)}
		t.ID = fmt.Sprint(i + 1)
		t.Plate = fmt.Sprintf("XMP %03d", 101+7*i)
		t.Grower = growers[i%len(growers)].ID
		if b.drafts {
			t.Trailer = fmt.Sprintf("XMT %03d", 201+7*i)
		}
		if c.in1000(800) {
			tare := quantity.Int(t.empty, quantity.Lb)
			t.Tare, t.Taken = &tare, stored
		}
		out[i] = t
	}
	return out
}
