package session

import (
	"context"
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
)

// Text that is typed but not yet a fact survives a restart: every form saves its texts as a draft
// of the book, at each keystroke, and loads them when it is made. A draft has codes and words as
// they were typed, in no language; they are parsed again.

// Current is the place of a screen's current item.
const Current = "in hand"

// DraftAt is the key of a draft: a form, and its subject.
type DraftAt struct{ Place, ID string }

// Drafts are the texts typed in a window that are no facts yet.
type Drafts struct {
	session *Session
	before  map[DraftAt]map[string]string // from before the stop, until their form takes them
	kept    map[DraftAt]map[string]string // as the book has them
	safe    map[DraftAt]bool              // kept so that they outlive the power, too
	back    []string                      // places whose texts were restored
	lost    []string                      // sentences about what could not be read
}

// Drafts returns the drafts, read from the book the first time. If they cannot be read the desk
// opens without them, with a message.
func (f *Session) Drafts() *Drafts {
	if f.drafts != nil {
		return f.drafts
	}
	f.drafts = &Drafts{session: f, before: map[DraftAt]map[string]string{}, kept: map[DraftAt]map[string]string{}, safe: map[DraftAt]bool{}}
	all, lost, err := scalehouse.Drafts(context.Background(), f.Desk)
	for _, sentence := range lost {
		f.drafts.lost = append(f.drafts.lost, f.Text(sentence))
	}
	if err != nil {
		f.drafts.lost = append(f.drafts.lost, f.Sentence(err))
	}
	for _, d := range all {
		at := DraftAt{d.Place, d.ID}
		f.drafts.before[at], f.drafts.kept[at] = d.Texts, d.Texts
	}
	return f.drafts
}

// TypedBefore takes the texts of a place from before the stop; nil for none.
func (d *Drafts) TypedBefore(at DraftAt) map[string]string {
	texts := d.before[at]
	delete(d.before, at)
	return texts
}

// TypedBeforeAt are the ids of the drafts that wait at a place, in order.
func (d *Drafts) TypedBeforeAt(place string) []string {
	var ids []string
	for at := range d.before {
		if at.Place == place {
			ids = append(ids, at.ID)
		}
	}
	slices.Sort(ids)
	return ids
}

// Save saves the texts of a place, at every keystroke. If the book is in use elsewhere the next
// keystroke saves them.
func (d *Drafts) Save(at DraftAt, texts map[string]string) {
	if maps.Equal(d.kept[at], texts) {
		return
	}
	if scalehouse.SaveDraft(d.session.Desk, at.Place, at.ID, texts) == nil {
		d.Take(at, texts, false)
	}
}

// SaveSync saves the texts of a place to disk: a field was left, or a test was made.
func (d *Drafts) SaveSync(at DraftAt, texts map[string]string) {
	if maps.Equal(d.kept[at], texts) && (d.safe[at] || len(texts) == 0) {
		return
	}
	if err := scalehouse.SaveDraftSync(context.Background(), d.session.Desk, at.Place, at.ID, texts); err != nil {
		d.session.Notify(model.Warn, d.session.Say("what is typed would not outlive a stop: %s", d.session.Sentence(err)))
		return
	}
	d.Take(at, texts, true)
}

// SaveWith saves a draft together with an act, unless the book has it already. The act may still
// fail: when it succeeds, call [Drafts.Take].
func (d *Drafts) SaveWith(ctx context.Context, w *scalehouse.Batch, at DraftAt, texts map[string]string) error {
	if maps.Equal(d.kept[at], texts) {
		return nil
	}
	return scalehouse.SaveDraftSync(ctx, w, at.Place, at.ID, texts)
}

// IsKept reports whether the book has a draft of a place.
func (d *Drafts) IsKept(at DraftAt) bool { return len(d.kept[at]) > 0 }

// Take notes the book's draft of a place, and whether it is synced to disk.
func (d *Drafts) Take(at DraftAt, texts map[string]string, safe bool) {
	d.kept[at], d.safe[at] = texts, safe
	if len(texts) == 0 {
		delete(d.kept, at)
	}
}

// StandsAgain notes where text typed before the restart was restored.
func (d *Drafts) StandsAgain(where string) {
	if !slices.Contains(d.back, where) {
		d.back = append(d.back, where)
	}
}

// IsLost notes that something typed before the stop could not be read.
func (d *Drafts) IsLost(sentence string) { d.lost = append(d.lost, sentence) }

// SayBack reports, once and quietly, which texts from before the stop were restored; those lost are
// a warning.
func (d *Drafts) SayBack() {
	if state, text := d.backWords(); text != "" {
		d.session.Notify(state, text)
	}
}

func (d *Drafts) backWords() (state model.State, text string) {
	if len(d.back) > 0 {
		text = d.session.Say("What was typed before the stop is here again: %s.", strings.Join(d.back, ", "))
	}
	if len(d.lost) > 0 {
		state, text = model.Warn, Join(" ", text, strings.Join(d.lost, " "))
	}
	d.back, d.lost = nil, nil
	return state, text
}

// CutAll are the texts under a name that begins with a word, by the rest of it.
func CutAll(texts map[string]string, word string) map[string]string {
	out := map[string]string{}
	for name, text := range texts {
		if rest, found := strings.CutPrefix(name, word); found {
			out[rest] = text
		}
	}
	return out
}
