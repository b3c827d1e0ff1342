package imports

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
)

// grower reads a row of the list of growers.
func (r *reader) grower() {
	g := elevator.Grower{
		ID: r.needed("code", message.New("the short code clerks type")), Name: r.needed("name", message.New("the name as it is to stand on tickets")),
		Address: r.text("address"), Phone: r.text("phone"),
	}
	for _, p := range r.shares("shares") {
		g.Shares = append(g.Shares, elevator.Share{GrowerID: p.Owner, Parts: p.Parts, Of: p.Of})
	}
	if len(r.row.Problems) > 0 {
		return
	}
	if err := g.Check(); err != nil {
		r.wrong("", message.Of(err))
		return
	}
	r.row.Grower = &g
}

// truck reads a row of the list of trucks. A stored tare needs both tare and day.
func (r *reader) truck() {
	t := elevator.Truck{ID: r.needed("number", message.New("the number or plate clerks type")), Plate: r.text("plate"), Trailer: r.text("trailer"), Grower: r.text("grower")}
	tare, hasTare := r.weight("tare")
	day, hasDay := r.date("tare_day")
	if hasTare {
		t.Tare, t.Taken = &tare, day
	}
	switch {
	case hasTare && !hasDay && r.text("tare_day") == "":
		r.wrong("tare_day", message.New("empty; write the day the tare was weighed"))
	case hasDay && !hasTare && r.text("tare") == "":
		r.wrong("tare", message.New("empty, but a day is given; write the tare or take the day out"))
	}
	if len(r.row.Problems) > 0 {
		return
	}
	if err := t.Check(); err != nil {
		r.wrong("", message.Of(err))
		return
	}
	r.row.Truck = &t
}
