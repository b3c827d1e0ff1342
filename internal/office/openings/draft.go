// Package openings reads the list by which the books of a house are opened, against the book, and
// makes the paper of the opening. Nothing is written here.
package openings

import (
	"context"
	"slices"

	"tenthpoint/internal/digest"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/imports"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/opening"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/title"
)

// Order is a list with what is not in it.
type Order struct {
	Name   string // of the file
	Text   []byte
	Day    quantity.Date // the evening whose balances these are; the zero day for today
	Reason string
}

// Draft makes the opening of a list, to be looked at before it is entered. It has no number yet. The
// problems are those of its rows; with any of them there is no opening.
func Draft(ctx context.Context, d office.Desk, o Order) (opening.Opening, []imports.Problem, error) {
	list, problems := imports.Read(imports.Openings, o.Text, imports.Defaults{House: office.NewEntering(ctx, d), Name: o.Name})
	if len(problems) > 0 {
		return opening.Opening{}, problems, nil
	}
	known, err := readKnown(ctx, d)
	if err != nil {
		return opening.Opening{}, nil, err
	}
	day := o.Day
	if day.IsZero() {
		day = d.Today()
	}
	var entries []opening.Entry
	for _, row := range list.Rows {
		problems = append(problems, row.Problems...)
		if row.Opening != nil {
			problems = append(problems, known.check(row, day)...)
			entries = append(entries, *row.Opening)
		}
	}
	if len(problems) > 0 {
		return opening.Opening{}, problems, nil
	}
	made, err := opening.Of(entries)
	made.Number, made.Day, made.By, made.Reason = 1, day, d.Signature(), o.Reason
	made.List, made.Hash = o.Name, digest.Of(o.Text)
	if err != nil {
		return made, nil, err
	}
	return made, nil, made.Check()
}

// known is what the rows of a list name and the book has.
type known struct {
	bins      []elevator.Bin
	growers   map[string]string // names by code
	contracts []elevator.ContractTerms
}

func readKnown(ctx context.Context, d office.Desk) (k known, err error) {
	if k.bins, err = office.Bins(ctx, d); err != nil {
		return k, err
	}
	growers, err := office.Growers(ctx, d)
	if err != nil {
		return k, err
	}
	k.growers = map[string]string{}
	for _, g := range growers {
		k.growers[g.ID] = g.Name
	}
	k.contracts, err = office.Contracts(ctx, d)
	return k, err
}

// check adds the book's objections to a row, and the depositor's name to a lot.
func (k known) check(row imports.Row, day quantity.Date) (out []imports.Problem) {
	wrong := func(column string, reason message.Text) {
		out = append(out, imports.Problem{Line: row.Line, Column: column, Reason: reason})
	}
	switch e := row.Opening; {
	case e.Lying != nil:
		if !slices.ContainsFunc(k.bins, func(b elevator.Bin) bool { return b.ID == e.Lying.Bin }) {
			wrong("bin", message.New("there is no pit or bin %v; set it up first, or write its short name as it is there", e.Lying.Bin))
		}
		if e.Lying.Since.After(day) {
			wrong("since", message.New("%s is after the day of the opening, %s", e.Lying.Since, day))
		}
	case e.Lot != nil:
		e.Lot.Name = k.depositor(e.Lot.Grower, wrong)
		if e.Lot.Since.After(day) {
			wrong("since", message.New("%s is after the day of the opening, %s", e.Lot.Since, day))
		}
		if e.Lot.Receipt != nil && e.Lot.Receipt.Day.After(day) {
			wrong("receipt_day", message.New("%s is after the day of the opening, %s", e.Lot.Receipt.Day, day))
		}
		if reason := k.contract(*e.Lot); !reason.IsZero() {
			wrong("what", reason)
		}
	case e.Advance != nil:
		e.Advance.Name = k.depositor(e.Advance.Grower, wrong)
		if e.Advance.Since.After(day) {
			wrong("since", message.New("%s is after the day of the opening, %s", e.Advance.Since, day))
		}
	case e.Lien != nil:
		k.depositor(e.Lien.Grower, wrong)
		if !e.Lien.Until.IsZero() && e.Lien.Until.Before(day) {
			wrong("until", message.New("%s is before the day of the opening, %s: the notice has ended", e.Lien.Until, day))
		}
	}
	return out
}

// depositor is the name of a grower by code.
func (k known) depositor(code string, wrong func(column string, reason message.Text)) string {
	name, there := k.growers[code]
	if !there {
		wrong("grower", message.New("there is no grower %q; take the list of growers over first, or write the code as it is there", code))
	}
	return name
}

// contract says what is wrong with the contract of a lot; nothing where it is on none.
func (k known) contract(l opening.Lot) message.Text {
	if l.Under != title.Contract {
		return message.Text{}
	}
	at := slices.IndexFunc(k.contracts, func(c elevator.ContractTerms) bool { return c.Number == l.No })
	switch {
	case at < 0:
		return message.New("there is no contract %v; write it down first, with the quantity it was made for", l.No)
	case !k.contracts[at].IsSeller(l.Grower) || k.contracts[at].Commodity != l.Commodity || k.contracts[at].Quantity.Unit() != l.Quantity.Unit():
		return message.New("contract %v is another grower's, of another grain, or counts in another unit", l.No)
	}
	return message.Text{}
}

// All are all openings, those taken back among them.
func All(ctx context.Context, d office.Desk) ([]opening.Opening, error) {
	return office.RecordsOf[opening.Opening](ctx, d.Reader())
}
