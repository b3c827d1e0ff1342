package lab

import (
	"context"
	"errors"
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/moisture"
	"tenthpoint/internal/scalehouse"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// LeaveOut asks by which rule a test is to be left out of the mean, or takes one
// back in that was left out. The test stays listed either way.
func (b *Bench) LeaveOut(key string) {
	s := b.hand
	seq, err := strconv.Atoi(key)
	i := slices.IndexFunc(s.tests.Readings, func(r moisture.Reading) bool { return r.Seq == seq })
	if err != nil || i < 0 {
		b.session.Say(model.Stop, session.Say("Choose the test to leave out in the list of tests first."))
		return
	}
	if s.isDropped(seq) {
		s.tests.Exclusions = slices.DeleteFunc(slices.Clone(s.tests.Exclusions), func(d moisture.Exclusion) bool { return d.Test == seq })
		b.decided(session.Say("Test %d counts again.", seq))
		return
	}
	b.session.Put(model.Ask{
		Draft: "leave out", Of: s.id(),
		Title: session.Say("Leave test %d out of the mean?", seq),
		Text:  session.Say("It stays listed, with the rule and your name. Spoiled tests need what was seen to go wrong."),
		State: model.Warn,
		Fields: []model.AskField{
			{ID: "rule", Label: session.Say("Rule"), Options: s.dropOptions(), Chars: 30, Required: true},
			{ID: "reason", Label: session.Say("What was seen"), Chars: 36},
		},
		Yes:  session.Say("Leave it out"),
		Then: func(values map[string]string) { b.drop(seq, moisture.ExclusionRule(values["rule"]), values["reason"]) },
	})
}

// CanLeaveOut reports whether there are tests to leave out.
func (b *Bench) CanLeaveOut() bool { return len(b.hand.tests.Readings) > 0 }

func (s *SampleTest) dropOptions() []model.Option {
	out := []model.Option{}
	for _, rule := range moisture.PolicyFor(s.bench.setup.Policies, s.crop()).MayExclude {
		out = append(out, model.Option{Code: string(rule), Name: dropWord(rule), ByName: true})
	}
	return out
}

// drop leaves a test out, unless the rule does not fit it.
func (b *Bench) drop(seq int, rule moisture.ExclusionRule, reason string) {
	s := b.hand
	before := s.tests.Exclusions
	s.tests.Exclusions = append(slices.Clone(before), moisture.Exclusion{
		Test: seq, Rule: rule, By: b.session.Desk.Who().Name, Reason: strings.TrimSpace(reason),
	})
	s.workTests()
	if err := s.found.fault; err != nil {
		s.tests.Exclusions = before
		s.workTests()
		b.session.Fail(err)
		return
	}
	b.decided(session.Say("Test %d is left out.", seq))
}

func (b *Bench) decided(what string) {
	b.hand.workTests()
	b.hand.work()
	b.keep()
	b.session.Say(model.OK, what)
	b.session.Window.Redraw()
}

// stopping are the doubts that stop the ticket and that a manager may let
// through.
func (s *SampleTest) stopping() []moisture.Flag {
	var out []moisture.Flag
	for _, f := range s.found.testing.Result.Flags {
		if f.Stops() && !f.Final {
			out = append(out, f)
		}
	}
	return out
}

// CanLetThrough reports whether a doubt stops the ticket of the load in hand
// that a manager may let through.
func (b *Bench) CanLetThrough() bool { return b.hand.load != nil && len(b.hand.stopping()) > 0 }

// LetThrough asks a manager to let a doubt stand, with a reason, and writes the
// sample down with it.
func (b *Bench) LetThrough() {
	flags := b.hand.stopping()
	if len(flags) == 0 {
		return
	}
	var options []model.Option
	var sentences []string
	for i, f := range flags {
		options = append(options, model.Option{Code: strconv.Itoa(i + 1), Name: doubtWord(f.Code), Detail: session.Say(f.What), ByName: true})
		sentences = append(sentences, session.Say(f.What))
	}
	b.session.Put(model.Ask{
		Draft: "let through", Of: b.hand.id(),
		Title: session.Say("Let the load through?"), Text: strings.Join(sentences, "\n"), State: model.Warn,
		Fields: []model.AskField{
			{ID: "doubt", Label: session.Say("Doubt"), Options: options, Value: options[0].Code, Chars: 28, Required: true},
			{ID: "who", Label: session.Say("Manager"), Options: b.session.Managers(), Value: b.session.ManagerHere(), Chars: 24, Required: true},
			{ID: "reason", Label: session.Say("Reason"), Chars: 36, Required: true},
		},
		Yes: session.Say("Let it through"),
		Then: func(values map[string]string) {
			i, _ := strconv.Atoi(values["doubt"])
			if i < 1 || i > len(flags) {
				return
			}
			b.letThrough(flags[i-1], values["who"], values["reason"])
		},
	})
}

// letThrough writes the sample down under the manager's own name.
func (b *Bench) letThrough(f moisture.Flag, who, reason string) {
	s := b.hand
	tester := b.session.Desk.Who().Name
	tests := s.tests
	tests.Overrides = append(slices.Clone(tests.Overrides), moisture.Override{Code: f.Code, Test: f.Test, By: who, Reason: strings.TrimSpace(reason)})
	err := b.session.As(who, func() error { return s.writeWith(tests, tester) })
	if err == nil {
		s.tests = tests
		err = s.reload()
	}
	if err != nil {
		b.session.Fail(err)
		return
	}
	b.isWritten()
	b.session.Say(model.OK, session.Say("%s has let %s through: %s", who, doubtWord(f.Code), reason))
	b.session.Changed()
}

// writeWith writes the sample down with a manager's decisions in its tests.
func (s *SampleTest) writeWith(tests moisture.Tests, tester string) error {
	ctx, d := context.Background(), s.bench.session.Desk
	testing, err := scalehouse.TestSample(ctx, d, s.load, tests)
	if err != nil {
		return err
	}
	sample := s.form.Sample()
	sample.Tester = tester
	return scalehouse.RecordTest(ctx, d, s.load.ID, sample, testing)
}

// StartOver forgets the tests of grain that belongs to no load. Those of a load
// are left out by rule and name, never forgotten.
func (b *Bench) StartOver() error {
	if b.hand.load != nil {
		return errors.New(session.Say("The tests of a load are not forgotten. Leave one out by its rule"))
	}
	grain := b.hand.typed["grain"]
	delete(b.samples, "")
	b.hand = b.sample("")
	b.hand.typed["grain"] = grain
	b.hand.workTests()
	b.hand.work()
	b.keep()
	b.session.Window.Redraw()
	return nil
}
