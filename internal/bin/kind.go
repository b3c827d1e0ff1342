package bin

import (
	"tenthpoint/internal/message"
)

// Kind is the kind of a movement. The words are in the facts of every book.
type Kind string

const (
	Transfer     Kind = "transfer"
	Turn         Kind = "turn"
	Blend        Kind = "blend"
	Clean        Kind = "clean"
	Dry          Kind = "dry"
	Aerate       Kind = "aerate"
	WriteOff     Kind = "write-off"
	WeighOver    Kind = "weigh-over"
	MeasureUp    Kind = "measure-up"
	Temperatures Kind = "temperatures"
	// Open is a layer of grain that lay in the house when its books were opened here.
	Open Kind = "open"
	// Undo takes an earlier movement back, by the same weights the other way.
	Undo Kind = "undo"
)

// Adjustment is the reason for which a balance may be adjusted; an examiner knows four.
type Adjustment string

const (
	ShrinkRecalculation Adjustment = "shrink recalculation"
	ErrorCorrection     Adjustment = "error correction"
	AccountantsCount    Adjustment = "accountant's count"
	WeighedInventory    Adjustment = "weighed inventory"
)

// Adjustments are the four, in the order of papers.
func Adjustments() []Adjustment {
	return []Adjustment{ShrinkRecalculation, ErrorCorrection, AccountantsCount, WeighedInventory}
}

// rule is the fields and limits of one kind of movement.
type rule struct {
	kind Kind
	name message.Text
	// leastFrom and mostFrom are the least and most bins that grain is taken out of.
	leastFrom, mostFrom int
	into                where
	loses               bool // less may come out than went in
	manager             bool // only a manager may, posted or not
	adjusts             Adjustment
	cautions            []Caution
}

// where says into which bin the grain goes.
type where int

const (
	nowhere where = iota
	elsewhere
	anywhere // another bin or the same
	back     // the bin it came from
)

// mostBins is the most bins one movement draws from; no house blends more.
const mostBins = 24

var rules = []rule{
	{Transfer, message.New("Transfer"), 1, mostBins, elsewhere, false, false, "", nil},
	{Turn, message.New("Turning"), 1, 1, back, true, false, ShrinkRecalculation, nil},
	{Blend, message.New("Blending"), 2, mostBins, anywhere, false, false, "", nil},
	{Clean, message.New("Cleaning"), 1, 1, anywhere, true, false, ShrinkRecalculation, nil},
	{Dry, message.New("Drying"), 1, mostBins, anywhere, true, false, ShrinkRecalculation, []Caution{HotGrain}},
	{Aerate, message.New("Aeration"), 1, 1, nowhere, false, false, "", nil},
	{WriteOff, message.New("Write-off"), 1, 1, nowhere, true, true, ErrorCorrection, []Caution{BinEntry}},
	{WeighOver, message.New("Weigh-over"), 0, 1, nowhere, true, true, WeighedInventory, nil},
	{MeasureUp, message.New("Measure-up"), 0, 1, nowhere, true, false, AccountantsCount, []Caution{BinEntry, Fumigant}},
	{Temperatures, message.New("Temperatures"), 1, 1, nowhere, false, false, "", []Caution{BinEntry}},
	{Open, message.New("Opened with"), 0, 0, anywhere, false, true, "", nil},
	{Undo, message.New("Undone"), 0, mostBins, anywhere, true, false, ErrorCorrection, nil},
}

// Kinds are all kinds of movement, in the order they are offered.
func Kinds() []Kind {
	out := make([]Kind, len(rules))
	for i, r := range rules {
		out[i] = r.kind
	}
	return out
}

func ruleOf(k Kind) (rule, bool) {
	for _, r := range rules {
		if r.kind == k {
			return r, true
		}
	}
	return rule{}, false
}

// Name is the name of the kind on papers.
func (k Kind) Name() message.Text {
	r, _ := ruleOf(k)
	return r.name
}

// Cautions are the safety notes of the act.
func (k Kind) Cautions() []Caution {
	r, _ := ruleOf(k)
	return r.cautions
}

// Caution is a danger named where the act is.
type Caution string

const (
	BinEntry Caution = "bin entry"
	HotGrain Caution = "hot grain"
	Fumigant Caution = "fumigant"
)

var cautions = map[Caution]message.Text{
	BinEntry: message.New("Nobody enters a bin alone: unloading is stopped and locked out, the air is tested, a harness is worn and somebody stands at the hatch. Grain that bridges or hangs on the wall buries a person in seconds."),
	HotGrain: message.New("Grain out of the dryer is hot. Cool it before it is stored: hot grain in a bin sweats, crusts and can take fire."),
	Fumigant: message.New("If the bin was fumigated, nobody opens it before it was aired and the gas measured, as the label says."),
}

// Said is the caution as people read it.
func (c Caution) Said() message.Text { return cautions[c] }
