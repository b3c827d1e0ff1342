package lab

import (
	"tenthpoint/internal/entry/storing"
	paper "tenthpoint/internal/office/storing"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
	"tenthpoint/ui/session/ask"
)

// canAskKeeping reports whether the current sample has a grain and a moisture to ask the tables with.
func canAskKeeping(b *Bench) bool {
	o := b.current.found.would
	return o != nil && o.Details.Commodity != "" && o.Sample.Moisture != nil
}

// askKeeping asks until when the grain is to be kept, and prints what the tables say and what its grower
// can do.
func askKeeping(b *Bench) {
	f, would := b.session, b.current.found.would
	question := paper.Of(f.Desk, would, would.Sample.Moisture.Percent)
	f.Put(model.Ask{
		Draft: "keeping", Of: "sample", Title: f.Say("Does it keep?"), Yes: f.Say("Print the answer"),
		Text:   f.Say("Published tables say how long this moisture keeps. Where it is not long enough the grower's ways are set side by side, as far as their figures are known."),
		Fields: ask.Fields(f, storing.Fields(), ask.Filled{}),
		Check: func(values map[string]string) map[string]string {
			_, problems := storing.Read(values, question, f.Desk.Today())
			return ask.Sentences(f, problems)
		},
		Then: func(values map[string]string) {
			asked, _ := storing.Read(values, question, f.Desk.Today())
			answer, err := asked.Answer()
			if err != nil {
				f.Fail(err)
				return
			}
			session.PrintDocument(f, paper.Paper(f.Desk, asked, answer), "does-it-keep", f.Say("whether it keeps"), false)
		},
	})
}
