package desk

import (
	"context"
	"fmt"
	"strings"

	"tenthpoint/internal/quantity"
	"tenthpoint/internal/takeover"
)

// Takeover is a list from elsewhere as it would go into the book: the preview,
// and what [Desk.TakeOver] takes.
type Takeover struct {
	takeover.List
	Name string // of the file
	Hash string // SHA-256 of its text
	// Change says for each row what it would do to the book: "new", "changes
	// NAME", "as it is", or nothing for a row with problems.
	Change []string
}

// TakenOver is the fact that a list was taken over, so that nobody takes the
// same one over twice. Lines are rows taken and rows left out.
type TakenOver struct {
	List    string `json:"list"`
	Name    string `json:"name"`
	Hash    string `json:"hash"`
	Taken   int    `json:"taken,string"`
	Skipped int    `json:"skipped,string"`
}

// Kind names the fact in the journal.
func (TakenOver) Kind() string { return "list.taken" }

// PreviewTakeover reads a list and finds everything that keeps a row of it out of
// the book, without writing anything. The problems given back are those of the
// file as a whole; with any of them there is nothing to take over.
func (d *Desk) PreviewTakeover(ctx context.Context, kind takeover.Kind, name string, text []byte) (Takeover, []takeover.Problem, error) {
	list, problems := takeover.Read(kind, text, takeover.Usual{House: d.Entering(ctx), Name: name})
	t := Takeover{List: list, Name: name, Hash: hash(text)}
	if len(problems) > 0 {
		return t, problems, nil
	}
	c, err := d.newTakeoverCheck(ctx, t)
	if err != nil {
		return t, nil, err
	}
	t.Change = make([]string, len(t.Rows))
	for i := range t.Rows {
		t.Change[i] = c.row(&t.Rows[i])
	}
	return t, nil, nil
}

// TakeOver writes a list into the book, all of it in one transaction: after a
// kill nothing of it is there. A list with problems is taken only if its bad
// rows may be left out. Progress is told after each row and may be nil.
func (d *Desk) TakeOver(ctx context.Context, t Takeover, leaveBadOut bool, progress func(done, all int)) (taken, skipped int, err error) {
	if t.Kind == takeover.Loads {
		if err := d.mayManage("Taking past loads over"); err != nil {
			return 0, 0, err
		}
	}
	if bad := len(t.Rows) - t.Good(); bad > 0 && !leaveBadOut {
		return 0, 0, fmt.Errorf("%d of %d rows of %s have problems, and nothing was taken over. Mend them or leave them out\n%s",
			bad, len(t.Rows), t.Name, firstProblems(t.Problems()))
	}
	if t.Good() == 0 {
		return 0, 0, fmt.Errorf("%s has no row that could be taken over", t.Name)
	}
	err = d.Together(ctx, func(w *Work) error {
		if err := w.notTakenYet(t); err != nil {
			return err
		}
		taken, skipped, err = w.takeOver(ctx, t, progress)
		if err != nil {
			return err
		}
		f := TakenOver{List: string(t.Kind), Name: t.Name, Hash: t.Hash, Taken: taken, Skipped: skipped}
		return w.Standing(t.Hash, f)
	})
	return taken, skipped, err
}

// firstProblems are the first of many, a line each.
func firstProblems(all []takeover.Problem) string {
	const most = 10
	var lines []string
	for i, p := range all {
		if i == most {
			lines = append(lines, fmt.Sprintf("and %d more", len(all)-most))
			break
		}
		lines = append(lines, p.String())
	}
	return strings.Join(lines, "\n")
}

// notTakenYet refuses a list that is in the book already.
func (w *Work) notTakenYet(t Takeover) error {
	taken, err := w.tx.HasStanding(TakenOver{}.Kind(), t.Hash)
	if err == nil && taken {
		err = fmt.Errorf("the list %s has been taken over before, to the last letter. Nothing was taken over again", t.Name)
	}
	return err
}

func (w *Work) takeOver(ctx context.Context, t Takeover, progress func(done, all int)) (taken, skipped int, err error) {
	var last quantity.Date
	for n, i := range t.order() {
		if err := ctx.Err(); err != nil {
			return 0, 0, err
		}
		switch row := t.Rows[i]; {
		case len(row.Problems) > 0:
			skipped++
		case row.Past != nil:
			if last, err = w.pastLoad(row, last); err == nil {
				taken++
			}
		case row.Grower != nil:
			taken, err = taken+1, w.Standing(row.Grower.ID, *row.Grower)
		case row.Truck != nil:
			taken, err = taken+1, w.Standing(row.Truck.ID, *row.Truck)
		}
		if err != nil {
			return 0, 0, fmt.Errorf("line %d of %s: %w", t.Rows[i].Line, t.Name, err)
		}
		if progress != nil {
			progress(n+1, len(t.Rows))
		}
	}
	return taken, skipped, nil
}
