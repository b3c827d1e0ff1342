package lab

import (
	"strconv"
	"strings"

	"tenthpoint/internal/moisture"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// decisions are people's decisions about the tests of the current sample: a tester excludes an
// outlier by a rule, a manager accepts the load despite a flag.
type decisions struct{ bench *Bench }

func (d decisions) sample() *SampleTest       { return d.bench.current }
func (d decisions) session() *session.Session { return d.bench.session }

// canLeaveOut reports whether there are tests to leave out.
func (d decisions) canLeaveOut() bool { return len(d.sample().tests.Readings) > 0 }

// leaveOut asks for the rule by which to exclude a test from the mean, or includes an excluded one
// again. The test stays listed either way.
func (d decisions) leaveOut(key string) {
	s := d.sample()
	seq, err := strconv.Atoi(key)
	if err != nil || !s.tests.has(seq) {
		d.session().Notify(model.Stop, d.bench.session.Say("Choose the test to leave out in the list of tests first."))
		return
	}
	if s.tests.isExcluded(seq) {
		s.tests = s.tests.counted(seq)
		d.bench.changedTests(d.bench.session.Say("Test %d counts again.", seq))
		return
	}
	d.session().Put(model.Ask{
		Draft: "leave out", Of: s.id(),
		Title: d.bench.session.Say("Leave test %d out of the mean?", seq),
		Text:  d.bench.session.Say("It stays listed, with the rule and your name. Spoiled tests need what was seen to go wrong."),
		State: model.Warn,
		Fields: []model.AskField{
			{ID: "rule", Label: d.bench.session.Say("Rule"), Options: exclusionOptions(d.bench.session.Language, s.tools.policy(s.crop())), Chars: 30, Required: true},
			{ID: "reason", Label: d.bench.session.Say("What was seen"), Chars: 36},
		},
		Yes: d.bench.session.Say("Leave it out"),
		Then: func(values map[string]string) {
			d.exclude(seq, moisture.ExclusionRule(values["rule"]), values["reason"])
		},
	})
}

func exclusionOptions(in session.Language, p moisture.Policy) []model.Option {
	out := []model.Option{}
	for _, rule := range p.MayExclude {
		out = append(out, model.Option{Code: string(rule), Name: exclusionWord(in, rule), ByName: true})
	}
	return out
}

// exclude excludes a test from the mean, unless the rule does not fit it.
func (d decisions) exclude(seq int, rule moisture.ExclusionRule, reason string) {
	s := d.sample()
	before := s.tests
	s.tests = before.without(moisture.Exclusion{
		Test: seq, Rule: rule, By: d.session().Desk.Who().Name, Reason: strings.TrimSpace(reason),
	})
	s.workTests()
	if err := s.found.fault; err != nil {
		s.tests = before
		s.workTests()
		d.session().Fail(err)
		return
	}
	d.bench.changedTests(d.bench.session.Say("Test %d is left out.", seq))
}

// canLetThrough reports whether a flag stops the ticket that a manager may accept.
func (d decisions) canLetThrough() bool {
	return d.sample().load != nil && len(d.sample().found.stopping()) > 0
}

// askManager asks a manager to accept the load despite a flag, with a reason, and records the
// sample with it.
func (d decisions) askManager() {
	flags := d.sample().found.stopping()
	if len(flags) == 0 {
		return
	}
	var options []model.Option
	var sentences []string
	for i, f := range flags {
		options = append(options, model.Option{Code: strconv.Itoa(i + 1), Name: doubtWord(d.bench.session.Language, f.Code), Detail: d.bench.session.Text(f.What), ByName: true})
		sentences = append(sentences, d.bench.session.Text(f.What))
	}
	d.session().Put(model.Ask{
		Draft: "let through", Of: d.sample().id(),
		Title: d.bench.session.Say("Override for this load?"), Text: strings.Join(sentences, "\n"), State: model.Warn,
		Fields: []model.AskField{
			{ID: "doubt", Label: d.bench.session.Say("Flag"), Options: options, Value: options[0].Code, Chars: 28, Required: true},
			{ID: "who", Label: d.bench.session.Say("Manager"), Options: d.session().Managers(), Value: d.session().ManagerHere(), Chars: 24, Required: true},
			{ID: "reason", Label: d.bench.session.Say("Reason"), Chars: 36, Required: true},
		},
		Yes: d.bench.session.Say("Override it"),
		Then: func(values map[string]string) {
			i, _ := strconv.Atoi(values["doubt"])
			if i < 1 || i > len(flags) {
				return
			}
			d.letThrough(flags[i-1], values["who"], values["reason"])
		},
	})
}

// letThrough records the sample under the manager's own name. The tester stays signed in.
func (d decisions) letThrough(f moisture.Flag, who, reason string) {
	s := d.sample()
	tester := d.session().Desk.Who().Name
	tests := s.tests.overridden(moisture.Override{Code: f.Code, Test: f.Test, By: who, Reason: strings.TrimSpace(reason)})
	err := d.session().As(who, func() error {
		found := workOut(d.session(), s.load, tests)
		if found.fault != nil {
			return found.fault
		}
		return s.record(found, tester)
	})
	if err == nil {
		s.tests = tests
		err = s.reload()
	}
	if err != nil {
		d.session().Fail(err)
		return
	}
	d.bench.drafts.forget(s)
	d.session().Notify(model.OK, d.bench.session.Say("%s has let %s through: %s", who, doubtWord(d.bench.session.Language, f.Code), reason))
	d.session().Changed()
}
