package guard

import (
	"slices"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/message"
)

// ID names a guard in the set-up and in facts; it never changes.
type ID string

const (
	Moisture   ID = "moisture"
	Factor     ID = "factor"
	Spoils     ID = "spoils"
	Price      ID = "price"
	LightNet   ID = "light-net"
	Replaced   ID = "replaced"
	Tare       ID = "tare"
	OtherBin   ID = "bin"
	OtherLot   ID = "lot"
	Overdrawn  ID = "overdrawn"
	Overfilled ID = "contract"
	Repeated   ID = "repeated"
	OnYard     ID = "on-yard"
	DayAhead   ID = "day-ahead"
	DayBack    ID = "day-back"
	Apart      ID = "apart"
)

// Rule is a guard with its default settings.
type Rule struct {
	ID      ID
	Name    message.Text
	Act     elevator.GuardAct
	Reasons []string

	past bool // also of loads of the time before the book
	find func(*check)
}

var rules = []Rule{
	{Moisture, message.New("Moisture against what the grain can have"), elevator.GuardQuestion, tested, true, findMoisture},
	{Factor, message.New("Results against what the grain can have"), elevator.GuardQuestion, tested, true, findFactors},
	{Spoils, message.New("Grain that spoils what it is put on"), elevator.GuardQuestion, spoiled, false, findSpoils},
	{Price, message.New("Price against the posted price or the last ones"), elevator.GuardQuestion, priced, true, findPrice},
	{LightNet, message.New("Net under the smallest load"), elevator.GuardQuestion, weighed, true, findLightNet},
	{Replaced, message.New("A weight taken again"), elevator.GuardQuestion, again, false, findReplaced},
	{Tare, message.New("Tare against the truck's stored tare"), elevator.GuardQuestion, weighed, false, findTare},
	{Apart, message.New("Truck and trailer weighed apart"), elevator.GuardRemark, apart, false, findApart},
	{OtherBin, message.New("A bin with other grain"), elevator.GuardManager, binned, false, findOtherGrain},
	{OtherLot, message.New("A bin with another lot"), elevator.GuardQuestion, binned, false, findOtherLot},
	{Overdrawn, message.New("A bin drawn below empty"), elevator.GuardManager, binned, false, findOverdrawn},
	{Overfilled, message.New("A contract that would be overfilled"), elevator.GuardQuestion, overrun, false, findOverfilled},
	{Repeated, message.New("The same truck and gross again within minutes"), elevator.GuardQuestion, repeated, false, findRepeated},
	{OnYard, message.New("A truck that is on the yard already"), elevator.GuardQuestion, repeated, false, findOnYard},
	{DayAhead, message.New("A day ahead of today"), elevator.GuardManager, dated, false, findDayAhead},
	{DayBack, message.New("A day far back"), elevator.GuardQuestion, dated, false, findDayBack},
}

// The default answers.
var (
	tested   = []string{"tested again, same result", "the whole load is like this", "result of an official inspector"}
	spoiled  = []string{"kept in a bin of its own", "looked at again: it is slight", "treated before it is binned"}
	priced   = []string{"agreed with the owner", "price of a contract", "another grade or market"}
	weighed  = []string{"weighed again, same weight", "part load", "truck or trailer changed"}
	again    = []string{"typed wrong before", "truck was not wholly on the scale", "weighed again on request"}
	apart    = []string{"uncoupled, each weighed whole", "agreed in writing"}
	binned   = []string{"bin was emptied or turned over", "blended on purpose", "bin list is out of date"}
	overrun  = []string{"all of it on the contract, as agreed", "the rest is settled apart", "the contract is raised"}
	repeated = []string{"another load, same weight", "two halves of one truck", "the other one is withdrawn"}
	dated    = []string{"entered late from a paper ticket", "delivered on that day", "books of that day are open"}
)

// Rules returns all guards, in the order of their findings.
func Rules() []Rule { return slices.Clone(rules) }

// ByID finds a guard.
func ByID(id string) (Rule, bool) {
	if i := slices.IndexFunc(rules, func(r Rule) bool { return string(r.ID) == id }); i >= 0 {
		return rules[i], true
	}
	return Rule{}, false
}
