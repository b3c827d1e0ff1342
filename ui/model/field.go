package model

// FieldKind says how a field is filled.
type FieldKind int

// The kinds of field.
const (
	WordsField  FieldKind = iota // running words
	FigureField                  // a weight, a percent, money
	FindField                    // one of a list, by its code or a few letters
	OpenField                    // one of a list, or free text
	SecretField                  // words that the screen does not show
	TickField                    // a box to tick; its value is TickOn or empty
)

// Part says where on the form a field belongs.
type Part int

// The parts of a load form, in working order.
const (
	WhoPart    Part = iota // grower, commodity, truck
	WeightPart             // gross and tare
	SamplePart             // results of the bench
	ClosePart              // where it went and what becomes of it
)

// Field is one field of a form, ready to show.
type Field struct {
	ID, Label, Unit string
	Kind            FieldKind
	Part            Part
	Chars           int // width in figures
	Most            int // the longest text, in letters; zero takes that of its kind
	Options         []Option
	Words           []string // what may stand in the place of a figure; the first letter is enough

	Value   string // its text
	Reading string // how it was understood, or a hint
	Note    string // an error, a warning or a hint; shown before Reading
	State   State  // of the note
	Missing bool   // the ticket cannot do without it
}
