package present

import (
	"context"
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/desk"
	"tenthpoint/ui/model"
)

// What is typed and cannot be a fact yet outlives the program: every form keeps
// its texts as a draft of the book, at each keystroke, and finds them there when
// it is made. Codes and words stand in a draft as they were typed, in no
// language; what they come to is read from them anew.

// draftAt is where a draft belongs: a form, and what is on it.
type draftAt struct{ place, id string }

// drafts are the drafts of a window.
type drafts struct {
	frame  *Frame
	before map[draftAt]map[string]string // from before the stop, until their form takes them
	kept   map[draftAt]map[string]string // as the book has them
	safe   map[draftAt]bool              // kept so that they outlive the power, too
	back   []string                      // where something stands again
	lost   []string                      // sentences about what could not be read
}

// Drafts are what was typed and is no fact, read from the book the first time. That they cannot be
// read stops nobody: the desk opens without them and says so.
func (f *Frame) Drafts() *drafts {
	if f.drafts != nil {
		return f.drafts
	}
	f.drafts = &drafts{frame: f, before: map[draftAt]map[string]string{}, kept: map[draftAt]map[string]string{}, safe: map[draftAt]bool{}}
	all, lost, err := f.Desk.Drafts(context.Background())
	for _, sentence := range lost {
		f.drafts.lost = append(f.drafts.lost, translate(sentence))
	}
	if err != nil {
		f.drafts.lost = append(f.drafts.lost, sentence(err))
	}
	for _, d := range all {
		at := draftAt{d.Place, d.ID}
		f.drafts.before[at], f.drafts.kept[at] = d.Texts, d.Texts
	}
	return f.drafts
}

// typedBefore takes what was typed at a place before the stop; nil is nothing.
func (d *drafts) typedBefore(at draftAt) map[string]string {
	texts := d.before[at]
	delete(d.before, at)
	return texts
}

// typedBeforeAt are the ids of the drafts that wait at a place, in order.
func (d *drafts) typedBeforeAt(place string) []string {
	var ids []string
	for at := range d.before {
		if at.place == place {
			ids = append(ids, at.id)
		}
	}
	slices.Sort(ids)
	return ids
}

// jot keeps what is typed at a place, at every keystroke. When the book is in
// use elsewhere the next keystroke brings it.
func (d *drafts) jot(at draftAt, texts map[string]string) {
	if maps.Equal(d.kept[at], texts) {
		return
	}
	if d.frame.Desk.Jot(at.place, at.id, texts) == nil {
		d.take(at, texts, false)
	}
}

// keep keeps what is typed at a place on the disk: a field was left, or a test
// was made.
func (d *drafts) keep(at draftAt, texts map[string]string) {
	if maps.Equal(d.kept[at], texts) && (d.safe[at] || len(texts) == 0) {
		return
	}
	if err := d.frame.Desk.KeepDraft(context.Background(), at.place, at.id, texts); err != nil {
		d.frame.Say(model.Warn, Say("what is typed would not outlive a stop: %s", sentence(err)))
		return
	}
	d.take(at, texts, true)
}

// keepWith keeps what is typed together with an act, unless the book has it so.
// The act may still fail: when it is done, call [drafts.take].
func (d *drafts) keepWith(w *desk.Work, at draftAt, texts map[string]string) error {
	if maps.Equal(d.kept[at], texts) {
		return nil
	}
	return w.KeepDraft(at.place, at.id, texts)
}

// isKept reports whether the book has a draft of a place.
func (d *drafts) isKept(at draftAt) bool { return len(d.kept[at]) > 0 }

// take notes what the book has at a place, and whether that is on the disk.
func (d *drafts) take(at draftAt, texts map[string]string, safe bool) {
	d.kept[at], d.safe[at] = texts, safe
	if len(texts) == 0 {
		delete(d.kept, at)
	}
}

// standsAgain notes where something typed before the stop stands again.
func (d *drafts) standsAgain(where string) {
	if !slices.Contains(d.back, where) {
		d.back = append(d.back, where)
	}
}

// isLost notes that something typed before the stop could not be read.
func (d *drafts) isLost(sentence string) { d.lost = append(d.lost, sentence) }

// SayBack tells, once and quietly, what was typed before the stop and is here
// again; what is not is a warning.
func (d *drafts) SayBack() {
	if state, text := d.backWords(); text != "" {
		d.frame.Say(state, text)
	}
}

func (d *drafts) backWords() (state model.State, text string) {
	if len(d.back) > 0 {
		text = Say("What was typed before the stop is here again: %s.", strings.Join(d.back, ", "))
	}
	if len(d.lost) > 0 {
		state, text = model.Warn, join(" ", text, strings.Join(d.lost, " "))
	}
	d.back, d.lost = nil, nil
	return state, text
}

// cutAll are the texts under a name that begins with a word, by the rest of it.
func cutAll(texts map[string]string, word string) map[string]string {
	out := map[string]string{}
	for name, text := range texts {
		if rest, found := strings.CutPrefix(name, word); found {
			out[rest] = text
		}
	}
	return out
}
