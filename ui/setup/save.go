package setup

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/entry"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Save writes the sheet into the book. In a new book it also makes the person who filled it in the
// first manager, and turns to the yard.
func (s *SetUp) Save() {
	s.Renew()
	first, before, spoken := s.IsFirst(), s.link(), s.session.Desk.Profile().Language
	if err := s.save(); err != nil {
		s.session.Fail(err)
		return
	}
	s.isWritten()
	s.session.Changed()
	if err := setLanguage(s.session, spoken); err != nil {
		s.session.Fail(err)
		return
	}
	if first {
		s.session.Notify(model.OK, s.session.Say("the elevator is set up. Type in the first truck."))
		s.session.Go("yard")
		s.relink(before)
		return
	}
	s.session.Notify(model.OK, s.session.Say("the set-up is written down."))
	s.relink(before)
}

// relink opens the link to the scale again when its link has become another.
func (s *SetUp) relink(before string) {
	if s.session.Station == nil || s.link() == before {
		return
	}
	if err := s.session.Station.Relink(); err != nil {
		s.session.Notify(model.Warn, session.Join(" ", s.session.Say("the set-up is written down."), s.session.Sentence(err)))
	}
}

// link is the link of the scale as the book has it.
func (s *SetUp) link() string {
	if scales := s.session.Desk.Profile().Scales; len(scales) > 0 {
		return scales[0].Link
	}
	return ""
}

func (s *SetUp) save() error {
	if err := s.whole(); err != nil {
		return err
	}
	ctx := context.Background()
	d := s.session.Desk
	newcomer := len(d.People()) == 0
	if newcomer {
		if err := d.SignIn(s.values["person"]); err != nil {
			return err
		}
	}
	if err := scalehouse.SetProfile(ctx, d, s.profile()); err != nil {
		return err
	}
	if !newcomer {
		return nil
	}
	name := strings.TrimSpace(s.values["person"])
	if err := scalehouse.SetPerson(ctx, d, elevator.Person{Name: name, Role: elevator.Manager}); err != nil {
		return err
	}
	return d.SignIn(name)
}

// whole returns the first missing or invalid field as an error.
func (s *SetUp) whole() error {
	for _, f := range s.Fields() {
		switch {
		case f.Missing:
			return fmt.Errorf("%s", s.session.Say("%s is empty; every ticket prints it.", f.Label))
		case f.State == model.Stop:
			return errors.New(f.Note)
		}
	}
	if len(s.profile().Grains) == 0 {
		return fmt.Errorf("%s", s.session.Say("No commodity has a schedule of rates. Choose one for each that you take."))
	}
	return nil
}

// profile returns the profile with the sheet's values; others are unchanged.
func (s *SetUp) profile() elevator.Profile {
	p := s.session.Desk.Profile()
	text := func(id string) string { return strings.TrimSpace(s.values[id]) }
	p.Business, p.Street, p.Town, p.Phone, p.Licence = text("business"), text("street"), text("town"), text("phone"), text("licence")
	p.CopiesFor = session.Copies(text("copies"))
	p.Place, p.Letters = text("place"), text("letters")
	p.CropStarts, _ = entry.ParseCropStarts(text("crop-years"))
	if minutes, err := s.waitMinutes(); err == nil && minutes != p.WaitLimit() {
		p.WaitMinutes = minutes
	}
	p.Rules, p.Language, p.Dates = text("rules"), text("language"), text("dates")
	if p.Unlicensed = p.Rules == unlicensed; p.Unlicensed {
		p.Rules = "canada"
	}
	division, _ := s.weight("division")
	capacity, _ := s.weight("capacity")
	scale := elevator.Scale{}
	if len(p.Scales) > 0 {
		scale = p.Scales[0]
	}
	scale.ID, scale.Division, scale.Capacity, scale.Link = text("scale"), division, capacity, text("link")
	p.Scales = append([]elevator.Scale{scale}, p.Scales[min(1, len(p.Scales)):]...)
	p.Grains = nil
	for _, g := range s.grains {
		if schedule := text(g.id); schedule != "" {
			p.Grains = append(p.Grains, elevator.GrainRule{Commodity: g.commodity, Schedule: schedule})
		}
	}
	if p.RetainDays == 0 {
		p.RetainDays = elevator.UsualRetainDays(p.Rules)
	}
	return p
}
