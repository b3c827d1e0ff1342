package entry

import (
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/grain"
	"tenthpoint/internal/guard"
	"tenthpoint/internal/i18n"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
)

// Lists are the growers, trucks, bins and contracts that texts are looked up in.
type Lists interface {
	Growers() ([]elevator.Grower, error)
	Trucks() ([]elevator.Truck, error)
	Bins() ([]elevator.Bin, error)
	Contracts() ([]elevator.ContractTerms, error)
}

// House is the elevator as an entry needs it.
type House interface {
	Lists
	Profile() elevator.Profile
	Rates() *rates.Set
	Today() quantity.Date
	// Stamp says who acts, and when, on the copy of the load.
	Stamp() load.Stamp
	// RetainDays returns how many days samples are kept.
	RetainDays() int
	// Settle settles a load without writing anything, or returns the reasons it cannot.
	Settle(*load.Load) (*settle.Settlement, settle.Problems)
	// Around returns what the guards compare a load with.
	Around(*load.Load) (guard.Setting, error)
	// Posted is the price posted for a grain and a day; nil where none is.
	Posted(commodity string, day quantity.Date) (*load.Posted, error)
	// MoistureClasses are the classes of a load's grain; none where the elevator is under rules
	// without them.
	MoistureClasses(*load.Load) []grain.MoistureClass
}

// Signs returns the number format of an elevator's language.
func Signs(p elevator.Profile) message.Figures { return i18n.In(p.Language).Figures() }

// EditionOf returns the edition that a load of these details is settled under: that of its own
// schedule, or of the one the set-up names for its commodity, on its day. It is nil while there is
// no commodity.
func EditionOf(p elevator.Profile, set *rates.Set, d load.Details) (*rates.Edition, error) {
	if d.Commodity == "" {
		return nil, nil
	}
	schedule := d.Schedule
	if schedule == "" {
		var taken bool
		if schedule, taken = p.Schedule(d.Commodity); !taken {
			return nil, notTaken(d.Commodity)
		}
	}
	return set.On(schedule, d.Commodity, d.Day)
}

func notTaken(commodity string) error {
	return message.Invalid.Errorf("%s is not taken here; add it in the set-up with its schedule of rates", commodity)
}
