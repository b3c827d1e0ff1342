// Package intake imports lists kept elsewhere (growers, trucks, past loads, temperatures): each row is checked
// against the book first, and the whole list is entered in one transaction or not at all.
package intake

import (
	"context"

	"tenthpoint/internal/bin"
	"tenthpoint/internal/digest"
	"tenthpoint/internal/elevator"
	"tenthpoint/internal/imports"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/scalehouse"
)

// List is a list from elsewhere and its preview, the input of [Take].
type List struct {
	imports.List
	Name string // of the file
	Hash string // SHA-256 of its text
	// Change says for each row what it would change in the book: "new", "changes NAME", "as it is",
	// or nothing for a row with problems.
	Change []message.Text
	// heat are the movements that rows of temperatures are.
	heat map[int]bin.Movement
}

// ListTaken is the fact that a list was imported, so that nobody imports it twice. Lines are rows
// imported and rows left out.
type ListTaken struct {
	List    string `json:"list"`
	Name    string `json:"name"`
	Hash    string `json:"hash"`
	Taken   int    `json:"taken,string"`
	Skipped int    `json:"skipped,string"`
}

// Kind names the fact in the journal.
func (ListTaken) Kind() string { return "list.taken" }

// Preview reads a list and finds every reason to reject a row of it, without writing anything. The
// problems returned are those of the file as a whole; with any of them nothing can be imported.
func Preview(ctx context.Context, d office.Desk, kind imports.Kind, name string, text []byte) (List, []imports.Problem, error) {
	list, problems := imports.Read(kind, text, imports.Defaults{House: office.NewEntering(ctx, d), Name: name})
	t := List{List: list, Name: name, Hash: digest.Of(text)}
	if len(problems) > 0 {
		return t, problems, nil
	}
	c, err := newBookCheck(ctx, d, t)
	if err != nil {
		return t, nil, err
	}
	t.Change, t.heat = make([]message.Text, len(t.Rows)), map[int]bin.Movement{}
	for i := range t.Rows {
		t.Change[i] = c.row(&t.Rows[i])
		if r := &t.Rows[i]; r.Cable != nil && len(r.Problems) == 0 {
			t.heat[i] = c.heat
		}
	}
	return t, nil, nil
}

// Take imports a list in one transaction: if the program is killed nothing of it is in the book. A
// list with problems is imported only if its bad rows may be left out. progress is called after
// each row and may be nil.
func Take(ctx context.Context, d *scalehouse.Desk, t List, leaveBadOut bool, progress func(done, all int)) (taken, skipped int, err error) {
	if t.Kind == imports.Loads {
		if err := d.MayManage("Taking past loads over"); err != nil {
			return 0, 0, err
		}
	}
	if bad := len(t.Rows) - t.Good(); bad > 0 && !leaveBadOut {
		whole := message.New("%d of %d rows of %v have problems, and nothing was taken over. Mend them or leave them out", bad, len(t.Rows), t.Name)
		return 0, 0, message.Errs(message.Refused, append([]message.Text{whole}, firstProblems(t.Problems())...))
	}
	if t.Good() == 0 {
		return 0, 0, message.NotFound.Errorf("%s has no row that could be taken over", t.Name)
	}
	err = d.Batch(ctx, func(w *scalehouse.Batch) error {
		if err := notTakenYet(w, t); err != nil {
			return err
		}
		taken, skipped, err = takeRows(ctx, w, t, progress)
		if err != nil {
			return err
		}
		f := ListTaken{List: string(t.Kind), Name: t.Name, Hash: t.Hash, Taken: taken, Skipped: skipped}
		return scalehouse.SetRecord(ctx, w, t.Hash, f)
	})
	return taken, skipped, err
}

// Problems are the problems of a list as one error, the first of many a line each; nil without any.
func Problems(all []imports.Problem) error {
	return message.Errs(message.Invalid, firstProblems(all))
}

// firstProblems are the first of many, a line each.
func firstProblems(all []imports.Problem) []message.Text {
	const most = 10
	var lines []message.Text
	for i, p := range all {
		if i == most {
			lines = append(lines, message.New("and %d more", len(all)-most))
			break
		}
		lines = append(lines, p.Message())
	}
	return lines
}

// notTakenYet refuses a list that is in the book already.
func notTakenYet(w *scalehouse.Batch, t List) error {
	taken, err := w.HasRecord(ListTaken{}.Kind(), t.Hash)
	if err == nil && taken {
		err = message.Refused.Errorf("the list %s has been taken over before, to the last letter. Nothing was taken over again", t.Name)
	}
	return err
}

func takeRows(ctx context.Context, w *scalehouse.Batch, t List, progress func(done, all int)) (taken, skipped int, err error) {
	var last quantity.Date
	for n, i := range t.order() {
		if err := ctx.Err(); err != nil {
			return 0, 0, err
		}
		switch row := t.Rows[i]; {
		case len(row.Problems) > 0:
			skipped++
		case row.Past != nil:
			if last, err = scalehouse.EnterPastLoad(ctx, w, *row.Past.Facts.Details, pastFacts(row.Past), last); err == nil {
				taken++
			}
		case row.Cable != nil:
			if _, err = scalehouse.MoveGrain(ctx, w, t.heat[i]); err == nil {
				taken++
			}
		case row.Grower != nil:
			taken, err = taken+1, scalehouse.AmendGrower(ctx, w, row.Grower.ID, func(was elevator.Grower) elevator.Grower { return t.GrowerOnto(was, *row.Grower) })
		case row.Truck != nil:
			taken, err = taken+1, scalehouse.AmendTruck(ctx, w, row.Truck.ID, func(was elevator.Truck) elevator.Truck { return t.TruckOnto(was, *row.Truck) })
		}
		if err != nil {
			return 0, 0, message.Errorf("line %d of %s: %w", t.Rows[i].Line, t.Name, err)
		}
		if progress != nil {
			progress(n+1, len(t.Rows))
		}
	}
	return taken, skipped, nil
}
