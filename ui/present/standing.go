package present

import (
	"context"
	"maps"
	"slices"

	"tenthpoint/internal/desk"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/house"
	"tenthpoint/internal/load"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/model"
)

// standing is a load as it would stand with everything typed taken in.
type standing struct {
	load       *load.Load
	edition    *rates.Edition
	settlement *settle.Settlement // nil while it cannot be settled
	problems   settle.Problems

	readings map[string]string // how each typed text was understood
	remarks  remarks
	missing  map[string]bool
}

// remarks are what is said beside each field.
type remarks map[string]model.Remark

// say says something beside a field; the first remark stays, unless the later one
// is graver.
func (r remarks) say(field string, state model.State, text string) {
	if old, taken := r[field]; taken && (old.State == model.Stop || state != model.Stop) {
		return
	}
	r[field] = model.Remark{State: state, Text: text}
}

func (s *standing) remark(field string, state model.State, text string) {
	s.remarks.say(field, state, text)
}

// work reads all that is typed, settles the load as it would stand, and says
// beside each field what is wrong.
func (f *LoadForm) work() {
	f.form = f.over(f.typed)
	tried := f.form.Tried()
	f.now = standing{
		load: tried.Load, edition: tried.Edition, settlement: tried.Settlement, problems: tried.Problems,
		missing: tried.Missing, remarks: remarks{}, readings: map[string]string{},
	}
	f.lines = f.makeLines()
	for _, field := range slices.Sorted(maps.Keys(tried.Remarks)) {
		r := tried.Remarks[field]
		f.now.remark(f.besideWhich(field), stateOf[r.Kind], saidOf(r))
	}
	for _, l := range f.lines {
		text, typed := f.typed[l.id]
		if typed && l.reading != nil && f.form.Refused()[l.id] == nil {
			f.now.readings[l.id] = l.reading(text, f.now.load)
		}
	}
}

var stateOf = map[entry.RemarkKind]model.State{entry.Warn: model.Warn, entry.Stop: model.Stop}

// saidOf is a remark in the language of the desk.
func saidOf(r entry.Remark) string {
	if r.Err != nil {
		return sentence(r.Err)
	}
	return translate(r.Text)
}

// over is a form of texts over the load as the book has it.
func (f *LoadForm) over(typed map[string]string) *entry.Form {
	scale, _ := f.frame.Scale()
	form := entry.New(f.frame.house(), entry.Start{
		Book: f.book, Direction: f.direction(), Origin: entry.Origin{Moisture: typedAtDesk, Price: typedAtDesk},
		Scale: scale.ID, Drafts: f.draftsAsked(), Factors: slices.Collect(maps.Keys(f.extra)), DriverOn: f.driverOn, Reason: f.reasonFor,
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
	if _, known := f.line(field); known {
		return field
	}
	return wholeLoad
}

// house is the elevator as forms of loads see it: the desk, with the lists that
// the window has read already.
func (f *Frame) house() entry.House { return atDesk{f.Desk.Entering(context.Background()), f} }

type atDesk struct {
	*desk.Entering
	frame *Frame
}

func (h atDesk) Growers() ([]house.Grower, error)          { return h.frame.known().growers, nil }
func (h atDesk) Trucks() ([]house.Truck, error)            { return h.frame.known().trucks, nil }
func (h atDesk) Bins() ([]house.Bin, error)                { return h.frame.known().bins, nil }
func (h atDesk) Contracts() ([]house.ContractTerms, error) { return h.frame.known().contracts, nil }
