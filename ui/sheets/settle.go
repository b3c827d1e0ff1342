package sheets

import (
	"context"
	"maps"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/entry/settling"
	"tenthpoint/internal/entry/typed"
	"tenthpoint/internal/levy"
	"tenthpoint/internal/office"
	"tenthpoint/internal/office/money"
	"tenthpoint/internal/paysheet"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/tariff"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Settle is the settlement sheet being made: the grower, the tickets chosen, what is typed beside
// them, and the sheet worked out of it by the act that issues it.
type Settle struct {
	Tickets
	texts  map[string]string // by field, as typed
	failed error             // why the book or the rules could not be read

	house   *office.Entering
	tariffs *tariff.Set
	levies  *levy.Set
	around  money.Around // the book around the chosen tickets

	Now Draft
}

// managerField asks in whose name the sheet is issued, ticketsText holds the chosen tickets in a draft.
const (
	managerField = "manager"
	ticketsText  = "tickets"
)

// draftAt is the place of the saved draft.
var draftAt = session.DraftAt{Place: "settle", ID: session.Current}

// NewSettle makes the sheet as it was typed before the program stopped.
func NewSettle(f *session.Session) *Settle {
	s := &Settle{Tickets: Tickets{session: f}, texts: map[string]string{}}
	before := f.Drafts().TypedBefore(draftAt)
	for id, text := range before {
		s.texts[id] = text
	}
	s.parts = readChosen(s.texts[ticketsText])
	delete(s.texts, ticketsText)
	f.OnOpen("settle", s.begin)
	return s
}

// againText begins what is opened to settle the tickets of a void sheet anew.
const againText = "sheet "

// begin starts a sheet of a grower, by code, with nothing chosen; or one in place of a void sheet,
// with its tickets and its price.
func (s *Settle) begin(what string) {
	if number, again := strings.CutPrefix(what, againText); again {
		s.beginAgain(number)
	} else if what != s.texts[settling.Grower] {
		s.texts, s.parts = map[string]string{settling.Grower: what}, map[int64]string{}
	}
	s.keep()
}

func (s *Settle) beginAgain(number string) {
	all, err := money.Sheets(context.Background(), s.session.Desk)
	if err != nil {
		s.session.Fail(err)
		return
	}
	old, there := session.Find(all, func(one paysheet.Sheet) bool { return one.ID() == number })
	if !there {
		return
	}
	s.texts, s.parts = map[string]string{settling.Grower: old.Grower, settling.Corrects: number}, map[int64]string{}
	for _, line := range old.Lines {
		s.parts[line.Ticket] = ""
		if !line.Quantity.Equal(line.Whole.Sub(line.From)) {
			s.parts[line.Ticket] = line.Quantity.Figure()
		}
	}
}

// Reload reads the rules and the tickets that are left again.
func (s *Settle) Reload() {
	s.house = office.NewEntering(context.Background(), s.session.Desk)
	s.tariffs, s.failed = ratefiles.ReadTariffs(s.session.RatesFolder)
	if s.failed == nil {
		s.levies, s.failed = ratefiles.ReadLevies(s.session.RatesFolder)
	}
	s.readLeft()
	s.work()
}

// readLeft reads the tickets of the grower that are not settled, and leaves out of the chosen ones
// those that are gone.
func (s *Settle) readLeft() {
	s.left = nil
	if grower := s.texts[settling.Grower]; grower != "" && s.failed == nil {
		s.left, s.failed = money.UnsettledOf(context.Background(), s.session.Desk, grower)
	}
	maps.DeleteFunc(s.parts, func(ticket int64, _ string) bool { _, there := s.ticket(ticket); return !there })
	if _, there := s.ticket(s.at); !there {
		s.at = 0
		if len(s.left) > 0 {
			s.at = s.left[0].Ticket
		}
	}
	s.readAround()
}

// readAround reads the tickets that are chosen, and the sheets and contracts of now.
func (s *Settle) readAround() {
	if s.failed != nil || len(s.parts) == 0 {
		return
	}
	s.around, s.failed = money.AroundNow(context.Background(), s.session.Desk, s.chosen())
}

// Toggle chooses a ticket whole, or leaves it out again.
func (s *Settle) Toggle() {
	s.toggle()
	s.changed()
}

// ToggleAll chooses every ticket of the grain the keyboard is on, or leaves all out where they are
// chosen.
func (s *Settle) ToggleAll() {
	s.toggleAll()
	s.changed()
}

// changed keeps other tickets chosen and works the sheet out anew.
func (s *Settle) changed() {
	s.keep()
	s.readAround()
	s.work()
}

// keep has what is typed and chosen outlive a stop.
func (s *Settle) keep() {
	texts := maps.Clone(s.texts)
	delete(texts, managerField)
	if len(s.parts) > 0 {
		texts[ticketsText] = chosenText(s.parts)
	}
	s.session.Drafts().Save(draftAt, texts)
}

// chosenText and readChosen write and read chosen tickets, like "12; 14=500".
func chosenText(parts map[int64]string) string {
	var out []string
	for _, ticket := range slices.Sorted(maps.Keys(parts)) {
		one := strconv.FormatInt(ticket, 10)
		if parts[ticket] != "" {
			one += "=" + parts[ticket]
		}
		out = append(out, one)
	}
	return strings.Join(out, "; ")
}

func readChosen(text string) map[int64]string {
	parts := map[int64]string{}
	for _, one := range typed.List(text) {
		number, part, _ := strings.Cut(one, "=")
		if ticket, ok := session.Number(number); ok {
			parts[ticket] = part
		}
	}
	return parts
}

// AskPart asks how much of the ticket the keyboard is on is settled.
func (s *Settle) AskPart() {
	u, there := s.ticket(s.at)
	if !there {
		return
	}
	f, unit := s.session, u.Left.Unit()
	f.Put(model.Ask{
		Title: f.Say("How much of ticket %d is settled?", u.Ticket),
		Text:  f.Say("%s is open. What is left stays open.", f.Signs().Write(u.Left.String())),
		Fields: []model.AskField{{ID: "part", Label: f.Say("Quantity"), Unit: unit.String(), Value: s.parts[u.Ticket], Chars: 12, Figures: true,
			Hint: f.Say("empty: all that is open")}},
		Yes: f.Say("Choose"),
		Check: func(values map[string]string) map[string]string {
			if text := strings.TrimSpace(values["part"]); text != "" {
				if _, err := settling.ReadPart(text, unit); err != nil {
					return map[string]string{"part": f.Sentence(err)}
				}
			}
			return nil
		},
		Then: func(values map[string]string) {
			s.parts[u.Ticket] = strings.TrimSpace(values["part"])
			s.changed()
			f.Window.Redraw()
		},
	})
}
