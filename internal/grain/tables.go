package grain

import (
	"errors"
	"slices"
	"strings"
	"sync"

	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// Tables are the commodities as a law has them: their grades, recording rules,
// bushels and moisture classes. They may be used by several at once.
type Tables struct {
	law         law.Law
	commodities []Commodity
	classes     []moistureRow
}

// The kinds of file that this package reads.
const (
	KindGrades    = "grades"
	KindRecording = "recording"
	KindBushels   = "bushels"
	KindClasses   = "moisture-classes"
)

// readers read the body of a file into the tables, by its kind.
var readers = map[string]func(*Tables, *law.File, *tomlfile.Table){
	KindGrades: (*Tables).readGrades, KindRecording: (*Tables).readRecording,
	KindBushels: (*Tables).readBushels, KindClasses: (*Tables).readClasses,
}

// CheckLaw reads a file of one of the kinds above on its own. The error names
// every mistake in it; known is false for a kind that is read elsewhere.
func CheckLaw(f *law.File) (known bool, err error) {
	read, known := readers[f.Kind]
	if !known {
		return false, nil
	}
	t := &Tables{commodities: catalog()}
	return true, f.Read(func(body *tomlfile.Table) { read(t, f, body) })
}

// TablesOf returns the tables of a law. A factor without a recording rule is not tested under it:
// it was added to the program later. The error has every mistake in the files.
func TablesOf(l law.Law) (*Tables, error) {
	t := &Tables{law: l, commodities: catalog()}
	var problems []error
	for _, f := range l.Files() {
		if read, known := readers[f.Kind]; known {
			problems = append(problems, f.Read(func(body *tomlfile.Table) { read(t, f, body) }))
		}
	}
	t.nameMoistureGrains()
	t.dropUnrecorded()
	if err := errors.Join(problems...); err != nil {
		return nil, err
	}
	return t, nil
}

func (t *Tables) dropUnrecorded() {
	for i := range t.commodities {
		c := &t.commodities[i]
		c.Factors = slices.DeleteFunc(c.Factors, func(f Factor) bool { return f.Source == "" })
	}
}

// Law returns the law the tables were read from.
func (t *Tables) Law() law.Law { return t.law }

// ByID finds a commodity; the error lists the known ids.
func (t *Tables) ByID(id string) (Commodity, error) {
	if c := t.commodity(id); c != nil {
		return *c, nil
	}
	return Commodity{}, message.Invalid.Errorf("%q is not a commodity here; known ones are %s", id, t.knownIDs())
}

func (t *Tables) commodity(id string) *Commodity {
	for i := range t.commodities {
		if t.commodities[i].ID == id {
			return &t.commodities[i]
		}
	}
	return nil
}

func (t *Tables) knownIDs() string {
	ids := make([]string, len(t.commodities))
	for i, c := range t.commodities {
		ids[i] = c.ID
	}
	return strings.Join(ids, ", ")
}

// All lists every commodity, always in the same order.
func (t *Tables) All() []Commodity { return append([]Commodity(nil), t.commodities...) }

// first are the tables used when no law is named: those of every ticket from before tickets kept
// their law.
var first = sync.OnceValue(func() *Tables {
	t, err := TablesOf(law.First())
	if err != nil {
		panic("grain: the first law inside the program: " + err.Error())
	}
	return t
})

// First are the tables of [law.First].
func First() *Tables { return first() }

// ByID is [Tables.ByID] of the first tables.
func ByID(id string) (Commodity, error) { return first().ByID(id) }

// NameOf is the name of a commodity for people; one that is not known keeps its id.
func NameOf(id string) string {
	if c, err := ByID(id); err == nil {
		return c.Name
	}
	return id
}

// All is [Tables.All] of the first tables.
func All() []Commodity { return first().All() }

// CommonFactor is a factor that every grain is tested for, moisture or test weight, before it is known
// which grain it is.
func CommonFactor(id FactorID) Factor {
	f, _ := first().commodities[0].Factor(id)
	return f
}

// MoistureGrains is [Tables.MoistureGrains] of the first tables.
func MoistureGrains() []string { return first().MoistureGrains() }

// Class is [Tables.Class] of the first tables.
func Class(grain string, reading quantity.Amount) (MoistureClass, error) {
	return first().Class(grain, reading)
}

// Classes is [Tables.Classes] of the first tables.
func Classes(grain string) ([]MoistureClass, error) { return first().Classes(grain) }

// LowestTough is [Tables.LowestTough] of the first tables.
func LowestTough(grain string) (quantity.Amount, bool, error) { return first().LowestTough(grain) }

// ShrinkFloor is [Tables.ShrinkFloor] of the first tables.
func ShrinkFloor(grain string) (quantity.Amount, bool, error) { return first().ShrinkFloor(grain) }
