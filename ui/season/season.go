package season

import (
	"context"
	"slices"

	"tenthpoint/internal/entry"
	"tenthpoint/internal/office/seasons"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/season"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// Season is the pictures of some days, and the day among them that is held against the others.
type Season struct {
	session *session.Session
	reader  *seasons.Reader

	from, to, day quantity.Date // zero: since the season began, until today, the last day with a truck
	grain         string        // of the moistures; empty for the grain with the most loads

	shown    *season.Composed // nil until it has been read
	pictures []model.Picture
	read     int64 // the last fact of the book when they were
	reading  bool
}

// NewSeason makes the pictures of the season so far. [Season.Refresh] reads them.
func NewSeason(f *session.Session) *Season {
	return &Season{session: f, reader: seasons.NewReader(f.Desk)}
}

// Refresh reads the season again, if anything was written since.
func (s *Season) Refresh() {
	last, _, err := s.session.Desk.Reader().Head(context.Background())
	switch {
	case err != nil:
		s.session.Fail(err)
	case s.shown != nil && last.Seq == s.read || s.reading:
	default:
		s.readAgain(last.Seq)
	}
}

// readAgain reads the season away from the window.
func (s *Season) readAgain(upTo int64) {
	from, to := s.Span()
	day := s.day
	var shown *season.Composed
	house := s.session.Desk.Profile()
	s.reading = true
	s.session.Run(model.Job{
		Topic: "season", Title: s.session.Say("Adding the season up"),
		Do: func(ctx context.Context, _ func(int, int)) error {
			facts, err := s.reader.Read(ctx, from, to, day)
			if err == nil {
				shown = facts.Compose(house, to)
			}
			return err
		},
		Done: func(err error) {
			s.reading = false
			if err != nil {
				s.session.Fail(err)
				return
			}
			s.shown, s.read = shown, upTo
			s.draw()
			s.session.Window.Redraw()
		},
	})
}

// draw makes the pictures anew.
func (s *Season) draw() {
	s.pictures = nil
	for _, p := range s.shown.Pictures(s.Grain()) {
		s.pictures = append(s.pictures, session.PictureOf(s.session.Language, p))
	}
}

// Pictures are the pictures in their order; none while they are read for the first time.
func (s *Season) Pictures() []model.Picture { return s.pictures }

// Span is the first and the last day.
func (s *Season) Span() (from, to quantity.Date) {
	from, to = s.from, s.to
	if to.IsZero() {
		to = s.session.Desk.Today()
	}
	if from.IsZero() {
		from = season.Began(to)
	}
	return from, to
}

// Grain is the grain whose moistures are shown.
func (s *Season) Grain() string {
	if s.shown == nil {
		return s.grain
	}
	grains := s.shown.Grains
	if slices.Contains(grains, s.grain) || len(grains) == 0 {
		return s.grain
	}
	return grains[0]
}

// Headline says which days these are, and which day is held against the others.
func (s *Season) Headline() string {
	from, to := s.Span()
	if s.shown == nil {
		return s.session.Say("%s to %s", s.session.Date(from), s.session.Date(to))
	}
	return s.session.Say("%s to %s, and %s against the other days", s.session.Date(from), s.session.Date(to), s.session.Date(s.shown.Day))
}

// Open shows the tickets a column is made of.
func (s *Season) Open(picture, column int) {
	if picture >= len(s.pictures) || column >= len(s.pictures[picture].Stacks) {
		return
	}
	line := s.pictures[picture].Stacks[column].Opens
	if line == "" {
		s.session.Notify(model.Plain, s.session.Say("No ticket is behind this column."))
		return
	}
	s.session.Open("tickets", line)
}

// HasRead reports whether there are pictures.
func (s *Season) HasRead() bool { return s.shown != nil }

// Step holds another day against the others, so many days on or back.
func (s *Season) Step(days int) {
	from, to := s.Span()
	day := s.shown.Day.AddDays(days)
	if !day.Between(from, to) {
		return
	}
	s.day = day
	s.again()
}

// again reads the season though nothing was written.
func (s *Season) again() {
	s.read = -1
	s.Refresh()
}

// AskGrain asks for the grain whose moistures are shown.
func (s *Season) AskGrain() {
	var options []model.Option
	for _, id := range s.shown.Grains {
		options = append(options, model.Option{Code: id, Name: s.session.GrainName(id)})
	}
	s.session.Put(model.Ask{
		Title: s.session.Say("Moistures of which grain?"), Yes: s.session.Say("Show it"),
		Fields: []model.AskField{{ID: "grain", Label: s.session.Say("Grain"), Options: options, Value: s.Grain(), Chars: 24, Required: true}},
		Then: func(values map[string]string) {
			s.grain = values["grain"]
			s.draw()
			s.session.Window.Redraw()
		},
	})
}

// AskDays asks for other days.
func (s *Season) AskDays() {
	from, to := s.Span()
	s.session.Put(model.Ask{
		Title: s.session.Say("Which days?"), Yes: s.session.Say("Show them"),
		Text: s.session.Say("Days are year-month-day. Empty fields are the season so far, and the last day on which anything came in."),
		Fields: []model.AskField{
			{ID: "from", Label: s.session.Say("First day"), Value: from.String(), Chars: 12},
			{ID: "to", Label: s.session.Say("Last day"), Value: to.String(), Chars: 12},
			{ID: "day", Label: s.session.Say("Against the others"), Value: s.dayText(), Chars: 12},
		},
		Then: s.takeDays,
	})
}

func (s *Season) dayText() string {
	if s.day.IsZero() {
		return ""
	}
	return s.day.String()
}

func (s *Season) takeDays(values map[string]string) {
	var read [3]quantity.Date
	for i, id := range []string{"from", "to", "day"} {
		var err error
		if read[i], err = entry.ParseDay("Day", values[id], s.session.Desk.Today()); err != nil {
			s.session.Fail(err)
			return
		}
	}
	if from, to := read[0], read[1]; !from.IsZero() && !to.IsZero() && from.After(to) {
		s.session.Notify(model.Stop, s.session.Say("The first day is after the last one."))
		return
	}
	s.from, s.to, s.day = read[0], read[1], read[2]
	s.again()
}

// Print prints the season.
func (s *Season) Print() {
	_, to := s.Span()
	session.PrintDocument(s.session, s.shown.Paper, "season-"+to.String(), s.session.Say("the season"), false)
}

// Export writes the figures as a workbook and as comma-separated lines.
func (s *Season) Export() {
	_, to := s.Span()
	session.ExportDocument(s.session, s.shown.Paper, "season-"+to.String(), s.session.Say("the season"))
}
