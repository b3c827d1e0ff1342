package elevator

import "slices"

// Fact is a master record of the elevator, written whole.
type Fact interface {
	// Kind names the fact in the journal.
	Kind() string
}

// IsFact reports whether a kind is one of master data.
func IsFact(kind string) bool { return slices.Contains(kinds, kind) }

var kinds = []string{
	Profile{}.Kind(), Grower{}.Kind(), Truck{}.Kind(),
	Person{}.Kind(), PIN{}.Kind(), Bin{}.Kind(), ContractTerms{}.Kind(), PostedPrice{}.Kind(), OwnEdition{}.Kind(),
}
