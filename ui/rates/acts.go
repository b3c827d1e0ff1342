package rates

import (
	"context"
	"maps"
	"slices"
	"strings"

	"tenthpoint/internal/elevator"
	"tenthpoint/internal/law"
	"tenthpoint/internal/message"
	"tenthpoint/internal/office"
	"tenthpoint/internal/ratefiles"
	"tenthpoint/internal/rates"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// AskSchedule asks for the schedule of the chosen edition's grain, in a manager's name.
func (r *Rates) AskSchedule() {
	e := r.edition()
	if e == nil {
		return
	}
	id := e.Commodity.ID
	now, _ := r.session.Desk.Profile().Schedule(id)
	options := []model.Option{}
	for _, name := range slices.Compact(r.session.Desk.Rates().Schedules(id)) {
		o := model.Option{Code: name, Detail: r.session.Say("no rates in force today")}
		if in, err := r.session.Desk.Rates().On(name, id, r.session.Desk.Today()); err == nil {
			o.Name, o.Detail = r.session.Say(in.Title), statusWord(r.session.Language, in.Status)
		}
		options = append(options, o)
	}
	r.session.Put(model.Ask{
		Title: r.session.Say("Settle %s under which schedule?", r.session.GrainName(id)),
		Text:  r.session.Say("It counts for loads opened from now on. A single load can be put under another on its own form."),
		Fields: []model.AskField{
			{ID: "schedule", Label: r.session.Say("Schedule"), Options: options, Value: now, Chars: 24, Required: true},
			{ID: "who", Label: r.session.Say("Manager"), Options: r.session.Managers(), Value: r.session.ManagerHere(), Chars: 24, Required: true},
		},
		Yes:  r.session.Say("Settle under it"),
		Then: func(values map[string]string) { r.settleUnder(id, values["schedule"], values["who"]) },
	})
}

func (r *Rates) settleUnder(commodity, schedule, who string) {
	p := r.session.Desk.Profile()
	p.Grains = slices.Clone(p.Grains)
	i := slices.IndexFunc(p.Grains, func(g elevator.GrainRule) bool { return g.Commodity == commodity })
	if i < 0 {
		p.Grains = append(p.Grains, elevator.GrainRule{Commodity: commodity})
		i = len(p.Grains) - 1
	}
	p.Grains[i].Schedule = schedule
	err := r.session.As(who, func() error { return scalehouse.SetProfile(context.Background(), r.session.Desk, p) })
	if err != nil {
		r.session.Fail(err)
		return
	}
	r.session.Changed()
	r.session.Notify(model.OK, r.session.Say("%s is settled under schedule %s.", r.session.GrainName(commodity), schedule))
}

// ReadAgain reloads the elevator's own rates and rules of law. If anything in them is wrong, those
// in force stay.
func (r *Rates) ReadAgain() {
	var set *rates.Set
	var laws *law.Set
	r.session.Run(model.Job{
		Topic: "rates", Title: r.session.Say("Reading the rates"),
		Do: func(context.Context, func(int, int)) (err error) {
			if set, err = ratefiles.ReadRates(r.session.RatesFolder); err == nil {
				laws, err = ratefiles.ReadLaws(r.session.RatesFolder)
			}
			return err
		},
		Done: func(err error) { r.readAgain(set, laws, err) },
	})
}

func (r *Rates) readAgain(set *rates.Set, laws *law.Set, err error) {
	SetRatesWrong(r.session, err)
	if err != nil {
		r.shows = RatesProblems
		r.session.Notify(model.Stop, r.session.Say("the files have %d mistakes. The rates in force stay as they were.", len(r.session.RatesWrong)))
		r.session.Window.Redraw()
		return
	}
	r.session.Desk.UseRates(set)
	r.session.Desk.UseLaws(laws)
	r.Reload()
	r.session.Changed()
	own := 0
	for _, e := range set.All() {
		if e.Status != rates.Example {
			own++
		}
	}
	r.session.Notify(model.OK, r.session.Say("the rates are read: %d editions, %d of them your own.", len(set.All()), own))
	SayRewritten(r.session)
}

// SetRatesWrong records the errors of the elevator's own rates; nil for none.
func SetRatesWrong(f *session.Session, err error) { f.RatesWrong = message.Lines(err) }

// ownFiles lists the mistakes in the elevator's own files, or explains how to begin with them.
func ownFiles(f *session.Session) []model.CardLine {
	lines := []model.CardLine{{Kind: model.CardTitle, Left: f.Say("Your own files")}}
	add := func(kind model.CardKind, left string) {
		lines = append(lines, model.CardLine{Kind: kind, Left: left})
	}
	folder := f.RatesFolder
	if folder == "" {
		folder = f.Say("none: this book has no folder of its own")
	}
	lines = append(lines, model.CardLine{Kind: model.CardPair, Left: f.Say("Folder"), Note: folder}, model.CardLine{Kind: model.CardRule})
	if len(f.RatesWrong) > 0 {
		for _, line := range f.RatesWrong {
			add(model.CardMark, f.Text(line))
			add(model.CardGap, "")
		}
		add(model.CardText, f.Say("Mend these, save the files, and press Ctrl+I. Until all of them are right nothing of what changed is in force."))
		return lines
	}
	own := 0
	for _, e := range f.Desk.Rates().All() {
		if e.Status == rates.Example {
			continue
		}
		own++
		lines = append(lines, model.CardLine{Kind: model.CardPair, Left: e.ID, Right: statusWord(f.Language, e.Status), Note: session.Join(", ", f.GrainName(e.Commodity.ID), periodOf(f, e))})
	}
	if own == 0 {
		add(model.CardText, f.Say("No edition of your own is here, so everything is settled under invented rates. Put your own into the folder as *.toml files and press Ctrl+I."))
		add(model.CardGap, "")
		add(model.CardText, f.Say("F1 tells how an edition is written. Ctrl+S writes the text of the chosen example to a file to begin with."))
		return lines
	}
	add(model.CardGap, "")
	add(model.CardText, f.Say("There is no mistake in them."))
	return lines
}

// SaveText writes the text of the chosen edition to a file, to begin one's own
// with.
func (r *Rates) SaveText() {
	if e := r.edition(); e != nil {
		r.session.Save(e.ID+".toml", r.session.Say("the text of %s", e.ID), e.Text)
	}
}

// SayRewritten warns of rates whose text was changed under their id since
// tickets were settled under them.
func SayRewritten(f *session.Session) {
	ids, err := office.RewrittenEditions(context.Background(), f.Desk)
	switch {
	case err != nil:
		f.Fail(err)
	case len(ids) > 0:
		f.Notify(model.Warn, f.Say("The text of %s was changed since tickets were settled under it. The screen of rates says more.",
			strings.Join(slices.Sorted(maps.Keys(ids)), ", ")))
	}
}
