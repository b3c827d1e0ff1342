package settle

import (
	"maps"
	"slices"
	"strconv"

	"tenthpoint/internal/grain"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/worksheet"
)

// Engine is the version of the calculation: which steps there are, in what order, how results are
// recorded, what is stored. A settled load keeps the number of its engine and is always
// recalculated by that one, so a ticket of last year gives last year's working to the digit.
//
// An engine that has settled a load is never changed: its tickets would no longer reproduce the
// recorded hash. A change that adds, drops, reorders or rounds a step, or changes what
// [Settlement.Figures] holds, is a new engine.
//
// To add one: write what it does differently in functions of its own, add an
// entry to the table below that starts from the engine before it, move
// [Current], and freeze it with the golden test beside this file. The sheet of a
// closed day has its own entry in the table of daysheet/digest.go.
//
// The zero Engine is the first one, which settled all facts that have no engine number.
type Engine int64

const (
	// First is the engine of every settlement that carries no number.
	First Engine = 1
	// Current settles new loads.
	Current Engine = 4
)

// engine is everything that one engine may do differently from another.
type engine struct {
	check  func(*checker)
	record func(grain.Factor, quantity.Amount) quantity.Rounding

	// The stages of a settlement. Those from dockage to discount come in the
	// order of the edition.
	weights, sample                   func(*calculation)
	dockage, shrink, handling, drying func(*calculation)
	discount                          func(d *calculation, place string)
	// dry records the dry weight, after handling.
	dry func(*calculation)
	// basis is the weight that a rule of the edition is taken on at this place.
	basis func(*calculation, rule.Basis) rule.Basis
	// accepted is the row whose figure a load brings that a manager has accepted.
	accepted func(r discounting, refused rule.Band) rule.Band
	// ofPrice takes a percent of the price.
	ofPrice                   func(r discounting, gives rule.Direction, rate *worksheet.Step)
	quantities, money, shares func(*calculation)
	// owed adds up one owner, counted from zero.
	owed      func(d *calculation, owner int, line *ShareLine)
	weighOnly func([]Draft, Outbound) Weighed
	// figure reports whether a step, by id, is recorded with the load.
	figure func(id string) bool
	// adjusted and quality compute the totals of discounts and premiums from the recorded lines, in
	// money and in weight.
	adjusted func(*lineReader, Part) (discounts, premiums quantity.Amount)
	quality  func(*lineReader, *Summary) quantity.Amount
	// charged reads what services, discounts and premiums come to.
	charged func(*lineReader, *Part)
	// digest returns the text whose hash is recorded with the load.
	digest func(*worksheet.Sheet) string
}

// engines is the table of all engines.
var engines = map[Engine]*engine{
	1: firstEngine(),
	2: secondEngine(),
	3: thirdEngine(),
	4: fourthEngine(),
}

func firstEngine() *engine {
	return &engine{
		check: (*checker).all, record: recording,
		weights: workWeights, sample: workSample,
		dockage: takeDockage, shrink: takeShrink, handling: takeHandling, drying: chargeDrying,
		discount: applyDiscount, ofPrice: ofOnePrice,
		dry: nowDry, basis: asWritten, accepted: asRefused,
		quantities: workQuantities, money: workMoney, shares: shareOut, owed: addOwner,
		weighOnly: weighedOnly,
		figure:    isFigure, digest: (*worksheet.Sheet).Digest,
		adjusted: solvedAdjusted, quality: solvedQuality, charged: readCharges,
	}
}

// secondEngine adds up discounts and premiums in steps of their own, so that no
// reader has to work out from the lines which way a deduction went.
func secondEngine() *engine {
	e := *firstEngine()
	e.quantities, e.money, e.owed = workQuantitiesTotaled, workMoneyTotaled, addOwnerTotaled
	e.figure = isFigureOrTotal
	e.adjusted, e.quality = readAdjusted, readQuality
	return &e
}

// thirdEngine settles each owner's part under that owner's own deal, adds service
// charges and quality up apart, and never says of grain that its price comes later.
func thirdEngine() *engine {
	e := *secondEngine()
	e.ofPrice = ofEachPrice
	e.money, e.shares, e.owed = workMoneyServed, shareOutServed, addOwnerServed
	e.figure, e.charged = isFigureOrValue, readServed
	return &e
}

// fourthEngine settles by the format of the edition: the dry weight after a discount of the weight,
// and what a load brings that is accepted beyond a limit. No weight falls below zero on the way.
func fourthEngine() *engine {
	e := *thirdEngine()
	e.dry, e.basis, e.accepted = dryOfClean, basisOfFormat, acceptedByFormat
	return &e
}

// Engines lists the known engines, the first one first.
func Engines() []Engine { return slices.Sorted(maps.Keys(engines)) }

// Number is the engine's number; the zero Engine is [First].
func (n Engine) Number() Engine { return max(n, First) }

// Known is an error for an engine that this program does not have, as of a
// ticket that a newer program settled.
func (n Engine) Known() error {
	if _, ok := engines[n.Number()]; ok {
		return nil
	}
	known := Engines()
	return message.NotFound.Errorf("this was settled by engine %d, and this program has engines up to %d only. Bring the program up to date to work it again", n, known[len(known)-1])
}

// HasTitles reports whether the engine settles each owner under that owner's own
// deal, and keeps charges and quality apart.
func (n Engine) HasTitles() bool { return n.Number() > 2 }

// String is the number.
func (n Engine) String() string { return strconv.FormatInt(int64(n.Number()), 10) }

// IsZero reports whether the number is left out of a fact. It is for the first engine, whose facts
// have no number and must keep their hashes.
func (n Engine) IsZero() bool { return n.Number() == First }

// MarshalText writes the number.
func (n Engine) MarshalText() ([]byte, error) { return []byte(n.String()), nil }

// UnmarshalText reads a number, be the engine known here or not.
func (n *Engine) UnmarshalText(text []byte) error {
	number, err := strconv.ParseInt(string(text), 10, 32)
	if err != nil || number < int64(First) {
		return message.Errorf("%q is no number of an engine", text)
	}
	*n = Engine(number)
	return nil
}

// Settle works the facts under the edition by the current engine.
func Settle(f Facts, e *rates.Edition) (*Settlement, error) { return Current.Settle(f, e) }

// Settle settles the facts under the edition. A non-nil error is a [Problems] with every reason, or
// says that the engine is not known.
func (n Engine) Settle(f Facts, e *rates.Edition) (*Settlement, error) {
	if err := n.Known(); err != nil {
		return nil, err
	}
	return n.settle(engines[n.Number()], f, e)
}

// WeighOnly records the weights of a load, and its bushels by legal weight where they are asked
// for. The error, when there is one, is a [Problems], or says that the engine is not known.
func (n Engine) WeighOnly(drafts []Draft, out Outbound) (*Weighed, error) {
	if err := n.Known(); err != nil {
		return nil, err
	}
	return engines[n.Number()].weigh(drafts, out)
}

// Figures are the lines that are recorded with a settled load, by the ids of their steps: those
// that totals and lists read, and those of its owners.
func (s *Settlement) Figures() map[string]quantity.Amount {
	out := map[string]quantity.Amount{}
	is := engines[s.Engine.Number()].figure
	for _, step := range s.Sheet.Steps() {
		if is(step.ID()) {
			out[step.ID()] = step.Value()
		}
	}
	return out
}

// Digest is the text whose hash is recorded with a settled load: every figure of the working,
// without words.
func (s *Settlement) Digest() string { return engines[s.Engine.Number()].digest(s.Sheet) }
