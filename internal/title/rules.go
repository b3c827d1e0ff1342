package title

import (
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/tomlfile"
)

// KindTitles is the kind of file with the rules of a place about grain under a scale ticket.
const KindTitles = law.Titles

// Rules are those of one place. Places that nobody read the law of have none, and say nothing.
type Rules struct {
	Place string
	// Words stand under every ticket; some places ask for words that others forbid.
	Words string
	// UndecidedDays is the number of days after delivery that grain may stay undecided, zero where no day was
	// read; Undecided says what becomes of it.
	UndecidedDays int
	Undecided     string
	Citation      string
}

// ReadRules reads a file of that kind. The error names every mistake in it.
func ReadRules(f *law.File) (Rules, error) {
	r := Rules{Place: f.Jurisdiction, Citation: f.Citation}
	err := f.Read(func(body *tomlfile.Table) {
		t, _ := body.Table("titles", true)
		r.Words, r.Undecided = t.OptionalText("words"), t.Text("undecided")
		if t.Has("undecided_days") {
			r.UndecidedDays = law.Days(t, "undecided_days")
		}
	})
	return r, err
}

// First are the words that stood under every ticket while the first law was in force, before the
// laws of places were read.
var First = Rules{Words: "Scale ticket only, not a warehouse receipt."}

// RulesIn are the rules of the place that a law is of; none where the law has none.
func RulesIn(l law.Law) (Rules, error) {
	if l.Hash() == law.First().Hash() {
		return First, nil
	}
	for _, f := range l.OfKind(KindTitles) {
		return ReadRules(f)
	}
	return Rules{}, nil
}

// Due is the last day on which grain delivered on a day may be undecided; the zero day where no day
// was read.
func (r Rules) Due(delivered quantity.Date) quantity.Date {
	if r.UndecidedDays == 0 || delivered.IsZero() {
		return quantity.Date{}
	}
	return delivered.AddDays(r.UndecidedDays)
}

// Said is the consequence for undecided grain, with its citation.
func (r Rules) Said() message.Text {
	return law.ToConfirm(message.New("%s (%v).", message.Words(r.Undecided), r.Citation))
}
