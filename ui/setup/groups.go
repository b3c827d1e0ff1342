package setup

import (
	"strings"
	"tenthpoint/internal/load"
	"tenthpoint/internal/scaleticket"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// groups are the fields of the sheet by what they are about, each with why it is asked.
type groups struct{ *SetUp }

// person asks who sets a new book up.
func (s groups) person() []model.Field {
	if len(s.session.Desk.People()) > 0 {
		return nil
	}
	return []model.Field{{ID: "person", Label: s.session.Say("Your full name"), Chars: 24, Reading: s.session.Say("you will be the manager; it prints where tickets are signed")}}
}

// ticket is the head of every ticket.
func (s groups) ticket() []model.Field {
	say := s.session.Say
	return []model.Field{
		{ID: "business", Label: say("Business"), Chars: 30, Reading: say("stands at the head of every ticket")},
		{ID: "street", Label: say("Street"), Chars: 30, Reading: say("under it: where the grain was weighed")},
		{ID: "town", Label: say("Town"), Chars: 30, Reading: say("under it: where the grain was weighed")},
		{ID: "phone", Label: say("Phone"), Chars: 18, Reading: say("whom a grower calls about a ticket")},
		{ID: "licence", Label: say("Licence"), Chars: 18, Reading: say("if you have one")},
	}
}

// scale are the fields of the scale's plate and its connection.
func (s groups) scale(unit string) []model.Field {
	say := s.session.Say
	return []model.Field{
		{ID: "unit", Label: say("Weights in"), Kind: model.FindField, Chars: 18, Options: unitOptions(s.session.Language), Reading: say("what the scale shows")},
		{ID: "scale", Label: say("Scale"), Chars: 8, Reading: say("its name or number on the ticket")},
		{ID: "division", Label: say("Division"), Unit: unit, Kind: model.FigureField, Chars: 8, Reading: say("d on its plate: a weight between two is refused")},
		{ID: "capacity", Label: say("Capacity"), Unit: unit, Kind: model.FigureField, Chars: 8, Reading: say("Max on its plate: more than 105 % is refused")},
		{ID: "link", Label: say("Link"), Chars: 30, Reading: s.linkHint()},
	}
}

// house are the fields of the house's rules.
func (s groups) house() []model.Field {
	say := s.session.Say
	return []model.Field{
		{ID: "rules", Label: say("Rules"), Kind: model.FindField, Part: model.ClosePart, Chars: 18, Options: ruleOptions(s.session.Language), Reading: say("whose rules of grading and disputes hold here")},
		{ID: "place", Label: say("Place"), Kind: model.FindField, Part: model.ClosePart, Chars: 18, Options: s.placeOptions(), Reading: say("whose law on tickets was read; empty: none")},
		{ID: "copies", Label: say("Copies for"), Part: model.ClosePart, Chars: 24, Reading: say("driver, office, landlord; each copy names whose it is")},
		{ID: "language", Label: say("Language"), Kind: model.FindField, Part: model.ClosePart, Chars: 18, Options: Languages(), Reading: s.languageHint()},
		{ID: "dates", Label: say("Dates"), Kind: model.FindField, Part: model.ClosePart, Chars: 18, Options: s.dateOptions(), Reading: say("how days are written")},
		{ID: "wait", Label: say("Wait limit"), Unit: say("min"), Kind: model.FigureField, Part: model.ClosePart, Chars: 5, Reading: say("a truck that waits longer is marked amber")},
		{ID: "letters", Label: say("Letters"), Part: model.ClosePart, Chars: 8, Reading: say("before ticket numbers, of a company with several sites")},
		{ID: "crop-years", Label: say("Crop years"), Part: model.ClosePart, Chars: 24, Reading: say("when they begin: corn=09-01; wheat-hrw=06-01")},
	}
}

// previewOf is the head of a ticket with what is typed so far.
func previewOf(s *SetUp) scaleticket.Document {
	t := session.TicketUnder(s.session, nil, &load.Load{}, nil, scaleticket.Draft, nil)
	t.House = s.profile()
	if who := strings.TrimSpace(s.values["person"]); who != "" {
		t.House.Weigher = who
	}
	return scaleticket.Compose(t)
}
