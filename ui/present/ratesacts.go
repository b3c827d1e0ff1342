package present

import (
	"context"
	"slices"
	"strings"

	"tenthpoint/internal/desk"
	"tenthpoint/internal/house"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/slip"
	"tenthpoint/ui/model"
)

// AskSchedule asks under which schedule the grain of the chosen edition is to
// be settled, in a manager's name.
func (r *Rates) AskSchedule() {
	e := r.edition()
	if e == nil {
		return
	}
	id := e.Commodity.ID
	now, _ := r.frame.Desk.Profile().Schedule(id)
	options := []model.Option{}
	for _, name := range slices.Compact(r.frame.Desk.Rates().Schedules(id)) {
		o := model.Option{Code: name, Detail: Say("no rates in force today")}
		if in, err := r.frame.Desk.Rates().On(name, id, r.frame.Desk.Today()); err == nil {
			o.Name, o.Detail = Say(in.Title), statusWord(in.Status)
		}
		options = append(options, o)
	}
	r.frame.Put(model.Ask{
		Title: Say("Settle %s under which schedule?", grainName(id)),
		Text:  Say("It counts for loads opened from now on. A single load can be put under another on its own form."),
		Fields: []model.AskField{
			{ID: "schedule", Label: Say("Schedule"), Options: options, Value: now, Chars: 24, Required: true},
			{ID: "who", Label: Say("Manager"), Options: r.frame.managers(), Value: r.frame.managerHere(), Chars: 24, Required: true},
		},
		Yes:  Say("Settle under it"),
		Then: func(values map[string]string) { r.settleUnder(id, values["schedule"], values["who"]) },
	})
}

func (r *Rates) settleUnder(commodity, schedule, who string) {
	p := r.frame.Desk.Profile()
	p.Grains = slices.Clone(p.Grains)
	i := slices.IndexFunc(p.Grains, func(g house.GrainRule) bool { return g.Commodity == commodity })
	if i < 0 {
		p.Grains = append(p.Grains, house.GrainRule{Commodity: commodity})
		i = len(p.Grains) - 1
	}
	p.Grains[i].Schedule = schedule
	err := r.frame.as(who, func() error { return r.frame.Desk.SetProfile(context.Background(), p) })
	if err != nil {
		r.frame.Fail(err)
		return
	}
	r.frame.Changed()
	r.frame.Say(model.OK, Say("%s is settled under schedule %s.", grainName(commodity), schedule))
}

// ReadAgain reads the elevator's own files again. While anything in them is
// wrong, the rates in force stay as they are.
func (r *Rates) ReadAgain() {
	var set *rates.Set
	r.frame.Run(model.Job{
		Topic: "rates", Title: Say("Reading the rates"),
		Do: func(context.Context, func(int, int)) (err error) {
			set, err = desk.ReadRates(r.frame.RatesFolder)
			return err
		},
		Done: func(err error) { r.readAgain(set, err) },
	})
}

func (r *Rates) readAgain(set *rates.Set, err error) {
	SetRatesWrong(r.frame, err)
	if err != nil {
		r.shows = RatesProblems
		r.frame.Say(model.Stop, Say("the files have %d mistakes. The rates in force stay as they were.", len(r.frame.RatesWrong)))
		r.frame.window.Redraw()
		return
	}
	r.frame.Desk.UseRates(set)
	r.Reload()
	r.frame.Changed()
	own := 0
	for _, e := range set.All() {
		if e.Status != rates.Example {
			own++
		}
	}
	r.frame.Say(model.OK, Say("the rates are read: %d editions, %d of them your own.", len(set.All()), own))
	SayRewritten(r.frame)
}

// SetRatesWrong says what is wrong with the elevator's own rates; nil is
// nothing.
func SetRatesWrong(f *Frame, err error) { f.RatesWrong = problemLines(err) }

// problemLines are the mistakes in an error, one to a line.
func problemLines(err error) []string {
	if err == nil {
		return nil
	}
	return strings.FieldsFunc(err.Error(), func(r rune) bool { return r == '\n' })
}

// problems is the sheet of what is wrong with the elevator's own files, or how
// to begin with them.
func (r *Rates) problems() []slip.PaperLine {
	lines := []slip.PaperLine{{Kind: slip.PaperTitle, Left: Say("Your own files")}}
	add := func(kind slip.PaperKind, left string) { lines = append(lines, slip.PaperLine{Kind: kind, Left: left}) }
	folder := r.frame.RatesFolder
	if folder == "" {
		folder = Say("none: this book has no folder of its own")
	}
	lines = append(lines, slip.PaperLine{Kind: slip.PaperPair, Left: Say("Folder"), Note: folder}, slip.PaperLine{Kind: slip.PaperRule})
	if len(r.frame.RatesWrong) > 0 {
		for _, line := range r.frame.RatesWrong {
			add(slip.PaperMark, line)
			add(slip.PaperGap, "")
		}
		add(slip.PaperText, Say("Mend these, save the files, and press Ctrl+I. Until all of them are right nothing of what changed is in force."))
		return lines
	}
	own := 0
	for _, e := range r.frame.Desk.Rates().All() {
		if e.Status == rates.Example {
			continue
		}
		own++
		lines = append(lines, slip.PaperLine{Kind: slip.PaperPair, Left: e.ID, Right: statusWord(e.Status), Note: join(", ", grainName(e.Commodity.ID), periodOf(r.frame, e))})
	}
	if own == 0 {
		add(slip.PaperText, Say("No edition of your own is here, so everything is settled under invented rates. Put your own into the folder as *.toml files and press Ctrl+I."))
		add(slip.PaperGap, "")
		add(slip.PaperText, Say("F1 tells how an edition is written. Ctrl+S writes the text of the chosen example to a file to begin with."))
		return lines
	}
	add(slip.PaperGap, "")
	add(slip.PaperText, Say("There is no mistake in them."))
	return lines
}

// SaveText writes the text of the chosen edition to a file, to begin one's own
// with.
func (r *Rates) SaveText() {
	if e := r.edition(); e != nil {
		r.frame.save(e.ID+".toml", Say("the text of %s", e.ID), e.Text)
	}
}
