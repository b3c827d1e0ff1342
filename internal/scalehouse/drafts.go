package scalehouse

import (
	"context"
	"encoding/json"
	"slices"
	"strings"
	"unicode/utf8"

	"tenthpoint/internal/book"
	"tenthpoint/internal/load"
	"tenthpoint/internal/message"
)

// Draft is text typed at a place of the book but not entered: texts by name, all as typed. It
// survives the program being killed and is no fact: no figure is ever calculated from it.
type Draft struct {
	Place string
	ID    string // of what: of a load its id, empty for a new one
	Texts map[string]string
	At    string // when it was last typed in
	Who   string
}

// The places of a load. Whatever is typed of a load, there or elsewhere, leaves
// the yard with it.
const (
	DraftOfLoad  = "load"  // its form
	DraftOfTests = "bench" // its sample under test
)

// SaveDraft keeps a draft at the speed of typing; without texts it goes. A program
// that is killed leaves it; a computer that fails leaves the last one that was
// kept by [SaveDraftSync], or before a fact. Nobody needs to be signed in.
func SaveDraft(d *Desk, place, id string, texts map[string]string) error {
	row, err := draftRow(d, place, id, texts)
	if err != nil {
		return err
	}
	return d.book.SaveDraft(row)
}

// SaveDraftSync is [SaveDraft] on the disk when it returns.
func SaveDraftSync(ctx context.Context, at Actor, place, id string, texts map[string]string) error {
	return at.do(ctx, func(w *Batch) error {
		row, err := draftRow(w.desk, place, id, texts)
		if err != nil {
			return err
		}
		return w.tx.SaveDraft(row)
	})
}

func draftRow(d *Desk, place, id string, texts map[string]string) (book.Draft, error) {
	row := book.Draft{Place: place, ID: id, At: d.Now(), Who: d.Signature()}
	if len(texts) == 0 {
		return row, nil
	}
	body, err := json.Marshal(texts)
	row.Texts = string(body)
	return row, err
}

// Drafts returns the texts typed but not entered when the desk last stopped. One that cannot be
// read is dropped, with a message in lost; one whose load has left the yard is dropped silently.
func Drafts(ctx context.Context, d *Desk) (kept []Draft, lost []message.Text, err error) {
	rows, err := d.book.Drafts(ctx)
	if err != nil || len(rows) == 0 {
		return nil, nil, err
	}
	here, err := onYardNow(ctx, d)
	if err != nil {
		return nil, nil, err
	}
	for _, row := range rows {
		draft := Draft{Place: row.Place, ID: row.ID, At: row.At, Who: row.Who}
		switch {
		case !draft.read(row.Texts):
			lost = append(lost, message.New("What was typed by %v at %v (%v) can no longer be read and was dropped. Type it again.", row.Who, d.Local(row.At), placeOf(row)))
		case len(draft.Texts) == 0:
		case isLoadID(row.ID) && !slices.Contains(here, row.ID):
		default:
			kept = append(kept, draft)
			continue
		}
		if err := d.book.SaveDraft(book.Draft{Place: row.Place, ID: row.ID}); err != nil {
			return kept, lost, err
		}
	}
	return kept, lost, nil
}

// read reads the texts of a row and reports whether it could. It removes characters that no fact
// may hold.
func (d *Draft) read(row string) bool {
	if json.Unmarshal([]byte(row), &d.Texts) != nil {
		return false
	}
	for name, text := range d.Texts {
		if strings.ContainsRune(name+text, utf8.RuneError) {
			return false
		}
	}
	return true
}

// isLoadID reports whether an id is one that loads have.
func isLoadID(id string) bool {
	number, begins := strings.CutPrefix(id, "L")
	return begins && number != "" && strings.Trim(number, "0123456789") == ""
}

func placeOf(row book.Draft) string {
	if row.ID == "" {
		return row.Place
	}
	return row.Place + " " + row.ID
}

// onYardNow are the ids of the loads on the yard.
func onYardNow(ctx context.Context, d *Desk) ([]string, error) {
	rows, err := d.book.Loads(ctx, book.LoadFilter{Phases: []string{string(load.OnYard), string(load.Ready)}})
	var out []string
	for _, r := range rows {
		out = append(out, r.ID)
	}
	return out, err
}
