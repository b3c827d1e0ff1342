package model

// Ask is a dialog as data. Without fields it is a confirmation; with Notice it only informs.
type Ask struct {
	Title, Text string
	State       State
	Fields      []AskField
	Yes, No     string // what going on and staying are called; empty takes the ordinary words
	Danger      bool   // cannot be undone: the focus starts on No
	Notice      bool

	// Draft names the dialog, and Of its subject: typed text is then saved, and restored when the
	// same is asked again. For a load Of is the load's id, and the text is dropped when the load
	// leaves the yard. Without a name nothing is saved.
	Draft, Of string
	// Typed is called with all values at every keystroke, and GivenUp when the person
	// cancels. Either may be nil.
	Typed   func(values map[string]string)
	GivenUp func()

	// Fault is the error of the act that the previous answer caused; the fields hold
	// that answer.
	Fault string

	// Check looks at all values before they are accepted and returns a message for each invalid
	// field, by id. It may be nil.
	Check func(values map[string]string) map[string]string
	// Then is called with the values by field id when the person confirms.
	Then func(values map[string]string)
}

// AskField is one field of a question.
type AskField struct {
	ID, Label, Unit, Value, Hint string

	Chars    int  // width in figures; zero takes twelve
	Most     int  // the longest text, in letters; zero takes that of its kind
	Figures  bool // a weight or amount: letters kept out, text at the right
	Checkbox bool // a box to tick, labelled by Label; its value is TickOn or empty
	Required bool
	Secret   bool // nobody reads it off the screen, and no draft keeps it
	// Row sets the field beside the others of the same row, under their labels; the rows are those of a
	// table, counted from 1. Zero gives the field a line of its own.
	Row int
	// Last ends the form: Enter in it while it is empty goes to the button. Rows of a table are
	// filled as far as there is something to fill in.
	Last bool
	// Options make it a find field; its value is the code chosen, or with FreeText the text typed.
	Options  []Option
	FreeText bool
}

// Field is the field of a form that asks the same.
func (a AskField) Field() Field {
	f := Field{ID: a.ID, Label: a.Label, Unit: a.Unit, Chars: a.Chars, Most: a.Most, Options: a.Options, Value: a.Value, Reading: a.Hint}
	switch {
	case a.Secret:
		f.Kind = SecretField
	case a.Checkbox:
		f.Kind = TickField
	case a.Options != nil && a.FreeText:
		f.Kind = OpenField
	case a.Options != nil:
		f.Kind = FindField
	case a.Figures:
		f.Kind = FigureField
	}
	return f
}

// TickOn is the value of a ticked box.
const TickOn = "on"
