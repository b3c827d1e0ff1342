package yard

import (
	"maps"
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// standing is a load as it would stand with everything typed taken in.
type standing struct {
	Load       *load.Load
	edition    *rates.Edition
	settlement *settle.Settlement // nil while it cannot be settled
	problems   settle.Problems

	readings map[string]string // how each typed text was understood
	remarks  session.Remarks
	missing  map[string]bool
}

// remark says something beside a field; see [session.Remarks].
func (s *standing) remark(field string, state model.State, text string) {
	s.remarks.Say(field, state, text)
}

// work reads all that is typed, settles the load as it would stand, and says
// beside each field what is wrong.
func (f *LoadForm) Work() {
	f.form = f.over(f.Typed)
	tried := f.form.Tried()
	f.Now = standing{
		Load: tried.Load, edition: tried.Edition, settlement: tried.Settlement, problems: tried.Problems,
		missing: tried.Missing, remarks: session.Remarks{}, readings: map[string]string{},
	}
	f.Lines = f.makeLines()
	for _, field := range slices.Sorted(maps.Keys(tried.Remarks)) {
		r := tried.Remarks[field]
		f.Now.remark(f.besideWhich(field), stateOf[r.Kind], saidOf(r))
	}
	for _, l := range f.Lines {
		text, typed := f.Typed[l.ID]
		if typed && l.reading != nil && f.form.Refused()[l.ID] == nil {
			f.Now.readings[l.ID] = l.reading(text, f.Now.Load)
		}
	}
}

var stateOf = map[entry.RemarkKind]model.State{entry.Warn: model.Warn, entry.Stop: model.Stop}

// saidOf is a remark in the language of the desk.
func saidOf(r entry.Remark) string {
	if r.Err != nil {
		return session.Sentence(r.Err)
	}
	return session.Say(r.Text)
}

// over is a form of texts over the load as the book has it.
func (f *LoadForm) over(typed map[string]string) *entry.Form {
	scale, _ := f.session.Scale()
	form := entry.New(session.House(f.session), entry.Start{
		Book: f.Book, Direction: f.direction(), Origin: entry.Origin{Moisture: typedAtDesk, Price: typedAtDesk},
		Scale: scale.ID, Drafts: f.draftsAsked(), Factors: slices.Collect(maps.Keys(f.Extra)), DriverOn: f.driverOn, Reason: f.reasonFor,
	})
	for _, id := range slices.Sorted(maps.Keys(typed)) {
		form.Set(id, typedAs(id, typed[id]))
	}
	return form
}

// wholeLoad is where a remark goes that belongs to no field of the form.
const wholeLoad = entry.WholeLoad

// besideWhich is the field of the form that a remark is said beside.
func (f *LoadForm) besideWhich(field string) string {
	if _, known := f.Line(field); known {
		return field
	}
	return wholeLoad
}
