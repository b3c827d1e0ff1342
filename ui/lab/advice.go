package lab

import (
	"slices"
	"strconv"
	"strings"

	"tenthpoint/internal/dryness"
	"tenthpoint/internal/message"
	"tenthpoint/internal/moisture"
	"tenthpoint/internal/moisture/meter"
	"tenthpoint/internal/office"
	"tenthpoint/internal/quantity"
	"tenthpoint/internal/settle"
	"tenthpoint/ui/model"
	"tenthpoint/ui/session"
)

// advice describes the bench's results for a sample.
type advice struct {
	outcome
	next   nextTest
	grade  session.GradeAdvice
	policy moisture.Policy
}

// statuses are, in this order: what is wrong, what stops the ticket, what is still to be tested,
// whether the grain is dry enough, other warnings, its grade, what to do, the value of a tenth of a
// point.
func (a advice) statuses() []model.Status {
	if len(a.tests.Readings) == 0 {
		return a.beforeTests()
	}
	var out []model.Status
	if a.fault != nil {
		out = append(out, model.Status{State: model.Stop, Word: a.language.Say("no moisture"), Text: a.language.Sentence(a.fault)})
	}
	first, others := a.doubts(a.testing.Result.Flags)
	out = append(out, first...)
	if a.judged {
		out = append(out, verdicts(a.language, a.advice)...)
	}
	out = append(append(out, others...), a.leftOut()...)
	out = append(out, a.grade.Statuses()...)
	if a.judged {
		out = append(out, choices(a.language, a.advice)...)
	}
	if a.worth != nil {
		out = append(out, model.Status{State: model.Wait, Word: a.language.Say("worth"), Text: strings.Join(worthLines(a.language, a.worth), " ")})
	}
	return out
}

// beforeTests says what to do while nothing has been tested.
func (a advice) beforeTests() []model.Status {
	out := []model.Status{}
	if m := a.would.Sample.Moisture; m != nil {
		out = append(out, model.Status{State: model.OK, Word: a.language.Say("in the book"), Text: a.language.Say("%s, %s. A test made here takes its place.", m.Percent, a.language.Say(m.Method))})
		if a.judged {
			out = append(out, verdicts(a.language, a.advice)...)
		}
	}
	out = append(out, model.Status{State: model.Wait, Word: a.language.Say("to do"), Text: toDo(a.language, a.next.texts.method())})
	first, others := a.doubts(a.next.flags)
	out = append(append(append(out, first...), others...), a.grade.Statuses()...)
	out = append(out, model.Status{State: model.Plain, Word: a.language.Say("the house asks"), Text: policyText(a.language, a.policy)})
	return append(out, steps(a.language, a.next.texts.method())...)
}

// steps describe a test on a meter, for new testers.
func steps(in session.Language, m meter.Method) []model.Status {
	if !m.UsesMeter() {
		return nil
	}
	all := []string{
		in.Say("Weigh out the mass the meter asks for with this grain."),
		in.Say("Take the temperature of the grain, not of the room."),
	}
	if m == meter.ByDial {
		all = append(all, in.Say("Null the meter with its cup empty."))
	}
	all = append(all, in.Say("Pour evenly and from one height; do not press or pack by hand."), in.Say("Read at once, at eye level."))
	if m == meter.ByDial {
		all = append(all, in.Say("The chart gives the moisture for dial and temperature; it already corrects for the temperature."))
	}
	all = append(all, in.Say("Empty the cup and do it again with other grain of the sample."))
	out := make([]model.Status, len(all))
	for i, text := range all {
		out[i] = model.Status{State: model.Plain, Word: in.Say("step %d", i+1), Text: text}
	}
	return out
}

// toDo describes how a test is made by a method.
func toDo(in session.Language, m meter.Method) string {
	switch m {
	case meter.ByDial:
		return in.Say("Weigh the sample out, read grain and room temperature, then the dial. Enter after the dial makes the test.")
	case meter.Direct:
		return in.Say("Read grain and room temperature, then what the meter shows. Enter after it makes the test.")
	case meter.ByOven:
		return in.Say("Weigh the dish with the wet grain, empty, and with the dried grain. Enter after the last makes the test.")
	}
	return in.Say("Type the moisture and where it is from. Enter after the reason makes the test.")
}

// policyText describes how often a sample is tested.
func policyText(in session.Language, p moisture.Policy) string {
	return in.Say("Tests of one sample: %d. Within %s of a limit: %d. They may differ by %s.", p.Count, p.Near, p.NearCount, p.Spread)
}

// doubts describes flags, each with what to do about it: first those that stop the ticket or need
// more tests, then the others. One flag on several tests is shown once.
func (a advice) doubts(flags []moisture.Flag) (first, others []model.Status) {
	var asking []model.Status
	for _, d := range gather(flags) {
		remark := a.doubt(d)
		switch {
		case remark.State == model.Stop:
			first = append(first, remark)
		case d.Code == moisture.WideSpread || d.Code == moisture.TooFewTests || d.Code == moisture.NearLimit:
			asking = append(asking, remark)
		default:
			others = append(others, remark)
		}
	}
	return append(first, asking...), others
}

// doubt is one flag on one or more tests; without any, on the sample as a whole.
type doubt struct {
	moisture.Flag
	tests []string
}

func gather(flags []moisture.Flag) []doubt {
	var out []doubt
	for _, f := range flags {
		i := slices.IndexFunc(out, func(d doubt) bool { return d.Code == f.Code && d.What.Equal(f.What) && d.Override == f.Override })
		if i < 0 {
			out = append(out, doubt{Flag: f})
			i = len(out) - 1
		}
		if f.Test > 0 {
			out[i].tests = append(out[i].tests, strconv.Itoa(f.Test))
		}
	}
	return out
}

