package guard

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
)

// findLightNet compares the net with the smallest load of the elevator, or of its scale.
func findLightNet(c *check) {
	net, known := c.Net()
	by := c.limits("")
	least := by.From
	if least == nil {
		least = smallestOf(c.House)
	}
	if !known || net.Sign() <= 0 || least == nil || least.Unit() != net.Unit() || !net.Less(*least) {
		return
	}
	c.say(Finding{
		Field: string(load.Tare), About: about(net.String()),
		Said: message.New("Net %s is under the smallest load of %s.", net, *least),
	}, by)
}

// smallestOf returns the smallest net that an elevator's first scale is meant for.
func smallestOf(p elevator.Profile) *quantity.Amount {
	if len(p.Scales) == 0 {
		return nil
	}
	least := p.SmallestNet(p.Scales[0])
	return &least
}

// findReplaced asks why a weight was taken again. A load that corrects a ticket already has a
// reason.
func findReplaced(c *check) {
	if c.InPlaceOf() > 0 {
		return
	}
	by := c.limits("")
	last := map[string]bool{}
	for i := len(c.Struck) - 1; i >= 0; i-- {
		old := c.Struck[i]
		now, ok := c.Weight(old.Which, old.Draft)
		id := fieldOf(old.Which, old.Draft)
		if last[id] || !ok || now.Weight.Equal(old.Weight) {
			continue
		}
		last[id] = true
		name := message.New("Gross")
		if old.Which == load.Tare {
			name = message.New("Tare")
		}
		c.say(Finding{
			ID: id + "-" + string(Replaced), Field: id, About: about(old.Weight.String(), now.Weight.String()),
			Said: message.New("%s %s takes the place of %s, %s, taken by %v.", name, now.Weight, name, old.Weight, old.Who),
		}, by)
	}
}

func fieldOf(which load.Which, draft string) string {
	if draft == "" {
		return string(which)
	}
	return string(which) + "." + draft
}

// tareOff is the allowed deviation of a tare from the stored one: a twentieth.
var tareOff = quantity.Of("0.05", quantity.Plain)

// findTare compares the tare with the one stored for the truck.
func findTare(c *check) {
	taken, ok := c.Weight(load.Tare, "")
	stored := c.Truck.Tare
	if !ok || taken.Source == load.StoredTare || stored == nil || stored.Unit() != taken.Weight.Unit() || len(c.Drafts()) > 1 {
		return
	}
	off := taken.Weight.Sub(*stored)
	if off.Sign() < 0 {
		off = off.Neg()
	}
	if !off.More(stored.Mul(tareOff)) {
		return
	}
	c.say(Finding{
		Field: string(load.Tare), About: about(taken.Weight.String(), stored.String()),
		Said: message.New("Tare %s: the stored tare of truck %v is %s, of %s.", taken.Weight, c.Truck.ID, *stored, c.Truck.Taken),
	}, c.limits(""))
}

// findApart cautions against adding up two drafts of which nobody has said that the trailer was
// uncoupled.
func findApart(c *check) {
	if len(c.Drafts()) < 2 || c.Details.Apart != "" {
		return
	}
	c.say(Finding{
		Field: fieldOf(load.Gross, c.Drafts()[1]), About: about("apart"),
		Said: message.New("Truck and trailer are weighed apart and added up. Uncouple the trailer and weigh each whole, or agree on it in writing (NIST Handbook 44, UR.3.3)."),
	}, c.limits(""))
}
