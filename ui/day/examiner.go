package day

import (
	"context"

	"tenthpoint/internal/office/examiner"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/report"
	"tenthpoint/ui/model"
)

// examination writes the folder of papers that an examiner asks for: every register, the sheet of every
// day, the rates, and the hash of each file.
type examination struct{ *DaySheet }

// ask asks for the period, and writes the folder.
func (s examination) ask() {
	first := s.day.AddDays(1 - s.day.Day())
	s.session.Put(model.Ask{
		Title: s.session.Say("Papers for an examiner"),
		Text:  s.session.Say("Every register, the sheet of every day, the rates in force and the state of the journal, with an index and the hash of each file."),
		Fields: []model.AskField{
			{ID: "from", Label: s.session.Say("From"), Value: first.String(), Chars: 12, Required: true, Hint: s.session.Say("year-month-day")},
			{ID: "to", Label: s.session.Say("Through"), Value: s.day.String(), Chars: 12, Required: true, Hint: s.session.Say("year-month-day")},
		},
		Yes: s.session.Say("Write the folder"),
		Check: func(values map[string]string) map[string]string {
			_, _, wrong := s.period(values)
			return wrong
		},
		Then: func(values map[string]string) {
			from, to, _ := s.period(values)
			s.write(from, to)
		},
	})
}

// period reads the first and the last day, and returns the errors by field.
func (s examination) period(values map[string]string) (from, to quantity.Date, wrong map[string]string) {
	wrong = map[string]string{}
	for id, into := range map[string]*quantity.Date{"from": &from, "to": &to} {
		day, err := quantity.ParseDate(values[id])
		if err != nil {
			wrong[id] = s.session.Sentence(err)
		}
		*into = day
	}
	if len(wrong) == 0 && from.After(to) {
		wrong["to"] = s.session.Say("The last day comes before the first.")
	}
	return from, to, wrong
}

func (s examination) write(from, to quantity.Date) {
	if s.session.Files == nil {
		s.session.Notify(model.Warn, s.session.Say("no folder is set up for files. Choose one under Equipment."))
		return
	}
	where, count := "", 0
	page := report.PageFor(s.session.Desk.Profile().Rules)
	s.session.Run(model.Job{
		Topic: "examiner", Title: s.session.Say("Writing the papers for an examiner"),
		Do: func(ctx context.Context, _ func(int, int)) error {
			files, err := examiner.Papers(ctx, s.session.Desk, from, to, page, nil)
			if err != nil {
				return err
			}
			count = len(files)
			where, err = s.session.Files.SaveSet(ctx, "examiner-"+from.String()+"-"+to.String(), files)
			return err
		},
		Done: func(err error) {
			if err != nil {
				s.session.Notify(model.Stop, s.session.Say("the papers for an examiner were not written: %s", s.session.Sentence(err)))
				return
			}
			s.session.Notify(model.OK, s.session.Say("%d files for an examiner are written: %s", count, where))
		},
	})
}
