package house

import (
	"bytes"
	"encoding/json"
	"fmt"
)

// Fact is a standing thing the elevator knows, written down whole.
type Fact interface {
	Kind() string
}

// Read makes a fact from its kind and body as the journal keeps them.
func Read(kind string, body []byte) (Fact, error) {
	r, ok := readers[kind]
	if !ok {
		return nil, fmt.Errorf("%q is not a kind of fact about the house", kind)
	}
	return r(body)
}

// IsFact reports whether a kind belongs to the house.
func IsFact(kind string) bool {
	_, ok := readers[kind]
	return ok
}

var readers = map[string]func([]byte) (Fact, error){
	Profile{}.Kind():       read[Profile],
	Grower{}.Kind():        read[Grower],
	Truck{}.Kind():         read[Truck],
	Person{}.Kind():        read[Person],
	Bin{}.Kind():           read[Bin],
	ContractTerms{}.Kind(): read[ContractTerms],
}

func read[F Fact](body []byte) (Fact, error) {
	var f F
	d := json.NewDecoder(bytes.NewReader(body))
	d.DisallowUnknownFields()
	if err := d.Decode(&f); err != nil {
		return nil, fmt.Errorf("a %s fact cannot be read: %w", f.Kind(), err)
	}
	return f, nil
}
