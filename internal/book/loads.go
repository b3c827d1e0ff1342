package book

import (
	"encoding/json"
	"maps"
	"strings"

	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/internal/title"
)

// LoadRow is one load as lists and totals read it. Days and times are text as
// in the facts; numbers of tickets are zero where there is none.
type LoadRow struct {
	ID, Phase, Direction, Day, OpenedAt  string
	Commodity, Grower, GrowerName, Truck string
	Bin, Disposition, Contract           string
	// Onward is the bin that the grain went on to from its pit, by the usual path; empty where it
	// stayed in Bin.
	Onward string
	// Farm and Field are where it grew, Lot the name it is kept apart under, as typed.
	Farm, Field, Lot    string
	Ticket              int64
	IssuedAt, IssuedDay string
	EndedAt, EndedDay   string
	EndedBy, Corrects   int64
	// Reissues is the void ticket whose grain this is; of a void ticket,
	// ReissuedBy is the one in its place and ReissuedDay the day that counts in.
	Reissues, ReissuedBy                 int64
	ReissuedDay                          string
	Reason, Who, Manual, Accepted, Flags string
	// Weigher issued the ticket; Who is the weigher, or who ended it.
	Weigher                 string
	Sample, Kept, KeepUntil string
	Edition, EditionHash    string
	Engine                  settle.Engine // settled it, so that its figures can be read
	// Figures are the lines of the settlement by step id.
	Figures map[string]quantity.Amount
	// Owners are the growers who share in the load, as on the ticket; empty
	// when the grower has all of it, and where a filter did not ask for them.
	Owners []string
	// Titles are whose grain it is and under what, owner by owner or of the one who
	// has all of it; none where Disposition and Contract say all there is to say.
	Titles []title.Terms
}

// TermsOf is whose grain an owner's part is and under what, counted from zero.
func (r LoadRow) TermsOf(owner int) title.Terms {
	if owner < len(r.Titles) {
		return r.Titles[owner]
	}
	return title.Terms{Under: title.Under(r.Disposition), No: r.Contract}
}

// EncodeDisposition is the row's disposition as it is kept: one word, or where owners
// have titles of their own, the grain went on to another bin, or its farm or lot is known, a JSON
// object with all.
func EncodeDisposition(r LoadRow) (string, error) {
	all := dispositions{Load: r.Disposition, Owners: r.Titles, Onward: r.Onward, Farm: r.Farm, Field: r.Field, Lot: r.Lot}
	if all.isOneWord() {
		return r.Disposition, nil
	}
	text, err := json.Marshal(all)
	return string(text), err
}

// dispositions is the stored form that replaces a single word.
type dispositions struct {
	Load   string        `json:"load"`
	Owners []title.Terms `json:"owners,omitempty"`
	Onward string        `json:"onward,omitempty"`
	Farm   string        `json:"farm,omitempty"`
	Field  string        `json:"field,omitempty"`
	Lot    string        `json:"lot,omitempty"`
}

func (d dispositions) isOneWord() bool {
	return len(d.Owners) == 0 && d.Onward == "" && d.Farm == "" && d.Field == "" && d.Lot == ""
}

// DecodeDisposition reads what EncodeDisposition wrote.
func DecodeDisposition(r *LoadRow, text string) error {
	if !strings.HasPrefix(text, "{") {
		r.Disposition = text
		return nil
	}
	var all dispositions
	if err := json.Unmarshal([]byte(text), &all); err != nil {
		return message.Errorf("the titles of load %s cannot be read: %w", r.ID, err)
	}
	r.Disposition, r.Titles, r.Onward = all.Load, all.Owners, all.Onward
	r.Farm, r.Field, r.Lot = all.Farm, all.Field, all.Lot
	return nil
}

// LoadFilter narrows a list of loads; empty fields do not.
type LoadFilter struct {
	ID                   string
	Phases               []string
	Ticket               int64
	FromTicket, ToTicket int64
	Corrects, Reissues   int64  // the ticket that the load replaces
	Sample               string // number
	IssuedDay            string
	EndedDay             string
	EndedFrom, EndedTo   string // voided, corrected or refused from one day to another
	OnDay                string // issued, voided, corrected or refused on the day
	FromDay              string // issued on or after
	ToDay                string // issued on or before
	Commodity            string
	Grower               string // as grower or as sharer
	Truck                string
	Bin                  string
	Text                 string // part of the grower's name, the truck or the commodity
	Undecided            bool   // with a ticket in force, and not all of the grain decided
	KeptUntil            string // retained sample to be kept no longer than this day
	Newest               bool   // highest ticket first; else by ticket, then by id
	Limit                int
	WithOwners           bool // each row has its owners
}

// Recorded are the row's figures, to be read by name.
func (r LoadRow) Recorded() settle.Recorded {
	return settle.Recorded{Engine: r.Engine, Weighed: r.Direction == outbound, Lines: r.Figures}
}

// outbound is the direction of a load that is only weighed, as the facts have it.
const outbound = "out"

// engineKey is the key of the engine among the figures of a row, which cannot be read without it.
// It is left out for the first engine, so older rows are unchanged. No line has this id.
const engineKey = "engine"

// ErrFigures is a load whose figures are no figures.
var ErrFigures = message.Storage.Errorf("the figures of a load cannot be read")

// EncodeFigures is the row's figures and their engine as a JSON object of text.
func EncodeFigures(r LoadRow) (string, error) {
	figures := r.Figures
	if !r.Engine.IsZero() {
		figures = map[string]quantity.Amount{}
		maps.Copy(figures, r.Figures)
		figures[engineKey] = quantity.Int(int64(r.Engine), quantity.Plain)
	}
	text, err := json.Marshal(figures)
	if err != nil {
		return "", message.Errorf("the figures of load %s cannot be kept: %w", r.ID, err)
	}
	return string(text), nil
}

// DecodeFigures decodes the output of EncodeFigures.
func DecodeFigures(r *LoadRow, text string) error {
	figures, ok := quantity.ReadFigures(text)
	if ok {
		r.Figures = figures
	} else if err := json.Unmarshal([]byte(text), &r.Figures); err != nil {
		return message.Errorf("%w: load %s: %w", ErrFigures, r.ID, err)
	}
	r.Engine = settle.First
	number, ok := r.Figures[engineKey]
	if !ok {
		return nil
	}
	delete(r.Figures, engineKey)
	if err := r.Engine.UnmarshalText([]byte(number.Written())); err != nil {
		return message.Errorf("%w: load %s: %w", ErrFigures, r.ID, err)
	}
	return nil
}