// doubt describes one flag.
func (a advice) doubt(d doubt) model.Status {
	word := doubtWord(a.language, d.Code)
	if len(d.tests) > 0 && len(a.tests.Readings) > 1 {
		word = a.language.Say("%s, test %s", word, strings.Join(d.tests, ", "))
	}
	text := a.language.Text(message.List(" ", d.What, d.Why, d.Do))
	switch {
	case d.Override != nil:
		text = a.language.Say("%s Overridden by %s: %s.", a.language.Text(d.What), d.Override.By, strings.TrimSuffix(d.Override.Reason, "."))
	case d.Final:
		text += " " + a.language.Say("This stops the ticket, and nobody may override it.")
	case d.Stops():
		text += " " + a.language.Say("This stops the ticket until a manager overrides it.")
	}
	return model.Status{State: flagState(d.Flag), Word: word, Text: text}
}

// leftOut are the tests that do not count, with rule and person.
func (a advice) leftOut() []model.Status {
	var out []model.Status
	for _, d := range a.tests.Exclusions {
		text := a.language.Say("Left out by %s: %s.", d.By, exclusionWord(a.language, d.Rule))
		if d.Reason != "" {
			text = a.language.Say("Left out by %s: %s (%s).", d.By, exclusionWord(a.language, d.Rule), d.Reason)
		}
		out = append(out, model.Status{State: model.Locked, Word: a.language.Say("test %d", d.Test), Text: text})
	}
	return out
}

// verdicts say whether the grain is dry enough, a line for each purpose, and how
// sure that is.
func verdicts(in session.Language, a dryness.Advice) []model.Status {
	if len(a.Verdicts) == 0 {
		return nil
	}
	state, certain := model.OK, true
	var lines []string
	for _, v := range a.Verdicts {
		if !v.Dry || !v.Certain {
			state = model.Warn
		}
		certain = certain && v.Certain
		lines = append(lines, verdictLine(in, v))
	}
	if !certain {
		lines = append(lines, whyUncertain(in, a))
	}
	return []model.Status{{State: state, Word: in.Say("dry enough?"), Text: strings.Join(lines, "\n")}}
}

// verdictLine is the answer for one purpose: "to buy as dry: no, 1 pt above
// 13 %".
func verdictLine(in session.Language, v dryness.Verdict) string {
	purpose := purposeWord(in, v.Purpose)
	if v.Class != "" {
		purpose = in.Say("%s, %s", purpose, in.Say(v.Class))
	}
	switch {
	case v.Dry && v.Certain:
		return in.Say("%s: yes, not above %s.", purpose, v.Limit)
	case v.Dry:
		return in.Say("%s: yes as read, not above %s; not certain.", purpose, v.Limit)
	case v.Certain:
		return in.Say("%s: no, %s above %s.", purpose, v.Over, v.Limit)
	}
	return in.Say("%s: no as read, %s above %s; not certain.", purpose, v.Over, v.Limit)
}

// whyUncertain is why an answer is no more certain than the reading.
func whyUncertain(in session.Language, a dryness.Advice) string {
	b := a.Band
	switch {
	case !b.Stated():
		return in.Say("How far the meter may be off is not entered, so how certain this is cannot be told.")
	case slices.ContainsFunc(a.Verdicts, func(v dryness.Verdict) bool { return b.Straddles(v.Limit) }):
		return in.Say("The meter may be off by %s: the grain may be anything from %s to %s.",
			b.High.Sub(b.Reading).In(quantity.Point), b.Low.FixedString(1), b.High.FixedString(1))
	}
	return in.Say("The reading itself is in doubt.")
}

// choices lists what the grower can do with the load.
func choices(in session.Language, a dryness.Advice) []model.Status {
	var out []model.Status
	for _, o := range a.Options {
		out = append(out, model.Status{State: model.Plain, Word: in.Say(o.Name), Text: in.Text(o.Text)})
	}
	return out
}

// worthLines describe the value of a tenth of a point of the load, and of the meter's tolerance.
func worthLines(in session.Language, w *office.Worth) []string {
	out := []string{in.Say("A tenth of a point drier: %s. A tenth wetter: %s.", changeText(in, w.Here, w.Drier), changeText(in, w.Here, w.Wetter))}
	if t := w.Tolerance; t != nil {
		out = append(out, in.Say("The meter may be off by %s. At %s: %s. At %s: %s.", t.Step,
			w.Band.Low.FixedString(1), changeText(in, t.Here, t.Drier), w.Band.High.FixedString(1), changeText(in, t.Here, t.Wetter)))
	}
	return out
}

// changeText describes the change for the load at another moisture.
func changeText(in session.Language, here *settle.Settlement, end settle.End) string {
	if end.Settlement == nil {
		for _, p := range end.Problems {
			return in.Text(p.Sentence)
		}
		return in.Say("not settled")
	}
	settled := withSign(end.Change.Quantity, session.PrintedLike(here.Quantity, end.Change.Quantity))
	if pay := end.Change.Payable; pay != nil {
		return in.Say("%s, %s", settled, withSign(*pay, session.PrintedLike(here.Payable, *pay)))
	}
	return in.Say("%s, %s in charges and discounts", settled, withSign(end.Change.ToOwner, end.Change.ToOwner.FixedString(2)))
}

// withSign puts a plus before a gain.
func withSign(a quantity.Amount, printed string) string {
	if a.Sign() > 0 {
		return "+" + printed
	}
	return printed
}
