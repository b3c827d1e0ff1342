package guard

import (
	"slices"
	"strings"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
)

// findOtherGrain compares the grain with that of its bin: as the bin is set up, and as its tickets
// have filled it. A pit is for any grain and is not checked.
func findOtherGrain(c *check) {
	known, err := grain.ByID(c.Details.Commodity)
	if err != nil || c.Bin.Commodity == "" {
		return
	}
	f := Finding{Field: "bin", About: about(c.Bin.ID, known.ID, c.Bin.Commodity)}
	if other, err := grain.ByID(c.Bin.Commodity); err == nil && other.ID != known.ID {
		f.Said = message.New("%s into %v: the bin is for %s.", known.Name, c.Bin.ID, other.Name)
		if c.Details.Direction == load.Outbound {
			f.Said = message.New("%s out of %v: the bin is for %s.", known.Name, c.Bin.ID, other.Name)
		}
		c.say(f, c.limits(""))
		return
	}
	for _, s := range c.InBin {
		if s.Commodity == known.ID || s.Weight.Sign() <= 0 || c.Details.Direction == load.Outbound {
			continue
		}
		f.About = about(c.Bin.ID, known.ID, s.Commodity)
		f.Said = message.New("%s into %v: %s of %s lie in it.", known.Name, c.Bin.ID, s.Weight, s.Name)
		c.say(f, c.limits(""))
		return
	}
}

// findOverdrawn compares the weight leaving a bin with its stock.
func findOverdrawn(c *check) {
	net, known := c.Net()
	if c.Details.Direction != load.Outbound || !known || net.Sign() <= 0 || c.Details.Bin == "" {
		return
	}
	for _, s := range c.InBin {
		if s.Commodity != c.Details.Commodity || s.Weight.Unit() != net.Unit() {
			continue
		}
		if net.More(s.Weight) {
			c.overdrawn(net.String(), message.New("Net %s out of %v: %s lie in it.", net, c.Details.Bin, s.Weight))
		}
		return
	}
	c.overdrawn(net.String(), message.New("Net %s out of %v: none of this grain lies in it.", net, c.Details.Bin))
}

func (c *check) overdrawn(net string, said message.Text) {
	c.say(Finding{Field: "bin", About: about(c.Details.Bin, net), Said: said}, c.limits(""))
}

// findOtherLot compares the lot of the load with the one its bin is for, else with that of what was
// put there last while grain lies there.
func findOtherLot(c *check) {
	lot, held, lies := c.Details.Lot, c.Bin.Lot, c.lies()
	if held == "" && lies {
		held = c.Lot
	}
	if strings.EqualFold(lot, held) || held == "" && (!lies || c.Details.Direction == load.Outbound) {
		return
	}
	f := Finding{Field: "bin", About: about(c.Bin.ID, lot, held)}
	switch {
	case held == "":
		f.Said = message.New("Lot %v into %v: grain of no lot lies in it.", lot, c.Bin.ID)
	case lot == "":
		f.Said = message.New("%v holds lot %v; this load names no lot.", c.Bin.ID, held)
	default:
		f.Said = message.New("Lot %v: %v holds lot %v.", lot, c.Bin.ID, held)
	}
	c.say(f, c.limits(""))
}

// lies reports whether grain of the load's kind lies in its bin.
func (c *check) lies() bool {
	return slices.ContainsFunc(c.InBin, func(s Stock) bool { return s.Commodity == c.Details.Commodity && s.Weight.Sign() > 0 })
}
