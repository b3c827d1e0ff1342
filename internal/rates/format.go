package rates

import (
	"tenthpoint/internal/message"
	"tenthpoint/internal/rates/discount"
	"tenthpoint/internal/rates/rule"
	"tenthpoint/internal/tomlfile"
)

// Format is the format of an edition: its number, and what that says. A file that names no format is of the first, which
// leaves two things unsaid: what "dry" means once a discount has been taken of the weight, and what
// a load brings that a manager accepts beyond a limit. The second format says both.
type Format struct {
	Number int // 1 or 2
	// LaterDry is the weight that a rule on the dry weight is taken on once a discount has taken of
	// the weight: [OnDry] or [OnSettled].
	LaterDry LaterDry
	// AcceptedRefusal is what an accepted load brings in a row that turns loads away and has no
	// figure.
	AcceptedRefusal AcceptedRefusal
}

// LaterDry is a weight that later rules on the dry weight are taken on.
type LaterDry string

const (
	// OnDry is the dry-equivalent weight of all the clean grain.
	OnDry LaterDry = "dry"
	// OnSettled is the weight left by earlier rules.
	OnSettled LaterDry = "settled"
)

// AcceptedRefusal is what an accepted load brings where its row has no figure.
type AcceptedRefusal string

const (
	// LastRow is the figure of the nearest row that is not turned away.
	LastRow AcceptedRefusal = "last-row"
	// BringsNothing is no discount at all: such grain is paid more than grain within the limit.
	BringsNothing AcceptedRefusal = "nothing"
)

// The keys of the second format.
const (
	formatKey   = "format"
	laterKey    = "after_weight_discount"
	acceptedKey = "accepted_refusal"
)

// readFormat reads the number of the format, and what the second has to say.
func readFormat(t *tomlfile.Table) Format {
	f := Format{Number: 1, LaterDry: OnDry, AcceptedRefusal: BringsNothing}
	if !t.Has(formatKey) {
		for _, key := range []string{laterKey, acceptedKey} {
			if t.Has(key) {
				t.AddProblem(key, message.New("%s belongs to format 2, and this edition names no format", t.Name(key)), message.New("Add format = \"2\", or take the line out."))
				t.OptionalText(key)
			}
		}
		return f
	}
	if t.Choice(formatKey, "1", "2") != "2" {
		return f
	}
	f.Number, f.AcceptedRefusal = 2, LastRow
	f.LaterDry = LaterDry(t.Choice(laterKey, string(OnDry), string(OnSettled)))
	if t.Has(acceptedKey) {
		f.AcceptedRefusal = AcceptedRefusal(t.Choice(acceptedKey, string(LastRow), string(BringsNothing)))
	}
	return f
}

// Basis is the weight that a rule is taken on, after a discount of the weight or before any.
func (f Format) Basis(b rule.Basis, afterWeightDiscount bool) rule.Basis {
	if b == rule.Dry && afterWeightDiscount && f.LaterDry == OnSettled {
		return rule.Remaining
	}
	return b
}

// Accepted is the row whose figure a load brings that is accepted in a row which turns loads away.
func (f Format) Accepted(r *discount.Rule, refused rule.Band) rule.Band {
	if refused.Cell.Given() || f.AcceptedRefusal != LastRow {
		return refused
	}
	last, found := r.LastRow(refused)
	if !found {
		return refused
	}
	return last
}

// post writes the format for a manager; the first has nothing to say.
func (f Format) post(w *rule.Lines) {
	if f.Number < 2 {
		return
	}
	w.Name(formatKey, message.New("Format"), "2")
	later := message.New("the dry-equivalent weight of the clean grain")
	if f.LaterDry == OnSettled {
		later = message.New("what is left of the load")
	}
	w.Text(laterKey, message.New("\"Dry\" after a discount of the weight"), later)
	brings := message.New("the last row's figure")
	if f.AcceptedRefusal == BringsNothing {
		brings = message.New("nothing")
	}
	w.Text(acceptedKey, message.New("Accepted beyond a limit"), brings)
}
