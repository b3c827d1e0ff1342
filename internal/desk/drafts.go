package desk

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"

	"tenthpoint/internal/load"
	"tenthpoint/internal/store"
)

// Draft is what a person has typed at a place of the book and nobody has
// entered: texts by name, all as typed. It outlives the program being killed
// and is no fact: no figure is ever worked from it.
type Draft struct {
	Place string
	ID    string // of what; empty for a new one
	Texts map[string]string
	At    string // when it was last typed in
	Who   string
}

// The places whose drafts belong to a load. They leave the yard with it.
const (
	DraftOfLoad  = "load"  // its form
	DraftOfTests = "bench" // its sample under test
)

// Jot keeps a draft at the speed of typing; without texts it goes. A program
// that is killed leaves it; a computer that fails leaves the last one that was
// kept by [Desk.KeepDraft], or before a fact. Nobody needs to be signed in.
func (d *Desk) Jot(place, id string, texts map[string]string) error {
	row, err := d.draftRow(place, id, texts)
	if err != nil {
		return err
	}
	return d.book.Jot(row)
}

// KeepDraft is [Desk.Jot] on the disk when it returns.
func (d *Desk) KeepDraft(ctx context.Context, place, id string, texts map[string]string) error {
	return d.one(ctx, func(w *Work) error { return w.KeepDraft(place, id, texts) })
}

// KeepDraft keeps a draft together with the rest of the work: what became a fact
// in it is typed no more.
func (w *Work) KeepDraft(place, id string, texts map[string]string) error {
	row, err := w.desk.draftRow(place, id, texts)
	if err != nil {
		return err
	}
	return w.tx.KeepDraft(row)
}

func (d *Desk) draftRow(place, id string, texts map[string]string) (store.Draft, error) {
	row := store.Draft{Place: place, ID: id, At: d.Now(), Who: d.whoOrNobody()}
	if len(texts) == 0 {
		return row, nil
	}
	body, err := json.Marshal(texts)
	row.Texts = string(body)
	return row, err
}

// Drafts are what was typed and not entered when the desk last stopped. One
// that cannot be read is dropped, and lost says so in a sentence; one whose load
// has left the yard is dropped without a word.
func (d *Desk) Drafts(ctx context.Context) (kept []Draft, lost []string, err error) {
	rows, err := d.book.Drafts(ctx)
	if err != nil || len(rows) == 0 {
		return nil, nil, err
	}
	here, err := d.onYardNow(ctx)
	if err != nil {
		return nil, nil, err
	}
	for _, row := range rows {
		draft := Draft{Place: row.Place, ID: row.ID, At: row.At, Who: row.Who}
		damage := json.Unmarshal([]byte(row.Texts), &draft.Texts)
		switch {
		case damage != nil:
			lost = append(lost, fmt.Sprintf("What was typed by %s at %s (%s) can no longer be read and was dropped. Type it again.", row.Who, d.Local(row.At), placeOf(row)))
		case len(draft.Texts) == 0:
		case isOfLoad(row.Place) && row.ID != "" && !slices.Contains(here, row.ID):
		default:
			kept = append(kept, draft)
			continue
		}
		if err := d.book.Jot(store.Draft{Place: row.Place, ID: row.ID}); err != nil {
			return kept, lost, err
		}
	}
	return kept, lost, nil
}

func isOfLoad(place string) bool { return place == DraftOfLoad || place == DraftOfTests }

func placeOf(row store.Draft) string {
	if row.ID == "" {
		return row.Place
	}
	return row.Place + " " + row.ID
}

// onYardNow are the ids of the loads on the yard.
func (d *Desk) onYardNow(ctx context.Context) ([]string, error) {
	rows, err := d.book.Loads(ctx, store.LoadFilter{Phases: []string{string(load.OnYard), string(load.Ready)}})
	var out []string
	for _, r := range rows {
		out = append(out, r.ID)
	}
	return out, err
}

// dropDraftsOf takes away what was typed for a load that leaves the yard.
func (w *Work) dropDraftsOf(id string) error {
	for _, place := range []string{DraftOfLoad, DraftOfTests} {
		if err := w.KeepDraft(place, id, nil); err != nil {
			return err
		}
	}
	return nil
}
