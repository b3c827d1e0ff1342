package setup

import (
	"context"
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/message"
	"tenthpoint/internal/quantity"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// SetUp is the form of the elevator's profile: its name and address as printed on every ticket, its
// scale, and its commodities with their rates. In a new book it comes first and also asks who sets
// it up.
type SetUp struct {
	session *session.Session
	values  map[string]string
	inBook  map[string]string // the values as the book has them
	grains  []grainChoice
}

// NewSetUp makes the sheet with the book's values, and over them what was typed before the program
// stopped.
func NewSetUp(f *session.Session) *SetUp {
	s := &SetUp{session: f}
	s.Reset()
	s.takeBack()
	return s
}

// Reset restores the book's values.
func (s *SetUp) Reset() {
	p := s.session.Desk.Profile()
	s.values = map[string]string{
		"business": p.Business, "street": p.Street, "town": p.Town, "phone": p.Phone, "licence": p.Licence,
		"rules": rulesOf(p), "place": p.Place, "unit": p.WeightUnit().String(),
		"wait":    strconv.Itoa(p.WaitLimit()),
		"letters": p.Letters, "crop-years": elevator.CropStartsText(p.CropStarts),
		"copies":   strings.Join(p.CopiesFor, ", "),
		"language": session.OrElse(p.Language, "en"), "dates": session.OrElse(p.Dates, session.IsoDates),
		"scale": "1", "division": "20", "capacity": "120,000",
	}
	if len(p.Scales) > 0 {
		scale := p.Scales[0]
		s.values["scale"], s.values["division"], s.values["capacity"] = scale.ID, scale.Division.Figure(), scale.Capacity.Figure()
		s.values["link"] = scale.Link
	}
	s.grains = nil
	for _, e := range s.session.Desk.Rates().All() {
		s.addSchedule(e)
	}
	for _, g := range p.Grains {
		s.values[grainField(g.Commodity)] = g.Schedule
	}
	s.inBook = maps.Clone(s.values)
}

// Renew reloads values from the book, and keeps what was typed. A scale may have been changed
// elsewhere since; an untouched field must not undo that.
func (s *SetUp) Renew() {
	typed := session.TypedOver(s.inBook, s.values)
	s.Reset()
	maps.Copy(s.values, typed)
}

// IsFirst reports whether the elevator is being set up for the first time.
func (s *SetUp) IsFirst() bool { return s.session.IsNew() }

// Welcome is the sentence over the sheet.
func (s *SetUp) Welcome() string {
	if s.IsFirst() {
		return s.session.Say("A new book. Type what every ticket prints and press Enter to go on; Ctrl+S begins the work.")
	}
	return s.session.Say("What every ticket prints, the scale, and what is taken here. Ctrl+S saves it.")
}

// Fields are the fields in their order.
func (s *SetUp) Fields() []model.Field {
	unit := s.values["unit"]
	fields := slices.Concat(groups{s}.person(), groups{s}.ticket(), groups{s}.scale(unit))
	for _, g := range s.grains {
		fields = append(fields, s.grainRow(g))
	}
	fields = append(fields, groups{s}.house()...)
	for i := range fields {
		s.fill(&fields[i])
	}
	return fields
}

// placeOptions are the places whose law on tickets was read.
func (s *SetUp) placeOptions() []model.Option {
	out := []model.Option{}
	for _, place := range s.session.Desk.Laws().Places() {
		out = append(out, model.Option{Code: place})
	}
	return out
}

// linkHint explains the link; empty is valid too.
func (s *SetUp) linkHint() string {
	if strings.TrimSpace(s.values["link"]) == "" {
		return s.session.Say("empty: weights are typed; else tcp://host:port or serial:///dev/name")
	}
	return s.session.Say("the desk reads the scale")
}

// unlicensed is the choice of an elevator in Canada whose rates the Canada Grain
// Act does not bind.
const unlicensed = "canada-unlicensed"

// rulesOf returns the choice of rules of a profile.
func rulesOf(p elevator.Profile) string {
	if p.Unlicensed && p.Rules == "canada" {
		return unlicensed
	}
	return session.OrElse(p.Rules, "us")
}

func ruleOptions(in session.Language) []model.Option {
	return []model.Option{
		{Code: "us", Name: in.Say("United States")},
		{Code: "canada", Name: in.Say("Canada")},
		{Code: unlicensed, Name: in.Say("Canada, not licensed under the Grain Act")},
	}
}

func unitOptions(in session.Language) []model.Option {
	return []model.Option{
		{Code: "lb", Name: in.Say("pounds")},
		{Code: "kg", Name: in.Say("kilograms")},
	}
}

// fill sets the value and message of a field.
func (s *SetUp) fill(f *model.Field) {
	f.Value = s.values[f.ID]
	text, err := s.check(f.ID)
	f.Missing = text
	if err == nil && f.Kind == model.FindField {
		err = offList(s.session.Language, *f)
	}
	if err != nil {
		f.State, f.Note = model.Stop, s.session.Sentence(err)
	}
}

// offList reports a text that is not on the field's list.
func offList(in session.Language, f model.Field) error {
	if _, listed := session.Find(f.Options, func(o model.Option) bool { return o.Code == f.Value }); listed || f.Value == "" {
		return nil
	}
	return fmt.Errorf("%s", in.Say("%s: %q is none of those offered. The down arrow lists them", f.Label, f.Value))
}

// needed are the fields that no ticket can do without.
var needed = map[string]bool{"business": true, "street": true, "town": true, "phone": true, "scale": true, "division": true, "capacity": true, "person": true}

// check reports whether a required field is empty, and the error of its text.
func (s *SetUp) check(id string) (missing bool, err error) {
	text := strings.TrimSpace(s.values[id])
	if text == "" {
		return needed[id], nil
	}
	switch id {
	case "division", "capacity":
		_, err = s.weight(id)
	case "wait":
		var minutes int
		if minutes, err = s.waitMinutes(); err == nil {
			err = elevator.Profile{WaitMinutes: minutes}.CheckWait()
		}
	case "copies":
		err = elevator.Profile{CopiesFor: session.Copies(text)}.CheckCopies()
	case "letters":
		err = elevator.CheckLetters(text)
	case "crop-years":
		_, err = entry.ParseCropStarts(text)
	case "link":
		err = elevator.Scale{Link: text}.CheckLink()
	}
	if g, ok := session.Find(s.grains, func(g grainChoice) bool { return g.id == id }); ok && !g.has(text) {
		err = fmt.Errorf("%s", s.session.Say("There are no rates called %q for %s. Choose one of the list, or leave it empty", text, s.session.GrainName(g.commodity)))
	}
	return false, err
}

func (s *SetUp) weight(id string) (quantity.Amount, error) {
	unit := s.unit()
	name := map[string]string{"division": s.session.Say("Division"), "capacity": s.session.Say("Capacity")}[id]
	return s.session.ParseFigure(entry.Plate(name, unit), s.values[id])
}

// waitMinutes is the limit of waiting; empty is the usual one.
func (s *SetUp) waitMinutes() (int, error) {
	text := strings.TrimSpace(s.values["wait"])
	if text == "" {
		return 0, nil
	}
	minutes, err := strconv.Atoi(text)
	if err != nil {
		return 0, message.Invalid.Errorf("Wait limit: %q is not a whole number of minutes.", text)
	}
	return minutes, nil
}

func (s *SetUp) unit() quantity.Unit {
	if s.values["unit"] == "kg" {
		return quantity.Kg
	}
	return quantity.Lb
}

// Type takes the text of a field.
func (s *SetUp) Type(id, text string) {
	s.values[id] = text
	s.session.Drafts().Save(SetUpDraft, session.TypedOver(s.inBook, s.values))
}

// Enter in a field goes to the one that follows.
func (s *SetUp) Enter(string) (next string) { return "" }

// Restore does nothing: Escape keeps what was typed.
func (s *SetUp) Restore(string) bool { return false }

// FirstMissing returns the first field that is missing or invalid; empty when there is none.
func (s *SetUp) FirstMissing() string {
	for _, f := range s.Fields() {
		if f.Missing || f.State == model.Stop {
			return f.ID
		}
	}
	return ""
}

// CanDemo reports whether the invented elevator can be opened from here.
func (s *SetUp) CanDemo() bool { return s.IsFirst() && s.session.Demo != nil }

// OpenDemo opens the invented elevator instead.
func (s *SetUp) OpenDemo() {
	path := ""
	s.session.Run(model.Job{
		Topic: "demo", Title: s.session.Say("Inventing an elevator"),
		Do: func(ctx context.Context, report func(done, total int)) (err error) {
			path, err = s.session.Demo(ctx, report)
			return err
		},
		Done: func(err error) {
			if err == nil {
				err = s.session.OpenDemo(path)
			}
			if err != nil {
				s.session.Fail(err)
			}
		},
	})
}
